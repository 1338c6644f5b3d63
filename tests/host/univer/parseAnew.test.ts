import { generateRandomId, ICommandService, IUniverInstanceService, UndoCommand } from "@univerjs/core";
import { DeleteRangeMoveUpCommand, SetDefinedNameCommand } from "@univerjs/preset-sheets-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import "../../../src/engine/corrections";
import { parseAnew } from "../../../src/engine/parseAnew";
import { Calculation } from "../../../src/host/univer/calculation";
import { followEdits } from "../../../src/host/univer/editing/edits";
import { growTables } from "../../../src/host/univer/editing/growTables";
import { workbookData } from "../../../src/host/univer/workbook";
import type { Cell } from "../../../src/sheet/sheet";
import { Headless } from "./headless";
import { UniverInNode } from "./univerInNode";

const cell = (row: number, column: number, content: Cell["content"]): Cell => ({
  row,
  column,
  look: "input",
  ...(content && { content }),
});

it("sums the rows that a table has taken in, after the edits that follow too", async () => {
  const page = new Headless([
    {
      name: "Costs",
      widths: [],
      cells: [
        cell(0, 0, { text: "Candle" }),
        cell(0, 1, { text: "Cost" }),
        cell(1, 0, { text: "Jar" }),
        cell(1, 1, { number: 1 }),
        cell(0, 4, { formula: "=SUM(Costs[Cost])" }),
        cell(1, 4, { formula: "=sum(costs[cost])" }),
        cell(2, 4, { formula: "=ROWS(Costs)" }),
        cell(3, 4, { formula: "=LET(costs,Costs[Cost],SUM(costs))" }),
        // Longer than what the engine keeps by its text.
        cell(4, 4, {
          formula: `=SUM(FILTER(Costs[Cost],(Costs[Candle]="Jar")+(Costs[Candle]="Tin")+${"0+".repeat(40)}0))`,
        }),
      ],
      tables: [{ name: "Costs", row: 0, column: 0, headings: ["Candle", "Cost"], rows: 1 }],
    },
  ]);
  parseAnew(page.injector);
  followEdits(page.injector, (edit) => growTables(page.injector, edit));
  const calculation = new Calculation(page.injector);
  const results = async () => {
    await calculation.settled();
    return [0, 1, 2, 3, 4].map((row) => page.sheet.getCellMatrix().getValue(row, 4)?.v);
  };
  expect(await results()).toEqual([1, 1, 1, 1, 1]);
  // Only what is worked out while no table changes is kept as it was parsed.
  await page.enter(1, 1, [[2]]);
  expect(await results()).toEqual([2, 2, 1, 2, 2]);
  await page.enter(2, 0, [["Tin"]]);
  expect(await results()).toEqual([2, 2, 2, 2, 2]);
  await page.enter(2, 1, [[5]]);
  expect(await results()).toEqual([7, 7, 2, 7, 7]);
  await page.enter(1, 1, [[3]]);
  expect(await results()).toEqual([8, 8, 2, 8, 8]);
});

it("tells long formulas and texts apart that are alike to the engine's own short number", async () => {
  // 65599 x 65599 - 126 x 65599 + 3969 is 2 to the 32nd: by the engine's sum both come to the same.
  const [one, other] = ["A\u00e0A", "Bb\u0fc2"].map((end) => "x".repeat(70) + end) as [string, string];
  const page = new Headless([
    {
      name: "Texts",
      widths: [],
      cells: [one, other].map((text, row) => cell(row, 0, { formula: `="${text}"` })),
    },
  ]);
  await new Calculation(page.injector).settled();
  expect([0, 1].map((row) => page.sheet.getCellMatrix().getValue(row, 0)?.v)).toEqual([one, other]);
});

/** Opens a workbook of two numbers, 7 and 2, and formulas beside them, in which names mean something. */
async function named(univer: UniverInNode, names: Readonly<Record<string, string>>, formulas: readonly string[]) {
  const numbers = [7, 2].map((number, row) => cell(row, 0, { number }));
  const cells = [...numbers, ...formulas.map((formula, row) => cell(row + 5, 4, { formula }))];
  const data = workbookData(generateRandomId(), [{ name: "Costs", widths: [], cells }]);
  const all = Object.entries(names).map(([name, formulaOrRefString]) => [
    name,
    { id: name, name, formulaOrRefString, localSheetId: "AllDefaultWorkbook" },
  ]);
  data.resources?.push({ name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(Object.fromEntries(all)) });
  const workbook = await univer.open(data);
  const ids = { unitId: workbook.getUnitId(), subUnitId: workbook.getActiveSheet().getSheetId() };
  univer.injector.get(IUniverInstanceService).focusUnit(ids.unitId);
  const commands = univer.injector.get(ICommandService);
  return {
    workbook,
    run: (id: string, params = {}) => commands.executeCommand(id, { ...ids, ...params }),
    results: async () => {
      await univer.settled();
      return formulas.map(
        (_, row) =>
          workbook
            .getActiveSheet()
            .getCellMatrix()
            .getValue(row + 5, 4)?.v,
      );
    },
  };
}

describe("names", () => {
  let univer: UniverInNode;
  beforeAll(() => {
    univer = new UniverInNode();
    parseAnew(univer.injector);
  });
  afterAll(() => univer.dispose());

  it("have formulas worked out anew when they mean something else, also through other names", async () => {
    const formulas = ["=COST", "=COST*10", "=cost*10", "=TWICE+1", "=SUM(COST,1)"];
    const { run, results } = await named(univer, { COST: "Costs!$A$2", TWICE: "=COST*2" }, formulas);
    expect(await results()).toEqual([2, 20, 20, 5, 3]);
    const set = (formulaOrRefString: string) =>
      run(SetDefinedNameCommand.id, {
        id: "COST",
        name: "COST",
        formulaOrRefString,
        localSheetId: "AllDefaultWorkbook",
      });
    await set("Costs!$A$1");
    expect(await results()).toEqual([7, 70, 70, 15, 8]);
    await set("=3");
    expect(await results()).toEqual([3, 30, 30, 7, 4]);
    await run(UndoCommand.id);
    expect(await results()).toEqual([7, 70, 70, 15, 8]);
  });

  it("are errors once their cells are removed, and what they were when that is undone", async () => {
    const { run, results } = await named(univer, { COST: "Costs!$A$2" }, ["=COST", "=COST*10"]);
    expect(await results()).toEqual([2, 20]);
    await run(DeleteRangeMoveUpCommand.id, { range: { startRow: 1, endRow: 1, startColumn: 0, endColumn: 0 } });
    expect(await results()).toEqual(["#REF!", "#REF!"]);
    await run(UndoCommand.id);
    expect(await results()).toEqual([2, 20]);
  });

  it("mean in each workbook what they mean there", async () => {
    const first = await named(univer, { COST: "Costs!$A$2" }, ["=COST*10"]);
    expect(await first.results()).toEqual([20]);
    univer.close(first.workbook);
    const second = await named(univer, { COST: "Costs!$A$1" }, ["=COST*10"]);
    expect(await second.results()).toEqual([70]);
    univer.close(second.workbook);
  });

  it("are worked out before what stands beside them", async () => {
    // By hand: (7 + 2) * 2, 2 ^ (1 + 1), 10 - (7 - 2).
    const names = { BOTH: "=Costs!$A$1+Costs!$A$2", MORE: "=1+1", LESS: "=Costs!$A$1-Costs!$A$2" };
    const { results } = await named(univer, names, ["=BOTH*2", "=2^MORE", "=10-LESS", "=SUM(BOTH,MORE)"]);
    expect(await results()).toEqual([18, 4, 5, 11]);
  });
});
