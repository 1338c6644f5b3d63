import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, headingRow, setting, table, thisRow } from "../layout";

const own = thisRow("Weighed");
/** Weighings with something to fix, which the rules do not see. */
const left = 'COUNTIF(Weighed[Check],"?*")';
const right = { align: "right" } as const;
const [full, empty] = [own("Full (g)"), own("Empty (g)")];
const isGood = `IF(COUNT(${full},${empty})<2,FALSE,AND(${empty}>=0,${full}>${empty}))`;
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
      { heading: "Net (g)", formula: `=IF(${isGood},${full}-${empty},"")`, ...weight },
      {
        heading: "Check",
        formula: `=IF(COUNTA(${full},${empty})=0,"",IF(COUNT(${full},${empty})<2,"write two numbers",IF(${isGood},"","full not above empty")))`,
        look: "alert",
        align: "center",
      },
    ],
    [...WEIGHED.map(([full, empty], i) => [i + 1, full, empty]), []],
  );
  const check = (row: number, rule: string, name: string) => [
    cell(row, 6, name),
    cell(row, 7, { formula: `=POUR.NETCHECK($B$4,Weighed[Net (g)],"g","${rule}",$B$5)` }),
    ...[8, 9, 10, 11].map((column) =>
      cell(row, column, null, { format: column === 11 ? FORMATS.count : "0.00", ...right }),
    ),
  ];
  return {
    name: "Net weight",
    widths: [18, 10, 10, 10, 22, 2, 20, 44, 11, 10, 10, 8],
    cells: [
      ...heading(
        "Net weight: straight tumbler",
        "Net is full less empty. The same sample by two rules; no official inspection. Where all of a small lot must be weighed, a sample is not enough. Handbook 133's tables are from memory, not yet compared with the standard.",
        12,
      ),
      ...setting(3, "On the label (g)", 216, "The net weight declared.", 12, FORMATS.count),
      ...setting(4, "Lot", 60, "Candles in the whole lot.", 12, FORMATS.count),
      ...headingRow(6, 6, [
        { heading: "Rule" },
        { heading: "Verdict" },
        { heading: "Mean error (g)", ...right },
        { heading: "Lowest to pass (g)", ...right },
        { heading: "May be short by (g)", ...right },
        { heading: "Number short", ...right },
      ]),
      ...check(7, "us", "NIST Handbook 133"),
      ...check(8, "eu", "Directive 76/211/EEC"),
      cell(
        9,
        6,
        { formula: `=IF(${left}=0,"",${left}&" of the weighings left out: see Check.")` },
        { look: "alert", across: 6 },
      ),
      ...list.cells,
    ],
    tables: [list.table],
    print: { paper: "a4", landscape: true },
  };
}
