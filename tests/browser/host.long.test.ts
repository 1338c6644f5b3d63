import { describe, expect, it } from "vitest";
import type { Cell, Sheet } from "../../src/sheet/sheet";
import { HOSTILE_TEXTS } from "../hostileTexts";
import { later } from "./later";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";

declare global {
  /** The listeners that a test keeps in the page, and how often each was called. */
  interface Window {
    listeners: Record<string, { calls: number; stop: () => void }>;
    listen: (name: string) => void;
  }
}

describe("the embedded spreadsheet as the pane's host, through long ways", () => {
  // One page for all: each test adds sheets of its own.
  const tryout = new OpenedSite().page();
  const sheetOf = (cells: Cell[], name: string): Sheet => ({ name, widths: [20], cells });

  it("has the formulas of a table's own columns computed on a machine however busy", async () => {
    const busy = "Busy";
    const rows = await later(
      tryout.page,
      (name) => {
        const { host } = window.pourwright;
        const formula = `=${name}[[#This Row],[Quantity]]*2`;
        const cells = [
          { row: 0, column: 0, content: { text: "Quantity" } },
          { row: 0, column: 1, content: { text: "Double" } },
          { row: 1, column: 0, content: { number: 21 } },
          { row: 1, column: 1, content: { formula } },
        ];
        const tables = [{ name, row: 0, column: 0, headings: ["Quantity", "Double"], rows: 1 }];
        /** Lets the next turn of each step come so late that a calculation has come between. */
        const onProgress = () => {
          const { setTimeout } = window;
          window.setTimeout = ((next: () => void) => {
            window.setTimeout = setTimeout;
            return setTimeout(next, 1500);
          }) as typeof setTimeout;
        };
        const added = host.addSheet({ name, widths: [10, 10], cells, tables }, { onProgress });
        // An edit right behind it ends the calculation that is under way.
        const edited = added.then(() => host.write(name, [{ row: 1, column: 0, content: { number: 22 } }]));
        return edited.then(() => host.readSheet(name));
      },
      busy,
    );
    expect(rows[1]).toEqual([22, 44]);
  });

  it("writes texts as the texts they are, also after somebody has edited their cells", async () => {
    await tryout.host(
      "addSheet",
      sheetOf(
        HOSTILE_TEXTS.map((text, i) => ({ row: 1 + i, column: 0, content: { text } })),
        "Texts",
      ),
    );
    const expected = HOSTILE_TEXTS.map((text) => [text]);
    expect(await tryout.cells("Texts", 1, 0, HOSTILE_TEXTS.length)).toEqual(expected);
    for (const text of ["=1+1", "-2", "'quoted", "12", "6%", "#N/A", "=POUR.FILLWEIGHT(1)"]) {
      await tryout.goTo(`A${2 + HOSTILE_TEXTS.indexOf(text)}`);
      await tryout.enterAgain();
    }
    expect(await tryout.cells("Texts", 1, 0, HOSTILE_TEXTS.length)).toEqual(expected);
  });

  it("writes a thousand rows with formulas", async () => {
    const headings = ["Vessel", "Water (g)", "Fill (g)", "Scent (g)"];
    const cells: Cell[] = headings.map((text, column) => ({ row: 0, column, content: { text }, look: "heading" }));
    for (let row = 1; row <= 1000; row++) {
      cells.push({ row, column: 0, content: { text: `Vessel ${row}` }, look: "input" });
      cells.push({ row, column: 1, content: { number: row }, look: "input", format: "0.0" });
      cells.push({ row, column: 2, content: { formula: "=POUR.FILLWEIGHT(Many[[#This Row],[Water (g)]])" } });
      cells.push({ row, column: 3, content: { formula: "=POUR.SCENTPART(Many[[#This Row],[Fill (g)]],6%)" } });
    }
    await tryout.host("addSheet", {
      ...sheetOf(cells, "Many"),
      tables: [{ name: "Many", row: 0, column: 0, headings, rows: 1000 }],
    });
    const { rows } = await tryout.table("Many");
    expect(rows).toHaveLength(1000);
    expect(rows[999]?.slice(0, 3)).toEqual(["Vessel 1000", 1000, 860]);
  });

  it("keeps settings in the workbook, through another one and back", async () => {
    const settings = { scale: 0.5, list: [1, { a: "b" }] };
    expect(await tryout.host("settings")).toBeNull();
    await tryout.host("keepSettings", settings);
    const left = await tryout.page.evaluate(() => structuredClone(window.pourwright.snapshot()));
    await tryout.openWorkbook("Demo burn tests");
    expect(await tryout.host("settings")).not.toEqual(settings);
    await later(tryout.page, (data) => window.pourwright.open(data), left);
    expect(await tryout.host("settings")).toEqual(settings);
  });

  it("calls back after edits and when another workbook is opened, and no more once stopped", async () => {
    const { page } = tryout;
    const calls = (name: string) => page.evaluate((one) => window.listeners[one]?.calls ?? 0, name);
    await page.evaluate(() => {
      window.listeners = {};
      window.listen = (name) => {
        const listener = { calls: 0, stop: window.pourwright.host.onChange(() => listener.calls++) };
        window.listeners[name] = listener;
      };
      window.listen("from the first");
    });
    await tryout.type("B40", "x");
    await expect.poll(() => calls("from the first"), PATIENCE).toBeGreaterThan(0);
    // A listener from just before the opening hears nothing of the edit.
    await page.getByRole("button", { name: "New", exact: true }).click();
    await page.getByRole("button", { name: "Demo burn tests", exact: true }).evaluate((choice: HTMLButtonElement) => {
      window.listen("opening");
      choice.click();
    });
    await expect.poll(() => calls("opening"), PATIENCE).toBeGreaterThan(0);
    await tryout.tables();
    // One that goes on listening tells when a call would have come.
    const before = await page.evaluate(() => {
      window.listen("going on");
      for (const name of ["from the first", "opening"]) window.listeners[name]?.stop();
      return window.listeners["from the first"]?.calls;
    });
    await tryout.type("B40", "y");
    await expect.poll(() => calls("going on"), PATIENCE).toBeGreaterThan(0);
    expect(await calls("from the first")).toBe(before);
    await tryout.openWorkbook("Demo studio");
  });
});
