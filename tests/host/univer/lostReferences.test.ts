import { RedoCommand, UndoCommand } from "@univerjs/core";
import {
  InsertDefinedNameCommand,
  RemoveColCommand,
  RemoveDefinedNameCommand,
  RemoveRowCommand,
  RemoveSheetCommand,
  SetRangeValuesMutation,
} from "@univerjs/preset-sheets-core";
import { DeleteSheetTableCommand } from "@univerjs/preset-sheets-table";
import { UniverSheetsConditionalFormattingPlugin } from "@univerjs/sheets-conditional-formatting";
import { UniverSheetsDataValidationPlugin } from "@univerjs/sheets-data-validation";
import { expect, it } from "vitest";
import "../../../src/engine/corrections";
import { parseAnew } from "../../../src/engine/parseAnew";
import { forgetRemoved } from "../../../src/engine/removed";
import { Calculation } from "../../../src/host/univer/calculation";
import { followEdits } from "../../../src/host/univer/editing/edits";
import "../../../src/host/univer/editing/removedNames";
import { loseReferences } from "../../../src/host/univer/editing/lostReferences";
import { fromUniver } from "../../../src/host/univer/file/fromUniver";
import { snapshotOf } from "../../../src/host/univer/snapshot";
import type { Cell } from "../../../src/sheet/sheet";
import { Headless } from "./headless";

const cell = (row: number, column: number, content: Cell["content"]): Cell => ({
  row,
  column,
  look: "input",
  ...(content && { content }),
});

/** Formulas beside a sheet with a table of two costs, 2 and 3, that is to be removed. */
async function beside(formulas: readonly string[], names: Readonly<Record<string, string>> = {}) {
  const page = new Headless(
    [
      { name: "Sums", widths: [], cells: [] },
      {
        name: "Costs",
        widths: [],
        cells: [
          cell(0, 0, { text: "Candle" }),
          cell(0, 1, { text: "Cost" }),
          ...["Jar", "Tin"].map((text, i) => cell(i + 1, 0, { text })),
          ...[2, 3].map((number, i) => cell(i + 1, 1, { number })),
        ],
        tables: [{ name: "Costs", row: 0, column: 0, headings: ["Candle", "Cost"], rows: 2 }],
      },
    ],
    [UniverSheetsDataValidationPlugin, UniverSheetsConditionalFormattingPlugin],
  );
  parseAnew(page.injector);
  forgetRemoved(page.injector);
  followEdits(page.injector, (edit) => loseReferences(page.injector, edit));
  for (const [name, formulaOrRefString] of Object.entries(names)) {
    await page.run(InsertDefinedNameCommand.id, {
      id: name,
      name,
      formulaOrRefString,
      localSheetId: "AllDefaultWorkbook",
    });
  }
  await page.enter(
    0,
    0,
    formulas.map((formula) => [formula]),
  );
  const calculation = new Calculation(page.injector);
  const sums = page.workbook.getSheetBySheetName("Sums");
  const costs = page.workbook.getSheetBySheetName("Costs")?.getSheetId();
  const cellAt = (row: number) => sums?.getCellMatrix().getValue(row, 0);
  return {
    page,
    costs,
    results: async () => {
      await calculation.settled();
      return formulas.map((_, row) => cellAt(row)?.v);
    },
    texts: () => formulas.map((_, row) => cellAt(row)?.f),
    saved: () => fromUniver(snapshotOf(page.injector, page.workbook), null),
  };
}

/** What each formula becomes and shows, and what its dependents do. */
const LOST = [
  ["=Costs!B2", "=#REF!"],
  ["=A1*2", "=A1*2"],
  ["='Costs'!B2+SUM(Costs[Cost])", "=#REF!+SUM(#REF!)"],
  ["=SUM(Costs!B:B)", "=SUM(#REF!)"],
  ["=SUM(Costs[Cost])", "=SUM(#REF!)"],
  ["=A5+1", "=A5+1"],
  ["=ROWS(Costs)+COLUMNS(Costs[[Candle]:[Cost]])", "=ROWS(#REF!)+COLUMNS(#REF!)"],
  ["=LET(x,Costs[Cost],SUM(x))", "=LET(x,#REF!,SUM(x))"],
  ['=Costs!A2&" Costs!A2 Costs[Cost]"', '=#REF!&" Costs!A2 Costs[Cost]"'],
  ["=COST", "=COST"],
  ["=TWICE+1", "=TWICE+1"],
  ["=A10+1", "=A10+1"],
] as const;
const NAMES = { COST: "Costs!$B$2", TWICE: "=SUM(Costs!$B$2:$B$3)*2" };
/** By hand, from 2 and 3. */
const BEFORE = [2, 4, 7, 5, 5, 6, 4, 5, "Jar Costs!A2 Costs[Cost]", 2, 11, 3];

it("are errors at once when a sheet is removed, also in names, and what they were when that is undone", async () => {
  const formulas = LOST.map(([formula]) => formula);
  const { page, costs, results, texts, saved } = await beside(formulas, NAMES);
  const names = () => saved().names.map(({ formula }) => formula);
  const expectAll = async () => {
    expect(await results()).toEqual(BEFORE);
    expect(texts()).toEqual(formulas);
    expect(names()).toEqual(["=Costs!$B$2", "=SUM(Costs!$B$2:$B$3)*2"]);
  };
  const expectLost = async () => {
    expect(await results()).toEqual(formulas.map(() => "#REF!"));
    expect(texts()).toEqual(LOST.map(([, lost]) => lost));
    expect(names()).toEqual(["=#REF!", "=SUM(#REF!)*2"]);
    const [sheet, ...others] = saved().sheets;
    expect(sheet?.rows.map(({ cells }) => cells[0]?.formula)).toEqual(LOST.map(([, lost]) => lost));
    expect(others).toEqual([]);
  };
  await expectAll();
  await page.run(RemoveSheetCommand.id, { subUnitId: costs });
  await expectLost();
  await page.run(UndoCommand.id, {});
  await expectAll();
  await page.run(RedoCommand.id, {});
  await expectLost();
  await page.run(UndoCommand.id, {});
  await expectAll();
});

it("are errors where only a function finds the sheet by its name", async () => {
  const { page, costs, results } = await beside(['=INDIRECT("Costs!B2")', '=IFERROR(INDIRECT("Costs!B2"),"gone")']);
  expect(await results()).toEqual([2, 2]);
  await page.run(RemoveSheetCommand.id, { subUnitId: costs });
  // Excel says #REF!.
  expect(await results()).toEqual(["#VALUE!", "gone"]);
  await page.run(UndoCommand.id, {});
  expect(await results()).toEqual([2, 2]);
});

it("are errors in checks and conditional formats too", async () => {
  const { page, costs, saved } = await beside([]);
  const ranges = [{ startRow: 0, endRow: 9, startColumn: 0, endColumn: 0 }];
  const list = { uid: "v", type: "list", formula1: "=Costs!$A$2:$A$3", ranges };
  await page.run("data-validation.mutation.addRule", { rule: list });
  const formula = { type: "highlightCell", subType: "formula", value: "=A1>Costs!$B$2", style: { bl: 1 } };
  await page.run("sheet.mutation.add-conditional-rule", {
    rule: { cfId: "c", ranges, stopIfTrue: false, rule: formula },
  });
  const formulas = () => {
    const [sheet] = saved().sheets;
    return [sheet?.validations?.[0]?.formulas, sheet?.conditions[0]?.formulas];
  };
  expect(formulas()).toEqual([["=Costs!$A$2:$A$3"], ["=A1>Costs!$B$2"]]);
  await page.run(RemoveSheetCommand.id, { subUnitId: costs });
  expect(formulas()).toEqual([["=#REF!"], ["=A1>#REF!"]]);
  await page.run(UndoCommand.id, {});
  expect(formulas()).toEqual([["=Costs!$A$2:$A$3"], ["=A1>Costs!$B$2"]]);
});

it("come back with a sheet of however many cells", async () => {
  const { page, costs, results } = await beside(["=SUM(Costs[Cost],Costs!D:D)"]);
  const row = Object.fromEntries(Array.from({ length: 10 }, (_, i) => [i + 3, { v: 1 }]));
  const cellValue = Object.fromEntries(Array.from({ length: 900 }, (_, i) => [i, row]));
  await page.run(SetRangeValuesMutation.id, { subUnitId: costs, cellValue });
  expect(await results()).toEqual([905]);
  await page.run(RemoveSheetCommand.id, { subUnitId: costs });
  expect(await results()).toEqual(["#REF!"]);
  await page.run(UndoCommand.id, {});
  expect(await results()).toEqual([905]);
});

it.each([
  ["the only one", { COST: "Costs!$B$2" }],
  ["one of several", { COST: "Costs!$B$2", OTHER: "=1" }],
])("keep a name that is removed, %s, and are errors until there is one again", async (_, names) => {
  const formulas = ["=COST", "=COST*10", "=SUM(COST,1)", "=A2+1"];
  const { page, results, texts } = await beside(formulas, names);
  expect(await results()).toEqual([2, 20, 3, 21]);
  const name = { id: "COST", name: "COST", formulaOrRefString: "Costs!$B$2", localSheetId: "AllDefaultWorkbook" };
  await page.run(RemoveDefinedNameCommand.id, name);
  expect(await results()).toEqual(["#NAME?", "#NAME?", "#NAME?", "#NAME?"]);
  expect(texts()).toEqual(formulas);
  await page.run(UndoCommand.id, {});
  expect(await results()).toEqual([2, 20, 3, 21]);
  await page.run(RedoCommand.id, {});
  await page.run(InsertDefinedNameCommand.id, { ...name, id: "again", formulaOrRefString: "Costs!$B$3" });
  expect(await results()).toEqual([3, 30, 4, 31]);
});

const whole = { startRow: 0, endRow: 2, startColumn: 0, endColumn: 25 };
it.each([
  ["its rows are", RemoveRowCommand.id, { range: whole }],
  ["its columns are", RemoveColCommand.id, { range: { startRow: 0, endRow: 999, startColumn: 0, endColumn: 1 } }],
  ["it is", DeleteSheetTableCommand.id, { tableId: "Costs" }],
])("are errors for a table when %s removed", async (_, id, params) => {
  const { page, costs, results, texts } = await beside(["=SUM(Costs[Cost])", "=ROWS(Costs)", "=A1+A2"]);
  expect(await results()).toEqual([5, 2, 7]);
  const sheet = page.workbook.getSheetBySheetId(costs ?? "");
  if (sheet) page.workbook.setActiveSheet(sheet);
  await page.run(id, { subUnitId: costs, ...params });
  expect(await results()).toEqual(["#REF!", "#REF!", "#REF!"]);
  expect(texts()).toEqual(["=SUM(#REF!)", "=ROWS(#REF!)", "=A1+A2"]);
  await page.run(UndoCommand.id, {});
  expect(await results()).toEqual([5, 2, 7]);
});
