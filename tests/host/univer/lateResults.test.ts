import { ICommandService } from "@univerjs/core";
import { SetFormulaCalculationResultMutation } from "@univerjs/engine-formula";
import { SetRangeValuesMutation } from "@univerjs/preset-sheets-core";
import { expect, it } from "vitest";
import { dropLateResults } from "../../../src/engine/lateResults";
import { Calculation } from "../../../src/host/univer/calculation";
import { Headless } from "./headless";

it("leaves what was typed over a formula between its working out and the writing of what it came to", async () => {
  const formula = (row: number, formula: string) => ({ row, column: 1, content: { formula } });
  const page = new Headless([
    {
      name: "S",
      widths: [],
      cells: [
        { row: 0, column: 0, content: { number: 1 } },
        formula(0, "=A1*2"),
        formula(1, "=A1*3"),
        formula(2, "=A1*4"),
        formula(4, "=SEQUENCE(3)+A1"),
      ],
    },
  ]);
  dropLateResults(page.injector);
  const calculation = new Calculation(page.injector);
  const read = () => [0, 1, 2, 4].map((row) => page.sheet.getCellMatrix().getValue(row, 1)?.v ?? null);
  await calculation.settled();
  expect(read()).toEqual([2, 3, 4, 2]);
  const commands = page.injector.get(ICommandService);
  const typing = commands.beforeCommandExecuted(({ id }) => {
    if (id !== SetFormulaCalculationResultMutation.id) return;
    typing.dispose();
    const typed = { f: null, si: null, p: null };
    const cellValue = { 0: { 1: { ...typed, v: 77 } }, 1: { 1: { ...typed, v: null } } };
    commands.syncExecuteCommand(SetRangeValuesMutation.id, { ...page.ids, cellValue });
  });
  await page.enter(0, 0, [[10]]);
  await calculation.settled();
  expect(read()).toEqual([77, null, 40, 11]);
  // What a formula fills around it comes too.
  expect([5, 6].map((row) => page.sheet.getCell(row, 1)?.v)).toEqual([12, 13]);
});
