// @vitest-environment happy-dom
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { DamagedSettings, StillCalculating, type Work } from "../../src/host/host";
import { Pane } from "../../src/pane/Pane";
import { type Planner, planHere } from "../../src/pane/planner";
import { titleOf } from "../../src/runsheet/sheet/layout";
import { starterSheet } from "../../src/runsheet/sheet/starterSheets";
import { matchColumns, missingFields, TABLE_TYPES } from "../../src/runsheet/tables/registry";
import type { TableType } from "../../src/runsheet/tables/tableType";
import type { CellValue, Sheet } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";

Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });

const batch = (...rows: CellValue[][]): CellValue[][] => [["Vessel", "Quantity", "Fill weight (g)"], ...rows];

/** A sheet with the title of a run sheet. */
const titled = (name: string, lot: string): Sheet => ({
  name,
  widths: [],
  cells: [{ row: 0, column: 0, content: { text: titleOf(lot) } }],
});

describe("the pane", () => {
  let root: Root;
  let element: HTMLElement;
  beforeEach(() => {
    element = document.body.appendChild(document.createElement("div"));
    root = createRoot(element);
  });
  afterEach(async () => {
    await act(async () => root.unmount());
    element.remove();
  });

  const wait = (ms = 0) => act(() => new Promise((done) => setTimeout(done, ms)));
  const show = async (host: FakeHost, planner?: Planner) => {
    await act(async () => root.render(<Pane host={host} {...(planner && { planner })} />));
    await wait();
  };
  const button = (words: string) =>
    [...element.querySelectorAll("button")].find(({ textContent }) => textContent === words) as HTMLButtonElement;
  const field = (label: string) => {
    const found = [...element.querySelectorAll("label")].find(({ textContent }) => textContent === label);
    return (found ? document.getElementById(found.htmlFor) : null) as HTMLInputElement | null;
  };
  const press = async (words: string) => {
    await act(async () => button(words).click());
    await wait();
  };
  const fill = async (label: string, value: string) => {
    const input = field(label) as HTMLInputElement;
    // React watches the property of the input itself; a test goes round it as typing does.
    const own = Object.getOwnPropertyDescriptor(Object.getPrototypeOf(input), "value");
    await act(async () => {
      own?.set?.call(input, value);
      input.dispatchEvent(new Event(input instanceof HTMLSelectElement ? "change" : "input", { bubbles: true }));
    });
  };
  const alert = () => element.querySelector("footer [role=alert]")?.textContent;
  const status = () => element.querySelector("footer [role=status]")?.textContent;
  const totals = () => element.querySelector(".totals")?.textContent;

  it("says above each view what it is for", async () => {
    await show(new FakeHost({ Batch: batch(["Tin", 4, 200]) }));
    const headings: (string | null | undefined)[] = [];
    for (const view of ["plan", "log", "stock", "trace"]) {
      await act(async () => document.getElementById(`pane-tab-${view}`)?.click());
      headings.push(element.querySelector("h1")?.textContent);
    }
    expect(headings).toEqual(["Run sheet", "Log a pour", "Stock", "Lots and runs"]);
  });

  it("shows no settings before those of the workbook are read, and saves none over them", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 4, 200]) });
    let answer = () => {};
    host.held.settings = new Promise<void>((done) => {
      answer = done;
    });
    host.kept = { typed: { potCapacity: "5000" } };
    await show(host);
    expect(field("Pot holds (g)")).toBeNull();
    await act(async () => answer());
    await wait();
    expect(field("Pot holds (g)")?.value).toBe("5000");
    await fill("Extra to melt (loss)", "5%");
    expect(host.saved.at(-1)).toMatchObject({ typed: { potCapacity: "5000", loss: "5%" } });
  });

  it("saves nothing where the settings of the workbook could not be read", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 4, 200]) });
    host.held.settings = Promise.reject(new Error("The workbook is busy."));
    await show(host);
    expect(alert()).toBe("The workbook is busy.");
    await fill("Extra to melt (loss)", "5%");
    expect(field("Extra to melt (loss)")?.value).toBe("5%");
    expect(host.saved).toEqual([]);
  });

  it("saves what was changed since as soon as the settings of the workbook can be read", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 4, 200]) });
    host.held.settings = Promise.reject(new Error("The workbook is busy."));
    host.kept = { typed: { potCapacity: "5000" } };
    await show(host);
    await fill("Extra to melt (loss)", "5%");
    await wait();
    expect(host.saved).toEqual([]);
    delete host.held.settings;
    await fill("Scale reads to (g)", "0.5");
    await wait();
    expect(field("Pot holds (g)")?.value).toBe("5000");
    expect(host.saved).toHaveLength(1);
    expect(host.saved[0]).toMatchObject({ typed: { potCapacity: "5000", loss: "5%", division: "0.5" } });
  });

  it("begins with its first settings where those of the workbook are damaged, says so, and saves the new ones", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 4, 200]) });
    host.held.settings = Promise.reject(new DamagedSettings());
    await show(host);
    expect(alert()).toMatch(/^The settings kept in this workbook are damaged and were set aside/);
    expect(field("Pot holds (g)")?.value).toBe("2500");
    await fill("Extra to melt (loss)", "5%");
    await wait();
    expect(host.saved.at(-1)).toMatchObject({ typed: { loss: "5%" } });
  });

  it("does not call a run sheet written whose numbers have not come", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 4, 200]) });
    await show(host);
    host.held.readSheet = Promise.reject(new StillCalculating());
    await press("Write run sheet");
    expect(host.added).toHaveLength(1);
    expect(status()).toMatch(/^Run .* is on its sheet, and its numbers are still being worked out\. Wait until/);
  });

  it("refuses a run sheet of more formulas than are worked out in time, before anything is written", async () => {
    const host = Object.assign(new FakeHost({ Batch: batch(["Tin", 40, 200]) }), { mostFormulas: 1e6 });
    await show(host);
    await press("Write run sheet");
    const formulas = ({ cells }: Sheet) => cells.filter(({ content }) => content && "formula" in content).length;
    const live = formulas(host.added[0] as Sheet);
    host.mostFormulas = live - 1;
    await press("Write run sheet");
    const begin = `Nothing was written: the run sheet would have ${live} formulas, and no more than`;
    expect(alert()).toBe(
      `${begin} ${live - 1} are worked out here in reasonable time. Choose plain numbers in the settings (Weights on the sheet), or pour in parts, fewer rows at once.`,
    );
    host.mostFormulas = 2;
    await press("Write run sheet");
    expect(alert()).toBe(`${begin} 2 are worked out here in reasonable time. Pour in parts, fewer rows at once.`);
    expect(host.added).toHaveLength(1);
    host.mostFormulas = live;
    await press("Write run sheet");
    expect(host.added).toHaveLength(2);
  });

  it("takes only what fits of settings that another program or an older one left", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 4, 200]) });
    host.kept = {
      typed: { loss: "4%", potCapacity: 7, other: "x" },
      choices: { unit: "stone", live: false },
      columns: { "pour Batch": { quantity: 2, vessel: "Vessel" }, other: 3 },
    };
    await show(host);
    expect(field("Extra to melt (loss)")?.value).toBe("4%");
    expect(field("Pot holds (g)")?.value).toBe("2500");
    expect(field("Weights on the sheet")?.value).toBe("false");
    expect(totals()).toContain("Candles4");
  });

  it("converts what a pot holds when the unit changes, and takes that unit's usual scale", async () => {
    const host = new FakeHost({
      Batch: [
        ["Vessel", "Quantity", "Fill weight"],
        ["Tin", 4, 7],
      ],
    });
    await show(host);
    await fill("Pot holds (g)", "5000");
    await fill("Weights in", "kg");
    expect(field("Pot holds (kg)")?.value).toBe("5");
    expect(field("Scale reads to (kg)")?.value).toBe("0.001");
    await fill("Weights in", "oz");
    // 5 kg are 176.37 oz (28.349523125 g each, exact).
    expect(field("Pot holds (oz)")?.value).toBe("176.37");
    expect(field("Scale reads to (oz)")?.value).toBe("0.05");
    // Another pot is the same in every unit: 50 oz are 1417.48 g.
    await fill("Pot holds (oz)", "50");
    await fill("Weights in", "g");
    expect(field("Pot holds (g)")?.value).toBe("1417.48");
  });

  it("keeps a column chosen by hand by its heading, and says when that one is gone", async () => {
    const host = new FakeHost({
      Batch: [
        ["Vessel", "Quantity", "Trays", "Fill weight (g)"],
        ["Tin", 4, 10, 200],
      ],
    });
    await show(host);
    expect(totals()).toContain("Candles4");
    await fill("Quantity", "2");
    expect(totals()).toContain("Candles10");
    host.all.Batch = [
      ["No", "Vessel", "Quantity", "Trays", "Fill weight (g)"],
      [77, "Tin", 4, 10, 200],
    ];
    host.changed();
    await wait(300);
    expect(totals()).toContain("Candles10");
    host.all.Batch = batch(["Tin", 4, 200]);
    host.changed();
    await wait(300);
    expect(totals()).toContain("Candles4");
    expect(element.querySelector(".problems")?.textContent).toContain('the column "Trays" that was chosen is gone');
  });

  it("matches the other columns among those that are left, and tells equal headings apart", async () => {
    const host = new FakeHost({
      Batch: [
        ["Jar", "Candles", "Number", "Fill", "Fill"],
        ["Tin", "Wide tin", 4, 200, 300],
      ],
    });
    await show(host);
    await fill("Vessel", "1");
    expect(totals()).toContain("Candles4");
    await fill("Fill weight", "4");
    expect(totals()).toContain("Melted1236 g"); // 4 x 300 and 3 % more
    expect(host.saved.at(-1)).toMatchObject({
      columns: { "pour Batch": { vessel: "Candles", fill: "Fill, column 5" } },
    });
  });

  it("pours from no other table by itself when the chosen one goes", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 4, 200]), LastYear: batch(["Tin", 50, 200]) });
    await show(host);
    await fill("Pour from", "Batch");
    delete host.all.Batch;
    for (let i = 0; i < 2; i++) {
      host.changed();
      await wait(300);
      expect(totals()).toBeUndefined();
    }
    expect(alert()).toBe("The table Batch is not there any more. Choose the one to pour from.");
    await fill("Pour from", "LastYear");
    await wait();
    expect(totals()).toContain("Candles50");
    delete host.all.LastYear;
    host.changed();
    await wait(300);
    host.all.Batch = batch(["Tin", 3, 200]);
    await press("Add starter tables");
    expect(totals()).toContain("Candles3");
  });

  it("keeps what was typed in a unit for coming back to it", async () => {
    const host = new FakeHost({
      Batch: [
        ["Vessel", "Quantity", "Fill weight"],
        ["Tin", 4, 7],
      ],
    });
    await show(host);
    await fill("Scale reads to (g)", "0.1");
    await fill("Pot holds (g)", "2345.6");
    await fill("Weights in", "kg");
    await fill("Weights in", "g");
    expect(field("Scale reads to (g)")?.value).toBe("0.1");
    expect(field("Pot holds (g)")?.value).toBe("2345.6");
  });

  it("changes the factor of the vessel by its name, wherever its row is now", async () => {
    const vessels = (...rows: CellValue[][]): CellValue[][] => [["Vessel", "Water weight (g)", "Wax factor"], ...rows];
    const tin = ["Tin", 125, 0.86];
    const jar = ["Jar", 250, 0.86];
    const host = new FakeHost({
      Batch: batch(["Jar", 4, 215]),
      Vessels: vessels(tin, jar),
      RunsLog: [
        ["Lot", "Vessel", "Weighed each", "Water weight"],
        ["2026-329-01", "Jar", 200, 250],
        ["2026-329-02", "Jar", 200, 250],
      ],
    });
    host.added.push(titled("Run 2026-329-01", "2026-329-01"));
    await show(host);
    host.all.Vessels = vessels(jar, tin);
    // No event has come: the pane still shows the rows as they were.
    await press("Change Jar from 0.86 to 0.8");
    expect(host.wrote).toEqual([{ sheet: "Sheet Vessels", cells: [{ row: 5, column: 2, content: { number: 0.8 } }] }]);
    host.all.Vessels = vessels(["Jar", 250, 0.9], tin);
    await press("Change Jar from 0.86 to 0.8");
    expect(host.wrote).toHaveLength(1);
    expect(alert()).toBe("Jar has another wax factor now. Check it, then press again.");
  });

  it("writes nothing when the tables cannot be read again", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 10, 200]) });
    await show(host);
    host.all.Batch = batch(["Tin", 99, 200]);
    host.held.tables = Promise.reject(new Error("Excel is busy; leave the cell, then try again."));
    await press("Write run sheet");
    expect(host.added).toEqual([]);
    expect(alert()).toBe("Excel is busy; leave the cell, then try again.");
  });

  it("writes what the table holds at the press, not what was drawn", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 10, 200]) });
    await show(host);
    host.all.Batch = batch(["Tin", 3, 200]);
    await press("Write run sheet");
    const { cells } = host.added[0] as Sheet;
    const tin = cells.find(
      ({ column, content }) => column === 0 && content && "text" in content && content.text === "Tin",
    );
    expect(cells.find(({ row, column }) => row === tin?.row && column === 1)?.content).toEqual({ number: 3 });
    expect(status()).toMatch(/^Run sheet written: Run /);
  });

  it("does one thing at a time, keeps the focus, and says why it does nothing", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 10, 200]) });
    await show(host);
    let answer = () => {};
    host.held.addSheet = new Promise<void>((done) => {
      answer = done;
    });
    button("Write run sheet").focus();
    await press("Write run sheet");
    await press("Write run sheet");
    expect(button("Write run sheet").getAttribute("aria-disabled")).toBe("true");
    await act(async () => answer());
    await wait();
    expect(host.added).toHaveLength(1);
    expect(document.activeElement).toBe(button("Write run sheet"));

    await fill("Default load", "6");
    expect(button("Write run sheet").getAttribute("aria-disabled")).toBe("true");
    expect(document.getElementById("pane-why")?.textContent).toBe("Fix the settings first.");
    await fill("Default load", "6%");
    host.all.Batch = batch(["Tin", 1.5, 200]);
    host.changed();
    await wait(300);
    expect(document.getElementById("pane-why")?.textContent).toBe("1 thing to fix first: see Check.");
    // The good word of before does not stand beside what is wrong now.
    expect(status()).toBe("");
    await press("Write run sheet");
    expect(host.added).toHaveLength(1);
  });

  it("can be stopped while it writes, and writes at the next press", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 10, 200]) });
    await show(host);
    const adding = vi
      .spyOn(host, "addSheet")
      .mockImplementationOnce(
        (_: Sheet, { signal }: Work = {}) =>
          new Promise((_, reject) => signal?.addEventListener("abort", () => reject(signal.reason))),
      );
    await press("Write run sheet");
    expect(element.querySelector("progress")?.value).toBe(0);
    await press("Stop");
    expect(status()).toBe("Stopped. Nothing was written.");
    expect(alert()).toBe("");
    expect(element.querySelector("progress")).toBeNull();
    await press("Write run sheet");
    expect(adding).toHaveBeenCalledTimes(2);
    expect(status()).toMatch(/^Run sheet written: Run /);
  });

  it("takes what is typed while a plan is worked out, and plans the last of it", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 4, 200]) });
    const asked: number[] = [];
    let held: Promise<void> | undefined;
    await show(host, async (tables, settings) => {
      asked.push(settings.loss);
      await held;
      return planHere(tables, settings);
    });
    let answer = () => {};
    held = new Promise<void>((done) => {
      answer = done;
    });
    for (const typed of ["10%", "20%", "50%"]) {
      await fill("Extra to melt (loss)", typed);
      expect(field("Extra to melt (loss)")?.value).toBe(typed);
    }
    // The plan of before stands until there is another one: 4 x 200 and 3 % more.
    expect(totals()).toContain("Melted824 g");
    await act(async () => answer());
    await wait();
    expect(totals()).toContain("Melted1200 g");
    expect(asked).toEqual([0.03, 0.1, 0.5]);
  });

  it("says why no plan could be worked out, and plans again after the next change", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 4, 200]) });
    let fails = true;
    await show(host, async (tables, settings) => {
      if (fails) throw new Error("The plan could not be worked out.");
      return planHere(tables, settings);
    });
    expect(alert()).toBe("The plan could not be worked out.");
    fails = false;
    await fill("Extra to melt (loss)", "5%");
    expect(totals()).toContain("Melted840 g");
  });

  it("writes nothing while rows below a table are undecided, and takes them in at a press", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 10, 200]) });
    host.below = 48;
    await show(host);
    // The heading is on row 4, its one row on row 5.
    const said = element.querySelector(".problems li.stop")?.textContent;
    expect(said).toContain("Fix row 6 48 rows right below the table, no part of it");
    await press("Write run sheet");
    expect(host.added).toEqual([]);
    await press("Take the 48 rows into Batch");
    expect(host.takenIn).toEqual([{ table: "Batch", rows: 48 }]);
    expect(status()).toBe("Batch has 48 more rows now.");
    expect(element.querySelector(".problems li.stop")).toBeNull();
    await press("Write run sheet");
    expect(host.added).toHaveLength(1);
  });

  it("leaves rows below a table out at a press, says so, and asks again when there are more", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 10, 200]) });
    host.below = 1;
    await show(host);
    await press("Leave the row out of Batch");
    expect(element.querySelector(".problems")?.textContent).toContain("1 row below the table left out");
    host.below = 2;
    host.changed();
    await wait(300);
    expect(element.querySelector(".problems li.stop")?.textContent).toContain("2 rows right below the table");
    await press("Write run sheet");
    expect(host.added).toEqual([]);
  });

  it("asks about a column that nobody reads until it is left out, and keeps that in the workbook", async () => {
    const rows = batch(["Tin", 10, 200, 0.08]);
    (rows[0] as CellValue[]).push("Richness %");
    const host = new FakeHost({ Batch: rows });
    await show(host);
    expect(element.querySelector(".problems")?.textContent).toContain("Richness %");
    await press("Leave Richness % out");
    expect(element.querySelector(".problems")?.textContent ?? "").not.toContain("Richness %");
    expect(host.saved.at(-1)).toMatchObject({ leftOut: { "pour Batch": ["Richness %"] } });
    await press("Ask about them again");
    expect(element.querySelector(".problems")?.textContent).toContain("Richness %");
  });

  it("never cuts what is about safety from a long list", async () => {
    const rows = Array.from({ length: 70 }, (_, i): CellValue[] => [`Tin ${i}`, 1, 200, `Scent ${i}`, 0.2]);
    const host = new FakeHost({
      Batch: [["Vessel", "Quantity", "Fill weight (g)", "Scent", "Load"], ...rows],
      Scents: [["Scent", "Product limit"], ...rows.map((row) => [row[3] as string, 0.1])],
    });
    await show(host);
    const said = [...element.querySelectorAll(".problems li.stop")].map(({ textContent }) => textContent);
    for (let i = 0; i < 70; i++)
      expect(said.filter((text) => text?.includes(`Scent ${i}: over the product limit`))).toHaveLength(1);
  });

  it("says what is true of many rows once, with all of their numbers", async () => {
    const host = new FakeHost({
      Batch: batch(...Array.from({ length: 60 }, (_, i) => ["Tin", i === 30 ? 2 : 1.5, 200])),
    });
    await show(host);
    const stops = [...element.querySelectorAll(".problems li.stop")].map(({ textContent }) => textContent);
    expect(stops).toEqual(["Fix rows 5 to 34 and 36 to 64 Quantity: 1.5 is not a whole number above 0"]);
    expect(document.getElementById("pane-why")?.textContent).toBe("1 thing to fix first: see Check.");
  });

  it("shows what was read last, whichever reading ends last", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 1, 200]) });
    await show(host);
    let answerOld = () => {};
    host.held.tables = new Promise<void>((done) => {
      answerOld = done;
    });
    host.changed();
    await wait(300);
    // The old reading has its rows of the time, and is kept waiting behind the new one.
    const { Batch: old } = host.all;
    host.held.tables = undefined;
    host.all.Batch = batch(["Tin", 7, 200]);
    host.changed();
    await wait(300);
    expect(totals()).toContain("Candles7");
    host.all.Batch = old as CellValue[][];
    await act(async () => answerOld());
    await wait();
    expect(totals()).toContain("Candles7");
  });

  it("keeps no settings once it is closed: another workbook may be open by then", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 4, 200]) });
    let answer = () => {};
    await show(host);
    host.held.addSheet = new Promise<void>((done) => {
      answer = done;
    });
    await press("Write run sheet");
    await act(async () => root.unmount());
    const saved = host.saved.length;
    await act(async () => answer());
    await wait();
    expect(host.added).toHaveLength(1);
    expect(host.saved).toHaveLength(saved);
    root = createRoot(element);
  });

  it("offers every kind of table that a run can read", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 10, 200]) });
    await show(host);
    const names = (isFormer: boolean) =>
      Object.values<TableType>(TABLE_TYPES).flatMap((type) => (!type.isFormer === isFormer ? [] : [type.name]));
    for (const name of names(false)) expect(field(name), name).not.toBeNull();
    for (const name of names(true)) expect(field(name), name).toBeNull();
  });

  it("offers a table under a name of before where it is there", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 10, 200]), Stock: [["Item", "On hand"]] });
    await show(host);
    expect(field("Stock")?.value).toBe("Stock");
    expect(field("Prices")).toBeNull();
  });

  it("takes headings and kept settings that bear a name of the language's own as plain text", async () => {
    const host = new FakeHost({
      Batch: [
        ["__proto__", "constructor", "Vessel", "Quantity", "Fill (g)", "toString"],
        ["x", "y", "Tin", 4, 200, "z"],
      ],
    });
    host.kept = JSON.parse(
      '{"typed":{"constructor":"x","__proto__":{"loss":"9%"}},"choices":{"constructor":1,"toString":2},"divisions":{"valueOf":"3"},"columns":{"__proto__":{"vessel":"Vessel"},"pour Batch":{"constructor":"Tin","__proto__":null}},"leftOut":{"__proto__":["a"]}}',
    );
    await show(host);
    expect(totals()).toContain("Candles4");
    expect(field("Extra to melt (loss)")?.value).toBe("3%");
  });

  it("puts in a further table where there is none, and takes it up", async () => {
    const host = new FakeHost({ Batch: batch(["Tin", 10, 200]), Moves: [["Date", "Item", "Lot", "Change"]] });
    await show(host);
    expect(button("Add a table called Moves")).toBeUndefined();
    await press("Add a table called Items");
    expect(host.added[0]?.tables?.[0]).toMatchObject({
      name: "Items",
      headings: [
        ...["Item", "Kind", "On hand (g)", "Pack size (g)", "Pack price", "Unit price (per g)", "Reorder below (g)"],
        ...["Supplier", "Delivery"],
      ],
    });
    for (const kind of ["vessels", "scents", "recipes", "items", "moves", "components"] as const) {
      for (const unit of ["g", "kg", "oz", "lb"] as const) {
        const [table] = starterSheet(kind, unit).tables ?? [];
        expect(table?.name).toBe(TABLE_TYPES[kind].name);
        expect(missingFields(kind, matchColumns(kind, table?.headings ?? []))).toEqual([]);
      }
    }
  });

  it("puts in the starter tables that are missing, by the vessel table that is there", async () => {
    const host = new FakeHost({ vessels: [["Jar", "Fill (g)"]] });
    await show(host);
    await press("Add starter tables");
    expect(host.added.map(({ name }) => name)).toEqual(["Scents", "Batch"]);
    const formulas = host.added[1]?.cells.flatMap(({ content }) =>
      content && "formula" in content ? [content.formula] : [],
    );
    expect(formulas?.[0]).toContain("INDEX(vessels[Fill (g)],MATCH(TRIM(Batch[[#This Row],[Vessel]]),vessels[Jar],0))");
    // 8 oz in the one table are 226.796 g in the other.
    const ounces = new FakeHost({ Vessels: [["Jar", "Fill (oz)"]] });
    await show(ounces);
    await press("Add starter tables");
    expect(JSON.stringify(ounces.added[1])).toContain("vessels[Jar],0))*28.349523125".replace("vessels", "Vessels"));
    const other = new FakeHost({ Vessels: [["Jar", "Colour"]] });
    await show(other);
    await press("Add starter tables");
    expect(JSON.stringify(other.added[1])).not.toContain("formula");
  });
});
