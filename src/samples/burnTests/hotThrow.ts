import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, headingRow, table } from "../layout";

/** Scores of the same people for two candles, 1 to 5. Invented. */
const SCORES = [
  [3, 4],
  [4, 4],
  [3, 4],
  [3, 5],
  [4, 4],
  [3, 4],
  [4, 5],
  [3, 4],
] as const;
const score = { look: "input", format: FORMATS.count, align: "center" } as const;

/** How two wicks throw the scent, by a panel. The last row is free. */
export function hotThrow(): Sheet {
  const list = table(
    "HotThrow",
    3,
    0,
    [
      { heading: "Person", look: "input", align: "center" },
      { heading: "W-21", ...score },
      { heading: "W-24", ...score },
    ],
    [...SCORES.map((scores, i) => [i + 1, ...scores]), []],
  );
  return {
    name: "Hot throw",
    widths: [10, 10, 10, 4, 14, 14, 14, 10, 52],
    cells: [
      ...heading(
        "Hot throw: straight tumbler, W-21 and W-24",
        "The same people score both candles, from 1 (nothing) to 5 (fills the room), without knowing which is which. Only who scores one higher counts (sign test). That a candle throws well says nothing of how it burns.",
        9,
      ),
      ...list.cells,
      ...headingRow(3, 4, [
        { heading: "Median difference", align: "right" },
        { heading: "Score W-21 higher", align: "center" },
        { heading: "Score W-24 higher", align: "center" },
        { heading: "p", align: "center" },
        { heading: "First: W-21, second: W-24" },
      ]),
      cell(
        4,
        4,
        { formula: "=POUR.THROWCOMPARE(HotThrow[W-21],HotThrow[W-24])" },
        {
          format: FORMATS.length,
          align: "right",
        },
      ),
      ...[5, 6].map((column) => cell(4, column, null, { format: FORMATS.count, align: "center" })),
      cell(4, 7, null, { format: FORMATS.factor, align: "center" }),
    ],
    tables: [list.table],
    print: { paper: "a4", landscape: true },
  };
}
