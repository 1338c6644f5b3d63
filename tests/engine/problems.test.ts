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
  SetFormulaCalculationResultMutation,
  SetFormulaCalculationStartMutation,
  UniverFormulaEnginePlugin,
} from "@univerjs/engine-formula";
import { afterAll, describe, expect, it } from "vitest";
import { loadBundle } from "../../src/engine/bundle";
import { watchForCycles } from "../../src/engine/cycles";
import { executors } from "../../src/engine/functions";
import { cellName, problemsOf } from "../../src/engine/problems";
import { metadataText, script } from "../functions/built";

const univer = new Univer({ locale: LocaleType.EN_US });
univer.registerPlugin(UniverFormulaEnginePlugin, {
  function: executors(loadBundle({ script, metadata: metadataText })),
});
watchForCycles(univer.__getInjector());
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

/** The problems of sheets with these formulas and values, once they are calculated. */
async function calculated(
  formulas: Record<string, string>,
  more: Record<string, string> = {},
): Promise<{ place: string; message: string; error: string; own: boolean; from: string | undefined }[]> {
  const cellData = (all: Record<string, string>) => {
    const data: Record<number, Record<number, { f?: string; v?: number | string }>> = {};
    for (const [place, content] of Object.entries(all)) {
      const [row, column] = [Number(place.slice(1)) - 1, place.charCodeAt(0) - 65];
      const number = Number(content);
      const value = content.startsWith("=") ? { f: content } : { v: Number.isNaN(number) ? content : number };
      data[row] = { ...data[row], [column]: value };
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
    let results: Record<string, Record<string, Record<number, Record<number, object>>>> = {};
    await new Promise<void>((done) => {
      commands.onCommandExecuted(({ id, params }) => {
        if (id === SetFormulaCalculationResultMutation.id) results = (params as { unitData: typeof results }).unitData;
        const isDone = (params as { functionsExecutedState?: number } | undefined)?.functionsExecutedState;
        if (id === SetFormulaCalculationNotificationMutation.id && isDone !== undefined) done();
      });
      void commands.executeCommand(SetFormulaCalculationStartMutation.id, { forceCalculation: true });
    });
    // In the browser the spreadsheet puts the results into the cells.
    for (const [sheetId, rows] of Object.entries(results[workbook.getUnitId()] ?? {})) {
      const cells = workbook.getSheetBySheetId(sheetId)?.getCellMatrix();
      for (const [row, all] of Object.entries(rows)) {
        for (const [column, cell] of Object.entries(all)) {
          const at = [Number(row), Number(column)] as const;
          cells?.setValue(...at, { ...cells.getValue(...at), ...cell });
        }
      }
    }
    const nameOf = ({ sheet, row, column }: { sheet: string; row: number; column: number }) =>
      `${sheet}!${cellName({ row, column })}`;
    return problemsOf(injector, workbook).map(({ from, ...problem }) => ({
      place: nameOf(problem),
      message: problem.message,
      error: problem.error,
      own: problem.own,
      from: from && nameOf(from),
    }));
  } finally {
    own.dispose();
  }
}

describe("an error that a formula hands on", () => {
  const FIX = "load: 6 means 600 %; write 6% or 0.06";
  const handedOn = async (...given: Parameters<typeof calculated>) =>
    (await calculated(...given))
      .filter(({ own }) => !own)
      .map(({ place, from, message }) => ({ place, from, message }));

  it("is said to come from the first cell that makes it, through others and another sheet", async () => {
    const message = `comes from Two!B4: ${FIX}`;
    expect(
      await handedOn(
        { A1: "=Two!B4*2", A2: "=SUM(A1:A1)", A3: "=POUR.FILLWEIGHT(A2)" },
        { B4: "=POUR.SCENTPART(300,6)" },
      ),
    ).toEqual(["One!A1", "One!A2", "One!A3"].map((place) => ({ place, from: "Two!B4", message })));
  });

  it("comes from a plain formula too, or from a value that was written", async () => {
    expect(await handedOn({ A1: "0", A2: "=1/A1", A3: "=A2+1", B1: "#N/A", B2: "=B1&1" })).toEqual([
      {
        place: "One!A2",
        from: undefined,
        message: expect.stringMatching(/^this formula, or a cell it uses, divides/),
      },
      { place: "One!B2", from: "One!B1", message: "comes from One!B1: an error is written there; write a value" },
      { place: "One!A3", from: "One!A2", message: expect.stringMatching(/^comes from One!A2: this formula/) },
    ]);
  });

  it("is not said to come from a cell with an error of another kind, or from nowhere", async () => {
    expect(await handedOn({ A1: "=NA()", A2: "=1/0+N(ISERROR(A1))" })).toEqual([
      { place: "One!A1", from: undefined, message: expect.stringContaining("no such value") },
      { place: "One!A2", from: undefined, message: expect.stringContaining("divides by zero") },
    ]);
  });

  it("of a cell that results spill into comes from the cell that its row was made of", async () => {
    const spilled = await handedOn({ A1: "1", A2: "=POUR.SCENTPART(300,6)", A3: "3", B1: "=A1:A3*2" });
    expect(spilled).toEqual([{ place: "One!B2", from: "One!A2", message: `comes from One!A2: ${FIX}` }]);
  });
});

describe("formulas that refer to themselves", () => {
  /** The places of those listed among sheets with these formulas, once they are calculated. */
  const cyclesOf = async (...given: Parameters<typeof calculated>): Promise<string[]> =>
    (await calculated(...given))
      .filter(({ error, own, message }) => error === "#CYCLE!" && own && message.startsWith("this formula refers to"))
      .map(({ place }) => place);

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
