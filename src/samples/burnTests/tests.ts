import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, setting, table, thisRow, unlessBlank } from "../layout";
import { TESTS } from "./measured";
import { DRAWN, weightLines } from "./readings";

const own = thisRow("Tests");
const right = { align: "right" } as const;
const hours = { format: FORMATS.hours, ...right };

const isOwn = `(Readings[Test]=${own("Test")})`;
const hasText = (column: string): string => `(LEN(Readings[${column}])>0)`;
const ofTest = (formula: string): string => unlessBlank(own("Test"), formula);

/** Hours and weights of this test's weighings, blank beside all other readings. */
const weighed = (column: string): string => `IF(${isOwn}*${hasText("Weight (g)")},Readings[${column}],"")`;

/** The tests with what their readings come to, and each candle's weight against the hours. The last rows are free. */
export function tests(): Sheet {
  const list = table(
    "Tests",
    5,
    0,
    [
      { heading: "Test", look: "input", align: "center" },
      { heading: "Vessel", look: "input" },
      { heading: "Inside width (cm)", look: "input", format: FORMATS.length, align: "center" },
      { heading: "Wick", look: "input" },
      { heading: "Wax (g)", look: "input", format: FORMATS.scale, ...right },
      {
        heading: "Burn rate (g/h)",
        formula: ofTest(`POUR.BURNRATE(${weighed("Hours burnt")},${weighed("Weight (g)")})`),
        format: FORMATS.rate,
        ...right,
      },
      {
        heading: "Burns for (h)",
        formula: `=POUR.BURNHOURS(${own("Wax (g)")},${own("Burn rate (g/h)")},$B$4)`,
        ...hours,
      },
      { heading: "Pool to wall (h)", formula: `=POUR.POOLHOURS(${own("Inside width (cm)")},"cm")`, ...hours },
      {
        heading: "Highest flame (mm)",
        formula: ofTest(`SUMPRODUCT(MAX(${isOwn}*Readings[Flame (mm)]))`),
        format: FORMATS.count,
        ...right,
      },
      {
        heading: "Remarks",
        formula: ofTest(`SUMPRODUCT(${isOwn}*${hasText("Remarks")})`),
        format: FORMATS.count,
        align: "center",
      },
      {
        heading: "Verdict",
        formula: ofTest(`IF(${own("Remarks")}=0,"nothing to remark so far","see the remarks in Readings")`),
      },
    ],
    [...TESTS.map(({ test, vessel, width, wick, wax }) => [test, vessel, width, wick, wax]), [], []],
  );
  return {
    name: "Tests",
    widths: [18, 18, 15, 17, 9, 12, 14, 13, 12, 11, 28],
    cells: [
      ...heading(
        "Burn tests",
        "Rate: weight lost an hour over all weighings. Pool to wall: about an hour an inch, common practice. A burn-test laboratory has the last word; nothing here certifies a candle.",
        11,
      ),
      ...setting(
        3,
        "Wax that stays",
        0.1,
        "Stop while about half an inch (13 mm) of wax is left, by fire-safety guidance.",
        11,
        FORMATS.load,
      ),
      cell(4, 0, `The chart draws the first ${DRAWN} tests of this table with all their weighings in Readings.`, {
        look: "note",
        across: 11,
      }),
      ...list.cells,
    ],
    tables: [list.table],
    charts: [
      {
        kind: "line-of-points",
        title: "Weight against hours burnt",
        xTitle: "Hours burnt",
        yTitle: "Weight with the vessel (g)",
        format: FORMATS.scale,
        series: weightLines(),
        place: { row: 14, column: 0, rows: 22, columns: 8 },
      },
    ],
    print: { paper: "a4", landscape: true },
  };
}
