import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, vi } from "vitest";
import { Pane } from "../../src/pane/Pane";
import { type PourHost, SHEET } from "./pourHost";

Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });

/** The pane of a workbook whose runs are poured, opened anew for each test, and what a maker does and sees in it. */
export function pouredPane() {
  let root: Root;
  let element: HTMLElement;
  beforeEach(() => {
    // Day 331 of 2026, so that no test runs over midnight.
    vi.useFakeTimers({ toFake: ["Date"], now: new Date(2026, 10, 27, 12) });
    element = document.body.appendChild(document.createElement("div"));
    root = createRoot(element);
  });
  afterEach(async () => {
    await act(async () => root.unmount());
    element.remove();
    vi.useRealTimers();
  });

  const wait = (ms = 0) => act(() => new Promise((done) => setTimeout(done, ms)));
  const show = async (host: PourHost) => {
    await act(async () => root.render(<Pane host={host} />));
    await wait();
  };
  /** Waits until the pane has followed a change. */
  const changed = async (host: PourHost) => {
    host.changed();
    await wait(300);
  };
  const buttons = () => [...element.querySelectorAll("button")].map(({ textContent }) => textContent ?? "");
  const press = async (words: string) => {
    const found = [...element.querySelectorAll("button")].find(({ textContent }) => textContent === words);
    if (!found) throw new Error(`no button ${words} among ${buttons().join(", ")}`);
    await act(async () => found.click());
    await wait();
  };
  const asked = () =>
    [...(element.querySelector("[aria-labelledby=pane-written] [role=status]")?.querySelectorAll("p, li") ?? [])].map(
      ({ textContent }) => textContent ?? "",
    );
  /** Logs a pour: what it adds is shown at the first press and added at the second. */
  const logPour = async (sheet = SHEET, anyway = false) => {
    await press(`Log this pour: ${sheet}`);
    await press(`${anyway ? "Log anyway" : "Add these rows"}: ${sheet}`);
  };
  const alert = () => element.querySelector("footer [role=alert]")?.textContent ?? "";
  const done = () => element.querySelector("footer [role=status]")?.textContent ?? "";
  const pick = async (name: string) => {
    const field = chosen() as HTMLSelectElement;
    await act(async () => {
      field.value = name;
      field.dispatchEvent(new Event("change", { bubbles: true }));
    });
  };
  const chosen = () => {
    const label = [...element.querySelectorAll("label")].find(({ textContent }) => textContent === "Run sheet");
    return label ? (document.getElementById(label.htmlFor) as HTMLSelectElement) : undefined;
  };
  /** Closes the pane and opens it again, as a workbook that is opened anew does. */
  const reopen = async (host: PourHost) => {
    await act(async () => root.unmount());
    root = createRoot(element);
    await show(host);
  };
  const see = (selector: string) => element.querySelector(selector);
  const seeAll = (selector: string) => [...element.querySelectorAll(selector)];
  const text = () => element.textContent ?? "";
  return { show, reopen, changed, press, pick, logPour, buttons, asked, alert, done, chosen, see, seeAll, text };
}
