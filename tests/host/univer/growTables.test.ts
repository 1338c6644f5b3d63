import { RedoCommand, UndoCommand } from "@univerjs/core";
import { InsertRowByRangeCommand } from "@univerjs/preset-sheets-core";
import { describe, expect, it } from "vitest";
import { BY_PANE, followEdits } from "../../../src/host/univer/editing/edits";
import { growTables } from "../../../src/host/univer/editing/growTables";
import { fillInserted } from "../../../src/host/univer/editing/newRows";
import type { Cell, Sheet } from "../../../src/sheet/sheet";
import { Headless } from "./headless";

const cell = (row: number, column: number, content: string | number | null, format?: string): Cell => ({
  row,
  column,
  look: "input",
  ...(format && { format }),
  ...(content !== null && {
    content:
      typeof content === "number"
        ? { number: content }
        : content.startsWith("=")
          ? { formula: content }
          : { text: content },
  }),
});

/** A table Pours from B3: Vessel, Quantity and Fill, which is the quantity times column F of its row; the numbers are invented. */
const pours = (more: readonly Cell[] = [], tables: Sheet["tables"] = []): Sheet => ({
  name: "Pours",
  widths: [],
  cells: [
    ...["Vessel", "Quantity", "Fill"].map((heading, i) => cell(2, 1 + i, heading)),
    ...[3, 4, 5].flatMap((row) => [
      cell(row, 1, `Tin ${row}`),
      cell(row, 2, row, "0.0%"),
      cell(row, 3, `=Pours[[#This Row],[Quantity]]*F${row + 1}`),
    ]),
    ...more,
  ],
  tables: [{ name: "Pours", row: 2, column: 1, headings: ["Vessel", "Quantity", "Fill"], rows: 3 }, ...tables],
});

function open(...sheets: Sheet[]): Headless {
  const headless = new Headless(sheets);
  followEdits(
    headless.injector,
    (edit) => growTables(headless.injector, edit) ?? fillInserted(headless.injector, edit),
  );
  return headless;
}

const FILL = (row: number) => `=Pours[[#This Row],[Quantity]]*F${row + 1}`;

describe("a table grows", () => {
  it("by a row typed right below it, with the formula and the look of its columns, and back by one press", async () => {
    const page = open(pours());
    await page.enter(6, 1, [["Jar"]]);
    expect(page.table("Pours")?.rows).toBe(4);
    expect(page.cells(6, 1, 1, 3)).toEqual([["Jar", null, FILL(6)]]);
    const looks = (row: number) => [1, 2, 3].map((column) => page.sheet.getComposedCellStyle(row, column));
    expect(looks(6)).toEqual(looks(5));
    await page.run(UndoCommand.id, {});
    expect(page.table("Pours")?.rows).toBe(3);
    expect(page.cells(6, 1, 1, 3)).toEqual([[null, null, null]]);
    await page.run(RedoCommand.id, {});
    expect(page.table("Pours")?.rows).toBe(4);
    expect(page.cells(6, 1, 1, 3)).toEqual([["Jar", null, FILL(6)]]);
  });

  it("by all rows that are pasted, blank ones between them too, and keeps what was pasted over the formula", async () => {
    const page = open(pours());
    await page.enter(6, 1, [
      ["Jar", 1, null],
      [null, null, null],
      ["Cup", 2, 9],
    ]);
    expect(page.table("Pours")?.rows).toBe(6);
    expect(page.cells(6, 1, 3, 3)).toEqual([
      ["Jar", 1, FILL(6)],
      [null, null, FILL(7)],
      ["Cup", 2, 9],
    ]);
  });

  it("by rows pasted from inside of it on", async () => {
    const page = open(pours());
    await page.enter(5, 1, [["Tin"], ["Jar"]]);
    expect(page.table("Pours")?.rows).toBe(4);
  });

  it("with the formula that most rows share, though a number was typed over it in one", async () => {
    const page = open(pours());
    await page.enter(5, 3, [[210]]);
    await page.enter(6, 1, [["Jar"]]);
    expect(page.cell(6, 3)).toBe(FILL(6));
  });

  it("without a formula where the rows share none", async () => {
    const page = open(pours());
    await page.enter(4, 3, [["=1+1"], ["=2+2"]]);
    await page.enter(6, 1, [["Jar"]]);
    expect(page.cell(6, 3)).toBeNull();
  });

  it("for formulas too that read a whole column of it by its cells, and back", async () => {
    const sums = ["=SUM(Pours!$C$4:$C$6)", "=SUM('Pours'!$C$4:$C$6,Pours!$C$4:$C$5)", '=COUNTA("Pours!$C$4:$C$6")'];
    const page = open(pours(sums.map((sum, row) => cell(20 + row, 8, sum))));
    await page.enter(6, 1, [["Jar"], ["Cup"]]);
    const [first, second] = page.cells(20, 8, 2, 1).flat();
    expect([first, second]).toEqual(["=SUM(Pours!$C$4:$C$8)", "=SUM('Pours'!$C$4:$C$8,Pours!$C$4:$C$5)"]);
    await page.run(UndoCommand.id, {});
    expect(page.cells(20, 8, 3, 1).flat()).toEqual(sums);
  });

  it("by a column whose heading is typed right of its own, which formulas can name", async () => {
    const page = open(pours());
    await page.enter(2, 4, [["Note"]]);
    expect(page.table("Pours")).toEqual({
      rows: 3,
      headings: ["Vessel", "Quantity", "Fill", "Note"],
      known: ["Vessel", "Quantity", "Fill", "Note"],
    });
    await page.run(UndoCommand.id, {});
    expect(page.table("Pours")?.headings).toEqual(["Vessel", "Quantity", "Fill"]);
  });
});

describe("a table stays as it is", () => {
  const unchanged = async (
    page: Headless,
    row: number,
    column: number,
    rows: (string | number | null)[][],
    id?: string,
  ) => {
    await page.enter(row, column, rows, id);
    expect(page.table("Pours")).toMatchObject({ rows: 3, headings: ["Vessel", "Quantity", "Fill"] });
  };

  it("when a blank row lies between, or only a look was given", async () => {
    const page = open(pours());
    await unchanged(page, 7, 1, [["Jar"]]);
    await unchanged(page, 6, 1, [[null]]);
  });

  it("when something stands in the row already, or a note there is written anew", async () => {
    await unchanged(open(pours([cell(6, 3, "a note")])), 6, 1, [["Jar"]]);
    await unchanged(open(pours([cell(6, 1, "a note")])), 6, 1, [["another note"]]);
    await unchanged(open(pours([cell(7, 3, "a note")])), 6, 1, [["Jar"], [null], ["Cup"]]);
  });

  it("when a sum is written below it", async () => {
    await unchanged(open(pours()), 6, 2, [["=SUM(C4:C6)"]]);
    await unchanged(open(pours()), 6, 1, [["Total", "=SUM(C4:C6)"]]);
    await unchanged(open(pours()), 6, 1, [["Sum:"]]);
  });

  it("when another table is in the way", async () => {
    const other = { name: "Wax", row: 7, column: 2, headings: ["Wax"], rows: 1 };
    await unchanged(open(pours([cell(7, 2, "Wax"), cell(8, 2, "W")], [other])), 6, 1, [["Jar"], ["Cup"]]);
  });

  it("when the pane writes", async () => {
    await unchanged(open(pours()), 6, 1, [["Jar"]], BY_PANE);
  });

  it("when the heading is there already, is no word, or something stands below it", async () => {
    await unchanged(open(pours()), 2, 4, [["fill"]]);
    await unchanged(open(pours()), 2, 4, [[5]]);
    await unchanged(open(pours([cell(4, 4, "a note")])), 2, 4, [["Note"]]);
  });
});

describe("a row put into a table", () => {
  const insert = (page: Headless, startRow: number) =>
    page.run(InsertRowByRangeCommand.id, {
      range: { startRow, endRow: startRow, startColumn: 0, endColumn: page.sheet.getColumnCount() - 1 },
      direction: 0,
    });

  it("brings the formulas of its columns, and goes with them by one press", async () => {
    const page = open(pours());
    await insert(page, 4);
    expect(page.table("Pours")?.rows).toBe(4);
    expect(page.cells(3, 1, 4, 3)).toEqual([
      ["Tin 3", 3, FILL(3)],
      [null, null, FILL(4)],
      ["Tin 4", 4, FILL(5)],
      ["Tin 5", 5, FILL(6)],
    ]);
    await page.run(UndoCommand.id, {});
    expect(page.table("Pours")?.rows).toBe(3);
    expect(page.cells(3, 1, 4, 3).map(([vessel, , fill]) => [vessel, fill])).toEqual([
      ["Tin 3", FILL(3)],
      ["Tin 4", FILL(4)],
      ["Tin 5", FILL(5)],
      [null, null],
    ]);
  });

  it("outside of it changes nothing in it", async () => {
    const page = open(pours());
    await insert(page, 1);
    expect(page.table("Pours")?.rows).toBe(3);
    expect(page.cell(1, 3)).toBeNull();
  });
});
