import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, headingRow, setting, table, thisRow } from "../layout";

const own = thisRow("Weighed");
const right = { align: "right" } as const;
const weight = { format: FORMATS.weight, ...right };

/** Full and empty weights of straight tumblers, in grams. */
const WEIGHED = [
  [527.9, 311.4],
  [529.2, 312],
  [526.1, 309.8],
  [530, 312.7],
  [527.3, 311.8],
  [528.8, 311.9],
  [526.6, 310.2],
  [529.5, 313],
  [528.1, 310.9],
  [527, 311.3],
  [530.4, 312.9],
  [526.9, 310.6],
] as const;

/** A small sample of one label's candles, weighed full and empty, against both rules. */
export function netWeight(): Sheet {
  const list = table(
    "Weighed",
    6,
    0,
    [
      { heading: "Candle", look: "input", align: "center" },
      { heading: "Full (g)", look: "input", ...weight },
      { heading: "Empty (g)", look: "input", ...weight },
      {
        heading: "Net (g)",
        formula: `=IF(COUNT(${own("Full (g)")},${own("Empty (g)")})<2,"",${own("Full (g)")}-${own("Empty (g)")})`,
        ...weight,
      },
    ],
    [...WEIGHED.map(([full, empty], i) => [i + 1, full, empty]), []],
  );
  const check = (row: number, rule: string, name: string) => [
    cell(row, 5, name),
    cell(row, 6, { formula: `=POUR.NETCHECK($B$4,Weighed[Net (g)],"g","${rule}",$B$5)` }),
    ...[7, 8, 9, 10].map((column) =>
      cell(row, column, null, { format: column === 10 ? FORMATS.count : "0.00", ...right }),
    ),
  ];
  return {
    name: "Net weight",
    widths: [18, 11, 11, 11, 3, 24, 46, 13, 13, 14, 11],
    cells: [
      ...heading(
        "Net weight: straight tumbler",
        "Net is full less empty. The same sample by two rules; no official inspection. Where all of a small lot must be weighed, a sample is not enough.",
        11,
      ),
      ...setting(3, "On the label (g)", 216, "The net weight declared.", 11, FORMATS.count),
      ...setting(4, "Lot", 60, "Candles in the whole lot.", 11, FORMATS.count),
      ...headingRow(6, 5, [
        { heading: "Rule" },
        { heading: "Verdict" },
        { heading: "Mean error (g)", ...right },
        { heading: "Lowest to pass (g)", ...right },
        { heading: "May be short by (g)", ...right },
        { heading: "Number short", ...right },
      ]),
      ...check(7, "us", "NIST Handbook 133"),
      ...check(8, "eu", "Directive 76/211/EEC"),
      ...list.cells,
    ],
    tables: [list.table],
    print: { paper: "a4", landscape: true },
  };
}
