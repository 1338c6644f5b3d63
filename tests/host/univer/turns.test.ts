import { CellValueType, ICommandService, type IWorkbookData, LocaleType } from "@univerjs/core";
import { IFormulaDependencyGenerator, SetFormulaCalculationStopMutation } from "@univerjs/engine-formula";
import { SetRangeValuesMutation } from "@univerjs/preset-sheets-core";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { snapshotOf } from "../../../src/host/univer/snapshot";
import { lookThroughInTurns } from "../../../src/host/univer/turns";
import { UniverInNode } from "./univerInNode";

const ROWS = 50;

/** A number in A1, and below B1 the double of it again and again. */
function chain(id: string): IWorkbookData {
  const rows = Array.from({ length: ROWS }, (_, row) => [row, { 1: { f: row === 0 ? "=A1*2" : `=B${row}+$A$1*2` } }]);
  const cellData = Object.fromEntries(rows);
  cellData[0][0] = { v: 1, t: CellValueType.NUMBER };
  const sheets = { s: { id: "s", name: "S", rowCount: 100, columnCount: 10, cellData } };
  return { id, name: id, appVersion: "", locale: LocaleType.EN_US, styles: {}, sheetOrder: ["s"], sheets };
}

interface Step {
  _getRangeListByNode(node: unknown): Promise<unknown>;
}

describe("a workbook that is opened", () => {
  let univer: UniverInNode;
  let steps: Step;
  /** The engine keeps what it parsed by the workbook's id. */
  let ids = 0;
  let id = "";
  beforeEach(async () => {
    univer = new UniverInNode();
    id = `turns${++ids}`;
    await univer.open(chain(`first${ids}`));
    steps = univer.injector.get(IFormulaDependencyGenerator) as unknown as Step;
  });
  afterEach(() => univer.dispose());

  /** Has something done as the third formula is looked through. */
  const atTheThird = (run: () => Promise<void> | void) => {
    const { _getRangeListByNode } = steps;
    let count = 0;
    steps._getRangeListByNode = async function (node) {
      const ranges = await _getRangeListByNode.call(this, node);
      if (++count === 3) await run();
      return ranges;
    };
  };

  it("lets the page answer while its formulas are looked through", async () => {
    let answered = 0;
    let looked = 0;
    atTheThird(() => {
      const answer = () => {
        answered++;
        if (looked < ROWS) setImmediate(answer);
      };
      setImmediate(answer);
    });
    lookThroughInTurns(univer.injector, 0);
    const { _getRangeListByNode } = steps;
    steps._getRangeListByNode = async function (node) {
      const ranges = await _getRangeListByNode.call(this, node);
      looked++;
      if (looked === ROWS) expect(answered).toBeGreaterThan(0);
      return ranges;
    };
    const workbook = await univer.open(chain(id));
    expect(looked).toBeGreaterThanOrEqual(ROWS);
    expect(workbook.getActiveSheet().getCellRaw(ROWS - 1, 1)?.v).toBe(2 * ROWS);
  });

  it("is worked out where a formula finds its cells only as it is computed", async () => {
    lookThroughInTurns(univer.injector, 0);
    const data = chain(id);
    // The last formula of the chain, and one that the chain begins with.
    Object.assign(data.sheets.s?.cellData?.[0] ?? {}, {
      0: { f: "=OFFSET($D$1,0,1)" },
      2: { f: `=OFFSET($B$1,${ROWS - 1},0)` },
      4: { f: "=1+0" },
    });
    const workbook = await univer.open(data);
    expect(workbook.getActiveSheet().getCellRaw(0, 2)?.v).toBe(2 * ROWS);
  });

  it("is worked out anew after an edit that comes meanwhile", async () => {
    const commands = univer.injector.get(ICommandService);
    const stopped = new Promise<void>((resolve) => {
      commands.onCommandExecuted(({ id }) => {
        if (id === SetFormulaCalculationStopMutation.id) resolve();
      });
    });
    atTheThird(() => {
      const cellValue = { 0: { 0: { v: 5, t: CellValueType.NUMBER } } };
      commands.syncExecuteCommand(SetRangeValuesMutation.id, { unitId: id, subUnitId: "s", cellValue });
      return stopped;
    });
    lookThroughInTurns(univer.injector, 0);
    const workbook = await univer.open(chain(id));
    // 2 x 5 in each of the rows, by hand.
    expect(workbook.getActiveSheet().getCellRaw(ROWS - 1, 1)?.v).toBe(10 * ROWS);
  });

  it("gives its data as it was, once it is left", async () => {
    const workbook = await univer.open(chain(id));
    const data = snapshotOf(univer.injector, workbook);
    univer.close(workbook);
    expect(data.sheetOrder).toEqual(["s"]);
    expect(data.sheets.s?.cellData?.[ROWS - 1]?.[1]?.v).toBe(2 * ROWS);
  });
});
