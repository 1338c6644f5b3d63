import { describe, expect, it } from "vitest";
import { approveWick } from "../../src/pane/actions/approveWick";
import { tableOf } from "../../src/pane/givenTables";
import { buildRun } from "../../src/runsheet/buildRun";
import { FIRST_SETTINGS } from "../../src/runsheet/settings";
import { describeRun } from "../../src/runsheet/sheet/describeRun";
import type { Tables } from "../../src/runsheet/tables/tableRows";
import type { Cell, CellValue } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";
import { plainOf } from "./pourHost";
import { KEPT, KINDS, type TestedTable, testedBook, testedTables } from "./testedBook";

/** Takes what is written as a spreadsheet does, or refuses it whole. */
class VesselHost extends FakeHost {
  refusal: Error | undefined;
  formulas = false;

  override async isFormula() {
    return this.formulas;
  }

  override async write(sheet: string, cells: readonly Cell[]) {
    if (this.refusal) throw this.refusal;
    const source = (await this.tables()).find(({ place }) => place.sheet === sheet);
    const rows = this.all[source?.name ?? ""] as CellValue[][];
    for (const { row, column, content } of cells) {
      (rows[row - (source?.place.row ?? 0)] as CellValue[])[column - (source?.place.column ?? 0)] = plainOf(content);
    }
    await super.write(sheet, cells);
  }
}

function workbook() {
  const host = new VesselHost(testedTables());
  const book = testedBook(host);
  const run = async () => {
    const read = await book.refresh();
    const tables = Object.values(KINDS).map((kind) => [kind, tableOf(kind, read, KEPT)]);
    return buildRun(Object.fromEntries(tables) as Tables, FIRST_SETTINGS);
  };
  return {
    ...{ host, book, run },
    untested: async () => (await run()).problems.map(({ text }) => text).filter((text) => /^(not )?tested/.test(text)),
    /** Changes a cell of a table; rows from 1 below the heading. */
    change: (table: TestedTable, row: number, column: number, value: CellValue) => {
      ((host.all[table] as CellValue[][])[row] as CellValue[])[column] = value;
    },
  };
}

describe("approving a wick in a workbook", () => {
  it("leaves a formula in the cell as it is, and says so", async () => {
    const { host, book } = workbook();
    host.formulas = true;
    await expect(approveWick(book, "B")).rejects.toThrow("B7 on Sheet Vessels holds a formula");
    expect(host.wrote).toEqual([]);
  });

  it("writes it into the one cell of its vessel, and the next run sheet prints and counts it", async () => {
    const { host, book, run, untested } = workbook();
    expect(await untested()).toEqual([expect.stringContaining("not tested: Bowl, no approved wick")]);
    const { words, doubts } = await approveWick(book, "B");
    expect(doubts).toBeUndefined();
    expect(words).toContain("Size 6 stands in Vessels as the wick of Bowl");
    expect(host.wrote).toEqual([
      { sheet: "Sheet Vessels", cells: [{ row: 6, column: 1, content: { text: "Size 6" } }] },
    ]);
    expect(await untested()).toEqual([]);
    const settings = { ...FIRST_SETTINGS, live: false };
    const sheet = describeRun(await run(), { lot: "2026-330-01", date: 46352, settings });
    const texts = sheet.cells.map(({ content }) => plainOf(content));
    expect(texts).toContain("wick Size 6");
    // Four candles take four wicks, in the list of what to fetch.
    const fetched = sheet.cells.find(({ content }) => plainOf(content) === "Wick: Size 6");
    expect(sheet.cells.filter(({ row }) => row === fetched?.row).map(({ content }) => plainOf(content))).toContain(4);
  });

  it.each([
    [
      "wax",
      "Batch",
      1,
      4,
      "Hard wax",
      "not tested: Bowl, wick Size 6 in Hard wax at 6 % of wax; nearest test A: wick Size 6 in Soft wax at 6 % of wax",
    ],
    [
      "load",
      "Batch",
      1,
      3,
      0.08,
      "not tested: Bowl, wick Size 6 in Soft wax at 8 % of wax; nearest test A: wick Size 6 in Soft wax at 6 % of wax",
    ],
    [
      "wick",
      "Vessels",
      2,
      1,
      "Size 8",
      "not tested: Bowl, wick Size 8 in Soft wax at 6 % of wax; nearest test A: wick Size 6 in Soft wax at 6 % of wax",
    ],
  ] as const)("is followed by a warning when another %s is poured", async (_, table, row, column, value, says) => {
    const { book, untested, change } = workbook();
    await approveWick(book, "A");
    change(table, row, column, value);
    expect(await untested()).toEqual([says]);
  });

  it("asks before it writes, and writes only what was asked about", async () => {
    const { host, book, change } = workbook();
    change("Vessels", 2, 1, "Size 4");
    const { doubts } = await approveWick(book, "A");
    expect(doubts).toEqual(["Size 4 stands there as the wick of Bowl, and would be replaced"]);
    change("Vessels", 2, 1, "Size 5");
    const again = await approveWick(book, "A", doubts);
    expect(again.doubts).toEqual(["Size 5 stands there as the wick of Bowl, and would be replaced"]);
    expect(again.words).toMatch(/^What is to check has changed/);
    expect(host.wrote).toEqual([]);
    await approveWick(book, "A", again.doubts);
    expect(host.all.Vessels?.[2]).toEqual(["Bowl", "Size 6", 240]);
    expect((await approveWick(book, "A")).words).toMatch(/^Size 6 stands in Vessels as the wick of Bowl\.$/);
    expect(host.wrote).toHaveLength(1);
  });

  it("leaves the workbook as it was where it is refused, or cannot be written", async () => {
    const { host, book, change } = workbook();
    const before = JSON.stringify(host.all);
    host.refusal = new Error("The sheet is protected.");
    await expect(approveWick(book, "A")).rejects.toThrow("The sheet is protected.");
    await expect(approveWick({ ...book, settings: undefined }, "A")).rejects.toThrow();
    expect(JSON.stringify(host.all)).toBe(before);
    host.refusal = undefined;
    change("Readings", 6, 3, 95);
    await expect(approveWick(book, "A")).rejects.toThrow(/^Size 6 cannot be approved for Bowl: C, cycle 1/);
    expect(host.wrote).toEqual([]);
  });
});
