import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, vi } from "vitest";
import type { Host } from "../../src/host/host";
import { Pane } from "../../src/pane/Pane";

Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });

/**
 * The pane, opened anew for each test at noon of a day of 2026, and what a maker does and sees in one of its sections.
 * @param section by its id
 * @param tab the view that it is in
 */
export function openPane(section: string, tab?: "log" | "stock" | "trace" | "tests", now = new Date(2026, 10, 26, 12)) {
  let root: Root;
  let element: HTMLElement;
  beforeEach(() => {
    // So that no test runs over midnight.
    vi.useFakeTimers({ toFake: ["Date"], now });
    element = document.body.appendChild(document.createElement("div"));
    root = createRoot(element);
  });
  const close = () => act(async () => root.unmount());
  afterEach(async () => {
    await close();
    element.remove();
    vi.useRealTimers();
  });

  /** Waits until the pane shows what it read and worked out: its words change no more. */
  const settled = async () => {
    let before: string | undefined;
    for (let same = 0; same < 3; same = element.innerHTML === before ? same + 1 : 0) {
      before = element.innerHTML;
      await wait();
    }
  };
  /** What bears an id in this pane. */
  const byId = (id: string | null | undefined) => element.querySelector<HTMLElement>(`[id="${id ?? ""}"]`);
  const wait = (ms = 0) => act(() => new Promise((done) => setTimeout(done, ms)));
  const show = async (host: Host) => {
    await act(async () => root.render(<Pane host={host} />));
    await wait();
    if (!tab) return;
    await act(async () => byId(`pane-tab-${tab}`)?.click());
    await settled();
  };
  /** Closes the pane and opens it again, as a workbook that is opened anew does. */
  const reopen = async (host: Host) => {
    await close();
    root = createRoot(element);
    await show(host);
  };
  /** Waits until the pane has followed a change. */
  const changed = async (host: { changed(): void }) => {
    host.changed();
    await wait(300);
  };

  const own = () => element.querySelector(`[aria-labelledby=${section}]`) as HTMLElement;
  const field = (label: string) => {
    const found = [...own().querySelectorAll("label")].find(({ textContent }) => textContent === label);
    return byId(found?.htmlFor) as HTMLInputElement;
  };
  const type = async (texts: Readonly<Record<string, string>>) => {
    for (const [label, text] of Object.entries(texts)) {
      const input = field(label);
      const isList = input instanceof HTMLSelectElement;
      const { prototype } = isList
        ? HTMLSelectElement
        : input instanceof HTMLTextAreaElement
          ? HTMLTextAreaElement
          : HTMLInputElement;
      await act(async () => {
        // React watches the property of the input itself; a test goes round it as typing does.
        Object.getOwnPropertyDescriptor(prototype, "value")?.set?.call(input, text);
        input.dispatchEvent(new Event(isList ? "change" : "input", { bubbles: true }));
      });
    }
  };
  const buttons = () => [...element.querySelectorAll("button")].map(({ textContent }) => textContent ?? "");
  const press = async (words: string) => {
    const found = [...element.querySelectorAll("button")].find(({ textContent }) => textContent === words);
    if (!found) throw new Error(`no button ${words} among ${buttons().join(", ")}`);
    await act(async () => found.click());
    await wait();
  };
  const texts = (found: Iterable<Element>) => [...found].map(({ textContent }) => textContent ?? "");
  return {
    show,
    reopen,
    changed,
    type,
    press,
    buttons,
    field,
    section: own,
    /** What the section tells, a line each. */
    shown: () => texts(own().querySelectorAll("[role=status] li")),
    /** What is said beside a field. */
    beside: (label: string) => byId(field(label).getAttribute("aria-describedby"))?.textContent ?? undefined,
    offered: (label: string) =>
      [...(byId(field(label).getAttribute("list"))?.children ?? [])].map((one) => one.getAttribute("value")),
    /** What is told at the foot of the pane. */
    done: () => element.querySelector("footer [role=status]")?.textContent ?? "",
    alert: () => element.querySelector("footer [role=alert]")?.textContent ?? "",
    see: (selector: string) => element.querySelector(selector),
    seeAll: (selector: string) => [...element.querySelectorAll(selector)],
    text: () => element.textContent ?? "",
  };
}
