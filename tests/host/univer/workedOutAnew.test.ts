import {
  CommandType,
  generateRandomId,
  type ICellData,
  ICommandService,
  type IWorkbookData,
  RedoCommand,
  UndoCommand,
  type Workbook,
} from "@univerjs/core";
import {
  InsertColByRangeCommand,
  InsertColMutation,
  InsertDefinedNameCommand,
  InsertRowByRangeCommand,
  RemoveColByRangeCommand,
  RemoveRowByRangeCommand,
  SetWorksheetNameCommand,
} from "@univerjs/preset-sheets-core";
import { TableManager } from "@univerjs/preset-sheets-table";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import "../../../src/engine/corrections";
import { lookAtMoved } from "../../../src/engine/moved";
import { parseAnew } from "../../../src/engine/parseAnew";
import { forgetRemoved } from "../../../src/engine/removed";
import { readTypedFormulas } from "../../../src/engine/typing";
import { Calculation } from "../../../src/host/univer/calculation";
import { followEdits, joined } from "../../../src/host/univer/editing/edits";
import { growToTotals } from "../../../src/host/univer/editing/growTables";
import { loseReferences } from "../../../src/host/univer/editing/lostReferences";
import { fillInserted } from "../../../src/host/univer/editing/newRows";
import "../../../src/host/univer/editing/tableCorrections";
import "../../../src/host/univer/editing/tableRemovals";
import { placedTables } from "../../../src/host/univer/placedTables";
import { snapshotOf } from "../../../src/host/univer/snapshot";
import type { Cell } from "../../../src/sheet/sheet";
import { cases } from "../../cases";
import { Headless } from "./headless";
import { UniverInNode } from "./univerInNode";

const cell = (row: number, column: number, content: Cell["content"]): Cell => ({ row, column, content });

const HEADINGS = ["Item", "Qty", "Price", "Value", "More"];
const IN_ROW = { formula: "=Shelf[[#This Row],[Qty]]*Shelf[[#This Row],[Price]]" };
const ROWS = [
  ["Soft wax", 10, 1.5, IN_ROW, 1],
  ["Hard wax", 20, 2.5, IN_ROW, 2],
  ["Rain", 30, 4, IN_ROW, 4],
] as const;
const content = (one: string | number | { formula: string }): Cell["content"] =>
  typeof one === "string" ? { text: one } : typeof one === "number" ? { number: one } : one;

/** By hand: 10 x 1.5 + 20 x 2.5 + 30 x 4 is 185. */
const SUMS: readonly (readonly [string, unknown])[] = [
  ["=SUM(Shelf[Value])", 185],
  ["=SUM(Shelf[Qty])", 60],
  ["=SUM(Shelf[More])", 7],
  ["=SUM(Shelf[[Qty]:[Price]])", 68],
  ["=ROWS(Shelf)", 3],
  ['=SUMIFS(Shelf[Qty],Shelf[Item],"*wax")', 30],
  ["=SUM(Qtys)", 60],
  ["=MAX(Qtys)*2", 60],
  ["=SUM(Data!D4:D6)", 8],
  ['=INDIRECT("Data!C5")', 20],
];

/** A table that begins in B3, and what reads it beside it, below a table of another name and on another sheet. */
function book() {
  const sums = (column: number) => SUMS.map(([formula], row) => cell(row + 2, column, { formula }));
  const cells = [HEADINGS, ...ROWS].flatMap((line, r) => line.map((one, c) => cell(r + 2, c + 1, content(one))));
  const tables = [{ name: "Shelf", row: 2, column: 1, headings: HEADINGS, rows: ROWS.length }];
  return [
    { name: "Data", widths: [], cells: [...cells, ...sums(9)], tables },
    { name: "Sums", widths: [], cells: sums(0) },
  ];
}

/** All formulas of a workbook and their values. */
function formulasOf(workbook: Workbook): Record<string, readonly unknown[]> {
  const all: Record<string, readonly unknown[]> = {};
  for (const sheet of workbook.getSheets()) {
    sheet.getCellMatrix().forValue((row, column, one) => {
      if (one?.f) all[`${sheet.getSheetId()} ${row} ${column}`] = [one.f, one.v];
    });
  }
  return all;
}

type Step = readonly ["insert" | "remove", "row" | "column", number, number?] | readonly ["rename", string];

/** The workbook as it is worked on in the page. */
async function worked() {
  const page = new Headless(book());
  const { injector, workbook } = page;
  parseAnew(injector);
  forgetRemoved(injector);
  lookAtMoved(injector);
  readTypedFormulas(injector, (one) => placedTables(injector, one));
  followEdits(injector, (edit) =>
    joined(growToTotals(injector, edit) ?? fillInserted(injector, edit), loseReferences(injector, edit)),
  );
  // Where rows are frozen the page scrolls in between.
  const commands = injector.get(ICommandService);
  const scroll = { id: "sheet.command.scroll-view", type: CommandType.COMMAND, handler: () => true };
  commands.registerCommand(scroll);
  commands.onCommandExecuted(({ id }) => {
    if (id === InsertColMutation.id) commands.syncExecuteCommand(scroll.id);
  });
  const calculation = new Calculation(injector);
  const name = { id: "Qtys", name: "Qtys", formulaOrRefString: "Data!$C$4:$C$6", localSheetId: "AllDefaultWorkbook" };
  await page.run(InsertDefinedNameCommand.id, name);
  const run = async (id: string, params: object = {}) => {
    expect(await page.run(id, params)).toBe(true);
    await calculation.settled();
    return formulasOf(workbook);
  };
  await calculation.settled();
  return {
    page,
    now: () => formulasOf(workbook),
    undo: () => run(UndoCommand.id),
    redo: () => run(RedoCommand.id),
    does: ([what, ...rest]: Step) => {
      if (what === "rename") return run(SetWorksheetNameCommand.id, { name: rest[0] });
      const [line, at, count = 1] = rest as ["row" | "column", number, number?];
      const all = { startRow: 0, endRow: 99, startColumn: 0, endColumn: 25 };
      if (line === "row") {
        const range = { ...all, startRow: at, endRow: at + count - 1 };
        return what === "insert"
          ? run(InsertRowByRangeCommand.id, { range, direction: 0 })
          : run(RemoveRowByRangeCommand.id, { range });
      }
      const range = { ...all, startColumn: at, endColumn: at + count - 1 };
      return what === "insert"
        ? run(InsertColByRangeCommand.id, { range, direction: 3 })
        : run(RemoveColByRangeCommand.id, { range });
    },
  };
}

describe("what formulas read of a table or a name", () => {
  let univer: UniverInNode;
  beforeAll(() => {
    univer = new UniverInNode();
  });
  afterAll(() => univer.dispose());

  /** What the same workbook has when it is opened again. */
  async function anew({ injector, workbook }: Headless) {
    const data = { ...(structuredClone(snapshotOf(injector, workbook)) as IWorkbookData), id: generateRandomId() };
    for (const { cellData } of Object.values(data.sheets)) {
      for (const line of Object.values(cellData ?? {}) as Record<number, ICellData>[]) {
        for (const one of Object.values(line)) if (one?.f) delete one.v;
      }
    }
    const opened = await univer.open(data);
    const all = formulasOf(opened);
    univer.close(opened);
    return all;
  }

  const valuesOf = (all: ReturnType<typeof formulasOf>, column: number) =>
    SUMS.map((_, row) => all[`sheet1 ${row + 2} ${column}`]?.[1]);

  it("is the same wherever a column comes to it", async () => {
    for (const at of [0, 1, 2, 5]) {
      const { page, now, does, undo, redo } = await worked();
      const before = now();
      expect(valuesOf(before, 9)).toEqual(SUMS.map(([, value]) => value));
      const after = await does(["insert", "column", at]);
      // A text stays as it is: C5 is another cell now where a column came before it.
      const indirect = at > 2 ? 20 : at === 2 ? 0 : "Hard wax";
      expect(valuesOf(after, 10)).toEqual([...SUMS.slice(0, 9).map(([, value]) => value), indirect]);
      expect(await undo()).toEqual(before);
      expect(await redo()).toEqual(after);
      page.univer.dispose();
    }
  });

  it("is an error once its column is gone, and what it was when that is undone", async () => {
    const { page, now, does, undo, redo } = await worked();
    const before = now();
    // One that came to the table does not count among its columns at the end.
    await does(["insert", "column", 3]);
    const widened = now();
    const after = await does(["remove", "column", 2]);
    expect(after["sheet2 3 0"]).toEqual(["=SUM(#REF!)", "#REF!"]);
    expect(after["sheet2 4 0"]).toEqual(["=SUM(Shelf[More])", 7]);
    expect(await undo()).toEqual(widened);
    expect(await redo()).toEqual(after);
    await undo();
    expect(await undo()).toEqual(before);
    page.univer.dispose();
  });

  it("is what it was when the removal of all its table, or of a part, is undone, and so is the table", async () => {
    const { page, now, does, undo } = await worked();
    const tables = page.injector.get(TableManager);
    const [table] = tables.getTablesBySubunitId(page.ids.unitId, page.ids.subUnitId);
    table?.setTableMeta({ totals: true });
    // Formulas go on reading a column by its first name.
    await page.enter(2, 2, [["Amount"]]);
    const before = now();
    for (const step of [
      ["remove", "row", 2],
      ["remove", "column", 2],
    ] as const) {
      expect((await does(step))["sheet2 3 0"]?.[1]).toBe("#REF!");
      expect(await undo()).toEqual(before);
      expect(tables.getTableById(page.ids.unitId, table?.getId() ?? "")?.getTableMeta()).toEqual({ totals: true });
    }
    page.univer.dispose();
  });

  // The sums of Value, Qty and More.
  it.each([
    ["rows of the table and below it", ["remove", "row", 5, 5], [65, 30, 3]],
    ["rows at its end", ["remove", "row", 4, 2], [15, 10, 1]],
    ["any rows", ["remove", "row", 3, 3], [0, 0, 0]],
    ["its first column and one before", ["remove", "column", 0, 2], [185, 60, 7]],
    ["its first columns and one before", ["remove", "column", 0, 3], ["#REF!", "#REF!", 7]],
    ["its first columns", ["remove", "column", 1, 2], ["#REF!", "#REF!", 7]],
    ["its last columns and some behind", ["remove", "column", 3, 4], ["#REF!", 60, "#REF!"]],
  ] as const)("is what is left without %s", async (_, step, sums) => {
    const { page, now, does, undo, redo } = await worked();
    const before = now();
    const after = await does(step);
    expect([2, 3, 4].map((row) => after[`sheet2 ${row} 0`]?.[1])).toEqual(sums);
    expect(await anew(page)).toEqual(after);
    expect(await undo()).toEqual(before);
    expect(await redo()).toEqual(after);
    page.univer.dispose();
  });

  it("follows a sheet that is renamed, also by a name, and is found by a text again when that is undone", async () => {
    const { page, now, does, undo } = await worked();
    const before = now();
    const after = await does(["rename", "Stock"]);
    expect(valuesOf(after, 9)).toEqual([...SUMS.slice(0, 9).map(([, value]) => value), "#VALUE!"]);
    expect(await undo()).toEqual(before);
    page.univer.dispose();
  });

  it("is looked at again where other cells moved to the place that a text names", async () => {
    const { page, does } = await worked();
    const inText = async (step: Step) => (await does(step))["sheet2 11 0"]?.[1];
    expect(await inText(["insert", "column", 0])).toBe("Hard wax");
    expect(await inText(["insert", "column", 0])).toBe(0);
    expect(await inText(["remove", "column", 0])).toBe("Hard wax");
    expect(await inText(["insert", "row", 0])).toBe("Soft wax");
    expect(await inText(["insert", "row", 1])).toBe("Item");
    expect(await inText(["remove", "row", 1])).toBe("Soft wax");
    page.univer.dispose();
  });

  const at = fc.nat(8);
  const count = fc.integer({ min: 1, max: 4 });
  const step: fc.Arbitrary<Step> = fc.oneof(
    {
      weight: 4,
      arbitrary: fc.tuple(fc.constant("insert" as const), fc.constantFrom("row" as const, "column"), at, count),
    },
    {
      weight: 3,
      arbitrary: fc.tuple(fc.constant("remove" as const), fc.constantFrom("row" as const, "column"), at, count),
    },
    fc.tuple(fc.constant("rename" as const), fc.constantFrom("Stock", "Jan's jars", "Data 2")),
  );

  it("is after any steps, and when they are undone and redone, what it is when the workbook is opened anew", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 2, maxLength: 6 }), async (steps) => {
        const { page, now, does, undo, redo } = await worked();
        const seen = [now()];
        for (const one of steps) {
          const name = page.sheet.getName();
          if (one[0] === "rename" && one[1] === name) continue;
          seen.push(await does(one));
          expect(await anew(page)).toEqual(seen.at(-1));
        }
        for (let i = seen.length - 2; i >= 0; i--) expect(await undo()).toEqual(seen[i]);
        expect(await anew(page)).toEqual(seen[0]);
        for (let i = 1; i < seen.length; i++) expect(await redo()).toEqual(seen[i]);
        page.univer.dispose();
      }),
      { seed: 1, numRuns: cases(2, 60) },
    );
  });
});
