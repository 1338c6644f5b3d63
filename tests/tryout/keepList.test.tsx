// @vitest-environment happy-dom
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Entry, Library } from "../../src/tryout/keep/library";
import { Workbooks } from "../../src/tryout/keep/Workbooks";

Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });

const entry = (name: string, given: Partial<Entry> = {}): Entry => ({
  id: name.toLowerCase(),
  name,
  openness: "closed",
  size: 12_300,
  states: [
    { number: 2, time: new Date(2024, 4, 2, 9).getTime() },
    { number: 1, time: new Date(2024, 4, 1, 9).getTime() },
  ],
  ...given,
});

/** A library that notes what is asked of it. */
class FakeLibrary implements Pick<Library, keyof Library> {
  all: Entry[] = [
    entry("Costs", { openness: "here" }),
    entry("Burns"),
    entry("Spring", { openness: "in another tab" }),
  ];
  removed: Entry[] = [];
  readonly asked: unknown[][] = [];
  fault = "";

  #ask(...what: unknown[]) {
    this.asked.push(what);
    if (this.fault) throw new Error(this.fault);
  }

  async entries() {
    return this.all;
  }

  async open(id: string) {
    this.#ask("open", id);
  }

  async rename(id: string, wished: string) {
    this.#ask("rename", id, wished);
    this.all = this.all.map((one) => (one.id === id ? { ...one, name: wished } : one));
    return wished;
  }

  async duplicate(id: string) {
    this.#ask("duplicate", id);
    return "Costs 2";
  }

  async remove(gone: Entry) {
    this.#ask("remove", gone.id);
    this.all = this.all.filter(({ id }) => id !== gone.id);
    this.removed = [...this.removed, gone];
  }

  async putBack(id: string) {
    this.#ask("putBack", id);
    this.all = [...this.all, ...this.removed.filter((one) => one.id === id)];
    this.removed = this.removed.filter((one) => one.id !== id);
  }

  async goBack(id: string, number: number) {
    this.#ask("goBack", id, number);
  }
}

describe("the list of workbooks", () => {
  let root: Root;
  let element: HTMLElement;
  let library: FakeLibrary;
  let closed: number;
  beforeEach(async () => {
    element = document.body.appendChild(document.createElement("div"));
    root = createRoot(element);
    library = new FakeLibrary();
    closed = 0;
  });
  afterEach(async () => {
    await act(async () => root.unmount());
    element.remove();
  });

  const show = () => act(async () => root.render(<Workbooks library={library} close={() => closed++} />));
  const items = () => [...element.querySelectorAll("ul > li")] as HTMLElement[];
  const item = (name: string) => items().find((one) => one.querySelector(".name")?.textContent === name) as HTMLElement;
  const button = (within: Element, words: string) =>
    [...within.querySelectorAll("button")].find(({ textContent }) => textContent === words);
  const press = (within: Element, words: string) =>
    act(async () => {
      const found = button(within, words);
      if (!found) throw new Error(`no button ${words}`);
      found.focus();
      found.click();
    });

  it("names each workbook, when it was changed, how large it is and where it is open", async () => {
    await show();
    expect(items().map((one) => one.querySelector("small")?.textContent)).toEqual([
      "Changed 2 May 2024, 13 KB, open now",
      "Changed 2 May 2024, 13 KB",
      "Changed 2 May 2024, 13 KB, open in another tab",
    ]);
  });

  it("says so when nothing is kept yet", async () => {
    library.all = [];
    await show();
    expect(element.textContent).toContain("No workbook is kept yet.");
  });

  it("opens one by its name and leaves", async () => {
    await show();
    await press(item("Burns"), "Burns");
    expect(library.asked).toEqual([["open", "burns"]]);
    expect(closed).toBe(1);
  });

  it("does not open again the one that is open", async () => {
    await show();
    await press(item("Costs"), "Costs");
    expect(library.asked).toEqual([]);
    expect(closed).toBe(1);
  });

  it("renames in place, and gives the keyboard back to the name", async () => {
    await show();
    await press(item("Burns"), "Rename");
    const field = element.querySelector("input") as HTMLInputElement;
    expect(document.activeElement).toBe(field);
    const own = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value");
    await act(async () => {
      own?.set?.call(field, "Burn tests");
      field.dispatchEvent(new Event("input", { bubbles: true }));
    });
    await act(async () => field.form?.dispatchEvent(new Event("submit", { bubbles: true, cancelable: true })));
    expect(library.asked).toEqual([["rename", "burns", "Burn tests"]]);
    expect(element.querySelector("[role=status]")?.textContent).toBe("The name is Burn tests now.");
    expect(document.activeElement?.textContent).toBe("Burn tests");
  });

  it("leaves a name as it was with Escape, and stays open", async () => {
    await show();
    await press(item("Burns"), "Rename");
    const leaving = new KeyboardEvent("keydown", { key: "Escape", bubbles: true, cancelable: true });
    await act(async () => element.querySelector("input")?.dispatchEvent(leaving));
    expect(leaving.defaultPrevented).toBe(true);
    expect(element.querySelector("input")).toBeNull();
    expect(library.asked).toEqual([]);
  });

  it("removes after one question, and puts back", async () => {
    await show();
    await press(item("Burns"), "Remove");
    expect(library.asked).toEqual([]);
    expect(document.activeElement?.textContent).toBe("Remove");
    await press(element.querySelector("fieldset") as Element, "Remove");
    expect(items()).toHaveLength(2);
    expect(element.querySelector(".removed")?.textContent).toBe("Burns is removed.Put back");
    expect(document.activeElement?.textContent).toBe("Put back");
    await press(element, "Put back");
    expect(items()).toHaveLength(3);
    expect(library.asked).toEqual([
      ["remove", "burns"],
      ["putBack", "burns"],
    ]);
  });

  it("removes nothing when that is left", async () => {
    await show();
    await press(item("Burns"), "Remove");
    await press(item("Burns"), "Leave it");
    expect(library.asked).toEqual([]);
    expect(document.activeElement?.textContent).toBe("Burns");
  });

  it("offers neither removing nor going back for one that another tab has", async () => {
    await show();
    expect(button(item("Spring"), "Remove")).toBeUndefined();
    expect(button(item("Spring"), "Earlier states")).toBeUndefined();
    expect(button(item("Spring"), "Duplicate")).toBeDefined();
  });

  it("goes back to an earlier state", async () => {
    await show();
    await press(item("Costs"), "Earlier states");
    expect(item("Costs").textContent).toContain("1 May 2024");
    expect(item("Costs").textContent).not.toContain("2 May 2024Go back");
    await press(item("Costs"), "Go back to it");
    expect(library.asked).toEqual([["goBack", "costs", 1]]);
    expect(closed).toBe(1);
  });

  it("tells earlier states of one minute apart, to a screen reader too", async () => {
    const states = [4, 3, 2].map((number) => ({ number, time: new Date(2024, 4, 2, 9, 5, number).getTime() }));
    library.all = [entry("Costs", { states })];
    await show();
    await press(item("Costs"), "Earlier states");
    const labels = [...item("Costs").querySelectorAll("ol button")].map((one) => one.getAttribute("aria-label"));
    expect(labels).toEqual(["3", "2"].map((second) => `Go back to Costs of 2 May 2024, 09:05:0${second}`));
    expect(item("Costs").querySelector("ol span")?.textContent).toBe("2 May 2024, 09:05:03");
  });

  it("says what went wrong, and shows the list as it is", async () => {
    await show();
    library.fault = "There was no room.";
    await press(item("Burns"), "Duplicate");
    expect(element.querySelector("[role=alert]")?.textContent).toBe("There was no room.");
    expect(closed).toBe(0);
    library.fault = "";
    await press(item("Burns"), "Duplicate");
    expect(element.querySelector("[role=alert]")).toBeNull();
    expect(element.querySelector("[role=status]")?.textContent).toBe("Costs 2 is the duplicate.");
  });
});
