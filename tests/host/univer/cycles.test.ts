import { CellValueType, ICommandService, type IWorkbookData, LocaleType, type Workbook } from "@univerjs/core";
import { IDependencyManagerService } from "@univerjs/engine-formula";
import { SetRangeValuesMutation } from "@univerjs/preset-sheets-core";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { cyclesOf, watchForCycles } from "../../../src/engine/cycles";
import { UniverInNode } from "./univerInNode";

let univer: UniverInNode;
let workbook: Workbook;
/** The engine keeps what it parsed by the workbook's id. */
let ids = 0;

/** A number in A1, and from B1 on in each cell the one on its left with 1 more. */
function steps(): IWorkbookData {
  const letters = ["A", "B", "C"];
  const formulas = letters.map((letter, i) => [i + 1, { f: `=${letter}1+1` }]);
  const cellData = { 0: { 0: { v: 1, t: CellValueType.NUMBER }, ...Object.fromEntries(formulas) } };
  const id = `steps${++ids}`;
  const sheets = { s: { id: "s", name: "S", rowCount: 10, columnCount: 10, cellData } };
  return { id, name: id, appVersion: "", locale: LocaleType.EN_US, styles: {}, sheetOrder: ["s"], sheets };
}

async function write(row: number, content: object): Promise<void> {
  const params = { unitId: workbook.getUnitId(), subUnitId: "s", cellValue: { [row]: { 0: content } } };
  univer.injector.get(ICommandService).syncExecuteCommand(SetRangeValuesMutation.id, params);
  await univer.settled();
}

const cycles = () => [...cyclesOf(univer.injector, workbook)].sort();

beforeEach(async () => {
  univer = new UniverInNode();
  workbook = await univer.open(steps());
  watchForCycles(univer.injector);
});
afterEach(() => univer.dispose());

it("finds the cycle that an edit closes, for as long as it is there", async () => {
  const all = ["0,0,s", "0,1,s", "0,2,s", "0,3,s"];
  expect(cycles()).toEqual([]);
  await write(0, { f: "=D1" });
  expect(cycles()).toEqual(all);
  await write(5, { v: 7, t: CellValueType.NUMBER });
  expect(cycles()).toEqual(all);
  await write(0, { v: 1, f: null, t: CellValueType.NUMBER });
  expect(cycles()).toEqual([]);
  await write(5, { f: "=SUM(A1:A9)" });
  expect(cycles()).toEqual(["5,0,s"]);
});

it("looks for none after an edit that closes none", async () => {
  const search = vi.spyOn(univer.injector.get(IDependencyManagerService), "openKdTree");
  await write(0, { v: 2, t: CellValueType.NUMBER });
  search.mockClear();
  expect(cycles()).toEqual([]);
  expect(search).not.toHaveBeenCalled();
  await write(0, { f: "=B1" });
  cycles();
  expect(search).toHaveBeenCalled();
});
