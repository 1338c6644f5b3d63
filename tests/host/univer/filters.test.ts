import { ICommandService, type Workbook } from "@univerjs/core";
import { IRenderManagerService } from "@univerjs/engine-render";
import { ScrollToRangeOperation, SetWorksheetActiveOperation } from "@univerjs/preset-sheets-core";
import { SetSheetTableFilterCommand, SheetTableService, TABLE_FILTER_EMPTY_VALUE } from "@univerjs/preset-sheets-table";
import { UniverSheetsFilterPlugin } from "@univerjs/sheets-filter";
import { NEVER } from "rxjs";
import { afterEach, describe, expect, it } from "vitest";
import type { Book, BookSheet, FilterColumn } from "../../../src/file/book";
import { emptySheet, PLAIN_STYLE } from "../../../src/file/emptyBook";
import { UniverHost } from "../../../src/host/univer/adapter";
import { toUniver } from "../../../src/host/univer/file/toUniver";
import { UniverInNode } from "./univerInNode";
import "../../../src/host/univer/editing/filterCorrections";

/** The poured mark of each row of a batch; null is a blank cell, "" a text that holds nothing. */
const POURED = ["", "x", null, ""] as const;

/** A batch on a second sheet; hidden rows are counted from its headings on. */
function batch(columns: readonly FilterColumn[], hidden: readonly number[], of: "table" | "sheet" = "table"): Book {
  const texts = [["Quantity", "Poured"], ...POURED.map((poured, i) => [12 + i, poured])];
  const area = { row: 0, column: 0, rows: texts.length, columns: 2 };
  const table = {
    name: "Batch",
    area,
    hasHeadings: true,
    hasTotals: false,
    columns: [{ heading: "Quantity" }, { heading: "Poured" }],
    filter: { area, columns },
    look: null,
    stripes: false,
  };
  const sheet: BookSheet = {
    ...emptySheet("2", "Batch"),
    rows: texts.map((cells, row) => ({
      row,
      ...(hidden.includes(row) && { hidden: true as const }),
      cells: cells.flatMap((value, column) => (value === null ? [] : [{ column, value, style: 0 }])),
    })),
    ...(of === "table" ? { tables: [table] } : { filter: { area, columns } }),
  };
  const sheets = [emptySheet("1", "Vessels"), sheet];
  return { sheets, styles: [PLAIN_STYLE], names: [], active: 0, from1904: false, settings: {} };
}

const BLANKS: FilterColumn = { column: 1, values: [""] };

describe("a filter", () => {
  let univer: UniverInNode;
  let count = 0;
  afterEach(() => univer.dispose());

  const open = async (book: Book, without?: typeof UniverSheetsFilterPlugin) => {
    univer = new UniverInNode(undefined, without);
    const workbook = await univer.open(toUniver(book, `filters${count++}`));
    // Nothing is drawn.
    const drawing = { created$: NEVER } as unknown as IRenderManagerService;
    univer.injector.add([IRenderManagerService, { useValue: drawing }]);
    univer.injector.get(ICommandService).registerCommand({ ...ScrollToRangeOperation, handler: () => true });
    const said: string[] = [];
    const host = new UniverHost(univer.univer, (words) => said.push(words));
    const at = { sheet: "Batch", row: 0, column: 0, rows: POURED.length + 1, columns: 2 };
    const hidden = async () => (await host.read({ name: "", place: at, headings: [] })).hidden;
    return { workbook, hidden, host, said };
  };
  const run = (workbook: Workbook, id: string, params: object) =>
    univer.injector
      .get(ICommandService)
      .executeCommand(id, { unitId: workbook.getUnitId(), subUnitId: "2", ...params });
  const filter = (workbook: Workbook, column: number, values: readonly string[]) =>
    run(workbook, SetSheetTableFilterCommand.id, {
      tableId: "Batch",
      column,
      tableFilter: { filterType: "manual", values },
    });
  const savedHidden = (workbook: Workbook, book: Book) =>
    univer.book(workbook, book).sheets[1]?.rows.flatMap(({ row, hidden }) => (hidden ? [row] : []));

  it("for blanks shows cells whose text holds nothing, now and when the file is opened again", async () => {
    const book = batch([], []);
    const { workbook, hidden } = await open(book);
    await filter(workbook, 1, [TABLE_FILTER_EMPTY_VALUE]);
    expect(await hidden()).toEqual([1]);
    const saved = univer.book(workbook, book);
    expect(saved.sheets[1]?.tables[0]?.filter?.columns).toEqual([BLANKS]);
    univer.dispose();
    const again = await open(saved);
    expect(await again.hidden()).toEqual([1]);
    expect(savedHidden(again.workbook, saved)).toEqual([2]);
    // As a press on OK in its list does.
    await filter(again.workbook, 1, [TABLE_FILTER_EMPTY_VALUE]);
    expect(await again.hidden()).toEqual([1]);
  });

  it("lists a text that holds nothing among the blanks, and numbers as they are written in a file", async () => {
    const { workbook, hidden } = await open(batch([], []));
    const sheet = workbook.getSheetBySheetId("2");
    if (!sheet) throw new Error("no sheet");
    const listed = (row: number, column: number) =>
      univer.injector.get(SheetTableService).getCellValueWithConditionType(sheet, row, column);
    expect([1, 2, 3].map((row) => listed(row, 1))).toEqual([undefined, "x", undefined]);
    expect(listed(1, 0)).toBe("12");
    await filter(workbook, 0, ["12", "15"]);
    expect(await hidden()).toEqual([1, 2]);
  });

  it("of a file hides the rows that it hid there, and no others, until it is set anew", async () => {
    const book = batch([{ column: 0, values: ["13"] }], [1]);
    const { workbook, hidden } = await open(book);
    expect(await hidden()).toEqual([0]);
    expect(univer.book(workbook, book).sheets[1]).toEqual(book.sheets[1]);
    await filter(workbook, 0, ["13"]);
    expect(await hidden()).toEqual([0, 2, 3]);
  });

  it.each([
    ["has only buttons that are hidden", [{ column: 0 }, { column: 1 }]],
    ["is of a kind that is not worked out here", [{ column: 1, other: true as const }]],
  ])("leaves hidden what a file hides by hand where it %s", async (_, columns) => {
    const book = batch(columns, [2]);
    const { workbook, hidden } = await open(book);
    expect(await hidden()).toEqual([1]);
    expect(univer.book(workbook, book).sheets[1]).toEqual(book.sheets[1]);
    await filter(workbook, 0, ["12"]);
    // What is said of the other column is still there.
    expect(univer.book(workbook, book).sheets[1]?.tables[0]?.filter?.columns).toEqual([
      { column: 0, values: ["12"] },
      ...columns.filter(({ column }) => column === 1),
    ]);
  });

  it.each(["table", "sheet"] as const)("of a %s is known before its sheet was looked at", async (of) => {
    const { workbook, hidden } = await open(batch([BLANKS], [2], of), UniverSheetsFilterPlugin);
    expect(workbook.getActiveSheet()?.getName()).toBe("Vessels");
    expect(await hidden()).toEqual([1]);
    await run(workbook, SetWorksheetActiveOperation.id, {});
    expect(await hidden()).toEqual([1]);
  });

  it("hides only its own rows where another table stands beside", async () => {
    const book = batch([{ column: 0, values: ["13"] }], [1, 3]);
    const [vessels, one] = book.sheets as [BookSheet, BookSheet];
    const [table] = one.tables as [BookSheet["tables"][number]];
    const beside = { ...table.area, column: 1, columns: 1 };
    const own = { ...table, area: { ...beside, column: 0 }, columns: [{ heading: "Quantity" }] };
    const poured = { ...own, name: "Poured", area: beside, columns: [{ heading: "Poured" }] };
    const tables = [
      { ...own, filter: { area: own.area, columns: [{ column: 0, values: ["13"] }] } },
      { ...poured, filter: { area: beside, columns: [{ column: 0, values: ["", "x"] }] } },
    ];
    const { workbook, hidden } = await open({ ...book, sheets: [vessels, { ...one, tables }] });
    expect(await hidden()).toEqual([0, 2]);
    await run(workbook, SetSheetTableFilterCommand.id, { tableId: "Batch", column: 0, tableFilter: undefined });
    expect(await hidden()).toEqual([]);
  });

  it.each([
    ["by a filter", [BLANKS], /^Row 3 is hidden by a filter\. .*Clear Filter/],
    ["by hand", [], /^Row 3 is hidden\. .*Show hidden rows/],
  ])("or a maker's hiding is said of cells that are gone to and hidden %s", async (_, columns, words) => {
    const { host, said } = await open(batch(columns, [2]));
    const go = (row: number) => host.select({ sheet: "Batch", row, column: 1, rows: 1, columns: 1 });
    await go(1);
    expect(said).toEqual([]);
    await go(2);
    expect(said).toEqual([expect.stringMatching(words)]);
    await go(1);
    expect(said.at(-1)).toBe("");
  });
});
