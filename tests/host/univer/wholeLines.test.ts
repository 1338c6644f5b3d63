import { UndoCommand } from "@univerjs/core";
import { RemoveColCommand, RemoveRowCommand } from "@univerjs/preset-sheets-core";
import { expect, it } from "vitest";
import "../../../src/engine/corrections";
import { Calculation } from "../../../src/host/univer/calculation";
import { removeWholeLines } from "../../../src/host/univer/editing/wholeLines";
import { Headless } from "./headless";

/** Sums over whole columns and rows of another sheet, and what they are, by hand. */
const SUMS = ["=SUM(Costs!B:B)", "=SUM(Costs!$B:$C)", "=SUM(Costs!2:2)", "=SUM(Costs!$2:$3)", "=SUM(Costs!B1:B3)"];
const BEFORE = [60, 660, 222, 555, 60];
const NUMBERS = [
  [1, 10, 100],
  [2, 20, 200],
  [3, 30, 300],
];

it.each([
  ["the column before", RemoveColCommand.id, 0, 0, ["A:A", "$A:$B", "2:2", "$2:$3", "A1:A3"], [60, 660, 220, 550, 60]],
  [
    "their column",
    RemoveColCommand.id,
    1,
    1,
    ["#REF!", "$B:$B", "2:2", "$2:$3", "#REF!"],
    ["#REF!", 600, 202, 505, "#REF!"],
  ],
  ["the row before", RemoveRowCommand.id, 0, 0, ["B:B", "$B:$C", "1:1", "$1:$2", "B1:B2"], [50, 550, 222, 555, 50]],
  ["their row", RemoveRowCommand.id, 1, 1, ["B:B", "$B:$C", "#REF!", "$2:$2", "B1:B2"], [40, 440, "#REF!", 333, 40]],
])(
  "sums over whole rows and columns go on when a cell is selected and %s is removed",
  async (_, id, at, to, read, are) => {
    const page = new Headless(["Sums", "Costs"].map((name) => ({ name, widths: [], cells: [] })));
    removeWholeLines(page.injector);
    const calculation = new Calculation(page.injector);
    await page.enter(
      0,
      0,
      SUMS.map((formula) => [formula]),
    );
    const [sums, costs] = page.workbook.getSheets();
    if (costs) page.workbook.setActiveSheet(costs);
    await page.enter(0, 0, NUMBERS);
    const results = async () => {
      await calculation.settled();
      return SUMS.map((_, row) => sums?.getCellMatrix().getValue(row, 0)?.v);
    };
    expect(await results()).toEqual(BEFORE);
    await page.run(id, { range: { startRow: at, endRow: to, startColumn: at, endColumn: to } });
    expect(await results()).toEqual(are);
    const texts = SUMS.map((_, row) => sums?.getCellMatrix().getValue(row, 0)?.f);
    expect(texts).toEqual(read.map((one) => (one === "#REF!" ? "=SUM(#REF!)" : `=SUM(Costs!${one})`)));
    await page.run(UndoCommand.id, {});
    expect(await results()).toEqual(BEFORE);
  },
);
