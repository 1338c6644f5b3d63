import { describe, expect, it } from "vitest";
import type { Cell, Sheet } from "../../src/sheet/sheet";
import { later } from "./later";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";

describe("the embedded spreadsheet as the pane's host", () => {
  // One page for all: each test adds sheets of its own.
  const tryout = new OpenedSite().page();
  const sheetOf = (cells: Cell[], name: string): Sheet => ({ name, widths: [20], cells });

  it("adds a sheet, shows it, and has its formulas computed when it says so", async () => {
    const cells: Cell[] = [
      { row: 1, column: 0, content: { formula: "=POUR.SCENTSPLIT(318,6%)" }, format: "0.00" },
      { row: 2, column: 0, content: { formula: "=SUM(Vessels[Water weight (g)])" } },
    ];
    expect(await tryout.host("addSheet", sheetOf(cells, "Formulas"))).toBe("Formulas");
    const [[wax, scent], [sum]] = (await tryout.cells("Formulas", 1, 0, 2, 2)) as [[number, number], [number]];
    // By hand: 300 x 1.06 = 318.
    expect([wax, scent]).toEqual([300, 18]);
    expect(sum).toBeGreaterThan(1000);
    expect(await tryout.page.getByRole("tab", { name: "Formulas", exact: true }).getAttribute("aria-selected")).toBe(
      "true",
    );
  });

  it("never takes a name or a table that is there", async () => {
    const before = await tryout.host("sheetNames");
    const name = await tryout.host("addSheet", sheetOf([], "vessels"));
    expect(before.map((one) => one.toLowerCase())).not.toContain(String(name).toLowerCase());
    const taken = {
      ...sheetOf([], "Taken"),
      tables: [{ name: "VESSELS", row: 0, column: 0, headings: ["a"], rows: 1 }],
    };
    await expect(tryout.host("addSheet", taken)).rejects.toThrow(/^A table "VESSELS"/);
    expect(await tryout.host("sheetNames")).toEqual([...before, name]);
  });

  it("leaves no sheet behind when writing fails half-way", async () => {
    const before = await tryout.host("sheetNames");
    const messages = await later(tryout.page, async () => {
      const { host } = window.pourwright;
      let reads = 0;
      /** Adds a sheet with a table whose headings can be read so many times; the last time is after the sheet is there. */
      const add = (name: string, good: number) => {
        reads = 0;
        const table = {
          name,
          row: 0,
          column: 0,
          rows: 1,
          get headings() {
            if (++reads > good) throw new Error("broken");
            return ["a"];
          },
        };
        const added = host.addSheet({ name, widths: [], cells: [], tables: [table] });
        return added.catch((fault: Error) => fault.message);
      };
      const written = await add("Whole", Number.POSITIVE_INFINITY);
      return [written, await add("Half", reads - 1)];
    });
    expect(messages).toEqual(["Whole", "broken"]);
    expect(await tryout.host("sheetNames")).toEqual([...before, "Whole"]);
    expect((await tryout.tables()).map(({ name }) => name)).not.toContain("Half");
  });

  it("gives the selected range by its headings, and asks for one when a single cell is selected", async () => {
    await tryout.openSheet("Vessels");
    await tryout.goTo("A4:C6");
    expect(await tryout.host("selection")).toMatchObject({
      name: "",
      place: { sheet: "Vessels", row: 3, column: 0, rows: 3, columns: 3 },
      headings: ["Vessel", "Shape", "Water weight (g)"],
      rows: [
        ["Tea-light cup", expect.any(String), 17.5],
        [expect.any(String), expect.any(String), 68],
      ],
    });
    await tryout.goTo("A4");
    await expect(tryout.host("selection")).rejects.toThrow(/^Select the whole table/);
  });

  it("brings a far cell into view when it is selected", async () => {
    await tryout.host("select", { sheet: "Batch", row: 300, column: 20, rows: 1, columns: 1 });
    await expect.poll(() => tryout.nameBox.inputValue(), PATIENCE).toBe("U301");
    await tryout.page.keyboard.type("here", { delay: 5 });
    await tryout.page.keyboard.press("Enter");
    expect(await tryout.cells("Batch", 300, 20)).toEqual([["here"]]);
    const gone = { sheet: "Gone", row: 0, column: 0, rows: 1, columns: 1 };
    await expect(tryout.host("select", gone)).rejects.toThrow(/^The sheet/);
  });
});
