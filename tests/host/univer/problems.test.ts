import {
  CellValueType,
  type IWorkbookData,
  LocaleType,
  Univer,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { afterAll, describe, expect, it } from "vitest";
import { loadBundle } from "../../../src/host/univer/bundle";
import { executors } from "../../../src/host/univer/functions";
import { problemsOf } from "../../../src/host/univer/problems";
import { metadataText, script } from "../../functions/built";

const univer = new Univer({ locale: LocaleType.EN_US });
univer.registerPlugin(UniverFormulaEnginePlugin, {
  function: executors(loadBundle({ script, metadata: metadataText })),
});
afterAll(() => univer.dispose());

const cell = (f: string, v = "#NAME?") => ({ f, v, t: CellValueType.STRING });

/** The problems of a sheet with these cells, as they were calculated. */
function problems(...cells: object[]) {
  const cellData = Object.fromEntries(cells.map((one, row) => [row, { 0: one }]));
  const workbook = univer.createUnit<Partial<IWorkbookData>, Workbook>(UniverInstanceType.UNIVER_SHEET, {
    sheets: { one: { id: "one", name: "One", cellData } },
    sheetOrder: ["one"],
  });
  return problemsOf(univer.__getInjector(), workbook).map(({ row, message, own }) => ({ row, message, own }));
}

const NONE = "there is no POUR.FILLWEIGTH; type =POUR. to see the functions";

describe("the problems of a workbook", () => {
  it.each(["=POUR.FILLWEIGTH(3)", "=pour.FillWeigth( 3 )", '=1+SUM(POUR.FILLWEIGHT(3),"a",POUR.FILLWEIGTH(3))'])(
    "name a function that does not exist: %s",
    (formula) => {
      expect(problems(cell(formula))).toEqual([{ row: 0, message: NONE, own: true }]);
    },
  );

  it("say what is missing of a name that would be right with POUR.", () => {
    expect(problems(cell("=fillweight(3)"))).toEqual([{ row: 0, message: "write POUR.FILLWEIGHT", own: true }]);
  });

  it("name it in each cell that a formula was filled down to", () => {
    const filled = [
      { ...cell("=POUR.FILLWEIGTH(B1)"), si: "down" },
      { si: "down", v: "#NAME?", t: CellValueType.STRING },
    ];
    expect(problems(...filled)).toEqual([0, 1].map((row) => ({ row, message: NONE, own: true })));
  });

  it.each([
    "=A9",
    "=POUR.FILLWEIGHT(A9)",
    "=POUR.FILLWEIGHT(waterr)",
    "=SUMM(3)",
    '=A9&"POUR.FILLWEIGTH(3)"',
    "='POUR.FILLWEIGTH(3)'!A1",
  ])("do not list an unknown name of another kind, or one that is handed on: %s", (formula) => {
    expect(problems(cell(formula))).toEqual([
      { row: 0, message: expect.stringContaining("a name in this formula, or in a cell it uses"), own: false },
    ]);
  });

  it("leave another error of the same formula what it is", () => {
    const [problem] = problems(cell("=1/0+POUR.FILLWEIGTH(3)", "#DIV/0!"));
    expect(problem).toMatchObject({ message: expect.stringContaining("divides by zero"), own: false });
  });
});
