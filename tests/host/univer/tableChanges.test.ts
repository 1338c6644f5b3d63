import { expect, it } from "vitest";
import "../../../src/engine/corrections";
import { parseAnewWithTables } from "../../../src/engine/tableChanges";
import { Calculation } from "../../../src/host/univer/calculation";
import { followEdits } from "../../../src/host/univer/editing/edits";
import { growTables } from "../../../src/host/univer/editing/growTables";
import type { Cell } from "../../../src/sheet/sheet";
import { Headless } from "./headless";

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
  parseAnewWithTables(page.injector);
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
