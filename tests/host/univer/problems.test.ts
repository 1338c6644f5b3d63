import {
  CellValueType,
  ICommandService,
  type IWorkbookData,
  LocaleType,
  Univer,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import {
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
  UniverFormulaEnginePlugin,
} from "@univerjs/engine-formula";
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

describe("formulas that refer to themselves", () => {
  /** The places of those listed among sheets with these formulas, once they are calculated. */
  async function cyclesOf(formulas: Record<string, string>, more: Record<string, string> = {}): Promise<string[]> {
    const cellData = (all: Record<string, string>) => {
      const data: Record<number, Record<number, { f?: string; v?: number }>> = {};
      for (const [place, content] of Object.entries(all)) {
        const [row, column] = [Number(place.slice(1)) - 1, place.charCodeAt(0) - 65];
        data[row] = { ...data[row], [column]: content.startsWith("=") ? { f: content } : { v: Number(content) } };
      }
      return data;
    };
    const own = new Univer({ locale: LocaleType.EN_US });
    try {
      own.registerPlugin(UniverFormulaEnginePlugin, {
        function: executors(loadBundle({ script, metadata: metadataText })),
      });
      const workbook = own.createUnit<Partial<IWorkbookData>, Workbook>(UniverInstanceType.UNIVER_SHEET, {
        sheets: {
          one: { id: "one", name: "One", cellData: cellData(formulas) },
          two: { id: "two", name: "Two", cellData: cellData(more) },
        },
        sheetOrder: ["one", "two"],
      });
      const injector = own.__getInjector();
      const commands = injector.get(ICommandService);
      await new Promise<void>((done) => {
        commands.onCommandExecuted(({ id, params }) => {
          const isDone = (params as { functionsExecutedState?: number } | undefined)?.functionsExecutedState;
          if (id === SetFormulaCalculationNotificationMutation.id && isDone !== undefined) done();
        });
        void commands.executeCommand(SetFormulaCalculationStartMutation.id, { forceCalculation: true });
      });
      return problemsOf(injector, workbook)
        .filter(({ error, own, message }) => error === "#CYCLE!" && own && message.startsWith("this formula refers to"))
        .map(({ sheet, row, column }) => `${sheet}!${String.fromCharCode(65 + column)}${row + 1}`);
    } finally {
      own.dispose();
    }
  }

  it.each<[string, Record<string, string>, string[]]>([
    ["through another cell", { A1: "=B1", B1: "=A1" }, ["One!A1", "One!B1"]],
    ["by itself", { A2: "=A2+1" }, ["One!A2"]],
    ["in a range", { A5: "=SUM(A1:A5)", A1: "1" }, ["One!A5"]],
    ["with a function of ours", { A1: "=POUR.FILLWEIGHT(B1)", B1: "=A1" }, ["One!A1", "One!B1"]],
    [
      "three of them, not what hangs on them",
      { A1: "=C1", B1: "=A1", C1: "=B1", D1: "=A1", A3: "2", B3: "=A3", E1: "=B3+A1" },
      ["One!A1", "One!B1", "One!C1"],
    ],
    ["not where none does", { A1: "1", B1: "=A1", C1: "=A1+B1", D1: "=SUM(A1:C1)" }, []],
  ])("are listed: %s", async (_, formulas, listed) => {
    expect(await cyclesOf(formulas)).toEqual(listed);
  });

  it("are listed through another sheet", async () => {
    expect(await cyclesOf({ A1: "=Two!A1" }, { A1: "=One!A1*2", A2: "=One!A1" })).toEqual(["One!A1", "Two!A1"]);
  });
});
