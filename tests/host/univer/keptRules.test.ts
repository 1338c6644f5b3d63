import { Direction } from "@univerjs/core";
import {
  CopySheetCommand,
  FormulaRefRangeService,
  InsertRowCommand,
  SetRangeValuesMutation,
} from "@univerjs/preset-sheets-core";
import { describe, expect, it } from "vitest";
import type { Book, BookSheet } from "../../../src/file/book";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { conditionsJson, conditionsOf } from "../../../src/host/univer/file/conditionResource";
import { toUniver } from "../../../src/host/univer/file/toUniver";
import { everythingBook } from "./everythingBook";
import { openedBooks } from "./openedBooks";

/** Rules that the sheet has no words for, or no cells: they go along with the rest and come out as they went in. */

const books = openedBooks();

/** What becomes of a workbook by a command on its first sheet. */
async function doneIn(book: Book, id: string, params: object): Promise<Book> {
  const workbook = await books.open(book);
  await books.does(workbook, id, params);
  const back = books.univer.book(workbook, book);
  books.univer.close(workbook);
  return back;
}

const EXTENT = { rows: 1000, columns: 26 };
const rowsAbove = { range: { startRow: 0, endRow: 1, startColumn: 0, endColumn: 30 }, direction: Direction.UP };
const typed = { cellValue: { 2: { 1: { v: 200 } } } };

describe("a condition that the sheet has no words for", () => {
  const book = everythingBook();
  const first = book.sheets[0] as BookSheet;
  const strange = ({ conditions }: BookSheet) =>
    conditions.filter(({ kind, average }) => kind === "somethingNewer" || average?.deviations);

  it("is the very object of the file when something else changes", async () => {
    const back = await doneIn(book, SetRangeValuesMutation.id, typed);
    expect(strange(first)).toHaveLength(2);
    expect(back.sheets[0]?.conditions).toBe(first.conditions);
  });

  it("moves with its cells", () => {
    // The part of the sheet that moves rules needs a page.
    const json = conditionsJson(first.conditions, EXTENT).map((one) => ({
      ...one,
      ranges: one.ranges.map((range) => ({ ...range, startRow: range.startRow + 2, endRow: range.endRow + 2 })),
    }));
    const conditions = [...conditionsOf(json, EXTENT).values()];
    const areas = [{ row: 3, column: 1, rows: 2, columns: 2 }];
    expect(strange({ ...first, conditions })).toEqual(strange(first).map((one) => ({ ...one, areas, priority: 0 })));
  });

  it("is in a duplicate of its sheet, in the order of all", async () => {
    const back = await doneIn(book, CopySheetCommand.id, {});
    const copy = back.sheets[1] as BookSheet;
    expect(copy.name).not.toBe(back.sheets[2]?.name);
    const kinds = (sheet: BookSheet) =>
      [...sheet.conditions]
        .sort((a, b) => a.priority - b.priority)
        .map(({ kind }) => kind.replace("cellIs", "expression"));
    expect(kinds(copy)).toEqual(kinds(first));
    const without = (sheet: BookSheet) => strange(sheet).map(({ priority: _, ...rest }) => rest);
    expect(without(copy)).toEqual(without(first));
  });
});

describe("rules for cells below those of the sheet", () => {
  const far = { row: 400_000, column: 1, rows: 5, columns: 1 };
  const below = { row: 4000, column: 1, rows: 5, columns: 1 };
  const near = { row: 1, column: 1, rows: 2, columns: 2 };
  const plain = everythingBook();
  const [first, ...others] = plain.sheets as [BookSheet, ...BookSheet[]];
  const [condition, validation] = [first.conditions[0], first.validations[0]];
  if (!condition || !validation) throw new Error("no rules");
  const book: Book = {
    ...plain,
    sheets: [
      {
        ...first,
        conditions: [[far], [near, far], [below]].map((areas, i) => ({ ...condition, areas, priority: i + 1 })),
        validations: [[far], [near, far], [below]].map((areas) => ({ ...validation, areas })),
      },
      ...others,
    ],
  };

  it("never reach backwards in it", () => {
    const { resources = [], sheets } = toUniver(book, "far");
    const all = resources.flatMap(({ data }) => [...data.matchAll(/"startRow":(\d+),"endRow":(\d+)/g)]);
    expect(all.length).toBeGreaterThan(4);
    for (const [said, start, end] of all) expect(Number(end), said).toBeGreaterThanOrEqual(Number(start));
    expect(sheets["3"]?.rowCount).toBe(4205);
  });

  it("are the very objects of the file when something else changes", async () => {
    const back = await doneIn(book, SetRangeValuesMutation.id, typed);
    expect(back.sheets[0]?.conditions).toBe(book.sheets[0]?.conditions);
    expect(back.sheets[0]?.validations).toBe(book.sheets[0]?.validations);
  });

  it("read, where they moved to, what moved with them", async () => {
    const workbook = await books.open(book);
    const place = { unitId: workbook.getUnitId(), subUnitId: first.id };
    const range = { startRow: 400_000, endRow: 400_004, startColumn: 1, endColumn: 1 };
    const found: unknown[] = [];
    // As the part of the sheet does that moves rules with formulas, which needs a page.
    const formulas = books.univer.injector.get(FormulaRefRangeService);
    formulas.registerRangeFormula(place.unitId, place.subUnitId, [range], ["=B400001>B2"], (moved) => {
      found.push(...moved);
      return { undos: [], redos: [] };
    });
    await books.does(workbook, InsertRowCommand.id, rowsAbove);
    books.univer.close(workbook);
    expect(found).toMatchObject([
      { formulas: ["=B400003>B4"], ranges: [{ ...range, startRow: 400_002, endRow: 400_006 }] },
    ]);
  });

  it("move with the rows above them, beyond what the sheet has too", async () => {
    const back = await doneIn(book, InsertRowCommand.id, rowsAbove);
    const [lower, lowest] = [
      { ...far, row: 400_002 },
      { ...below, row: 4002 },
    ];
    const moved = [[lower], [{ ...near, row: 3 }, lower], [lowest]];
    const areasOf = (rules: readonly { areas: unknown }[] = []) => rules.map(({ areas }) => areas);
    // A rule that moved stands behind those that Univer was given later.
    const sorted = (all: unknown[]) => all.map((one) => JSON.stringify(one)).sort();
    expect(sorted(areasOf(back.sheets[0]?.validations))).toEqual(sorted(moved));
    // And on the way through a file.
    const read = openFile(saveBook(null, back).bytes, "far.xlsx").book.sheets[0];
    expect(sorted(areasOf(read?.validations))).toEqual(sorted(moved));
  });
});
