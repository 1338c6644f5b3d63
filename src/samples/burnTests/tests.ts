import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, setting, table, thisRow, unlessBlank } from "../layout";
import { TESTS } from "./measured";
import { DRAWN, weightLines } from "./readings";

const own = thisRow("Tests");
const right = { align: "right" } as const;
const hours = { format: FORMATS.hours, ...right };
const count = { format: FORMATS.count, ...right };

const HEADING = 7;
const DEPTH = "$B$4";
const DENSITY = "$B$5";

const ofTest = (formula: string): string => unlessBlank(own("Test"), formula);
/** How many readings of this test have this in a column. */
const readings = (column: string, criterion: string): string =>
  `COUNTIFS(Readings[Test],${own("Test")},Readings[${column}],"${criterion}")`;
const ANY_TEXT = "?*";

/** A column for the weighings of this test that count, blank beside all other readings. */
const counted = (column: string): string =>
  `IFERROR(IF((Readings[Test]=${own("Test")})*ISNUMBER(Readings[Weight counted]),Readings[${column}],""),"")`;

/** No rate while weights rise, for it cannot be told which of them is wrong. */
const rate = `IF(${readings("Out of order", ">0")}>0,"",IF(${readings("Weight counted", ">0")}<2,"",POUR.BURNRATE(${counted("Hours burnt")},${counted("Weight counted")})))`;

const left = `POUR.FILLBYVOLUME(POUR.VESSELVOLUME(${own("Shape")},${own("Inside width (cm)")},${DEPTH},"cm"),"ml","g",${DENSITY})`;
const [fill, perHour, stays] = [own("Fill (g)"), own("Burn rate (g/h)"), own("Wax left (g)")];
const burnt = `IF(COUNT(${fill},${perHour},${stays})<3,"",IF(OR(${fill}<=${stays},${perHour}<=0),0,POUR.BURNHOURS(${fill}-${stays},${perHour})))`;

const highest = `IF(${readings("Flame (mm)", ">0")}=0,"",IFERROR(MAXIFS(Readings[Flame (mm)],Readings[Test],${own("Test")}),""))`;

const plural = (number: string, word: string): string => `${number}&IF(${number}=1," ${word}"," ${word}s")`;

/** What to fix first; else whether there is something to remark. */
function verdict(): string {
  const [faults, product] = [readings("To fix", ANY_TEXT), own("Product")];
  const steps: readonly (readonly [condition: string, says: string])[] = [
    [`COUNTIF(Tests[Test],${own("Test")})>1`, '"fix: two rows have this name"'],
    [`NOT(OR(LEN(${product})=0,${product}="container",${product}="tea light"))`, '"fix the product"'],
    [`COUNTIF(${own("Inside width (cm)")},">0")=0`, '"fix the inside width"'],
    [`COUNT(${stays})=0`, '"fix the shape, depth or density"'],
    [`COUNTIF(${fill},">0")=0`, '"fix the fill"'],
    [`${faults}>0`, `"fix "&${plural(faults, "reading")}`],
    [`${readings("Weight counted", ">0")}<2`, '"weigh at least twice"'],
    [`${own("Remarks")}>0`, '"see the remarks in Readings"'],
  ];
  const text = steps.reduceRight(
    (otherwise, [condition, says]) => `IF(${condition},${says},${otherwise})`,
    '"nothing to remark so far"',
  );
  return ofTest(text);
}

/** The tests with what their readings come to, and each candle's weight against the hours. The last rows are free. */
export function tests(): Sheet {
  const list = table(
    "Tests",
    HEADING,
    0,
    [
      { heading: "Test", look: "input", align: "center" },
      { heading: "Vessel", look: "input" },
      { heading: "Product", look: "input", align: "center" },
      { heading: "Shape", look: "input", align: "center" },
      { heading: "Inside width (cm)", look: "input", format: FORMATS.length, align: "center" },
      { heading: "Wick", look: "input" },
      { heading: "Fill (g)", look: "input", format: FORMATS.scale, ...right },
      { heading: "Burn rate (g/h)", formula: ofTest(rate), format: FORMATS.rate, ...right },
      { heading: "Wax left (g)", formula: ofTest(left), format: FORMATS.scale, ...right },
      { heading: "Burns for (h)", formula: ofTest(burnt), ...hours },
      {
        heading: "Pool to wall (h)",
        formula: ofTest(`POUR.POOLHOURS(${own("Inside width (cm)")},"cm")`),
        ...hours,
      },
      { heading: "Highest flame (mm)", formula: ofTest(highest), ...count },
      { heading: "Remarks", formula: ofTest(readings("Remarks", ANY_TEXT)), format: FORMATS.count, align: "center" },
      { heading: "Verdict", formula: verdict() },
    ],
    [
      ...TESTS.map(({ test, vessel, shape, width, wick, fill }) => [
        test,
        vessel,
        "container",
        shape,
        width,
        wick,
        fill,
      ]),
      [],
      [],
    ],
  );
  const unclear = `COUNTIF(Readings[To fix],"${ANY_TEXT}")`;
  return {
    name: "Tests",
    widths: [19, 17, 10, 9, 8, 16, 9, 8, 9, 10, 9, 11, 10, 28],
    cells: [
      ...heading(
        "Burn tests",
        "Fill: wax and scent (fragrance oil) together. Rate: weight lost an hour over all weighings. Pool to wall: about an hour an inch, common practice. A burn-test laboratory has the last word; nothing here certifies a candle.",
        14,
      ),
      ...setting(
        3,
        "Depth left (cm)",
        1.3,
        "Stop at half an inch (13 mm) of wax, by fire-safety guidance (second-hand). Burns for counts down to it, the wax level: with wax hanging on the wall stop sooner.",
        14,
        FORMATS.length,
      ),
      ...setting(
        4,
        "Wax density (g/ml)",
        0.9,
        "Solid wax weighs about 0.9 g a millilitre (paraffin, second-hand). Walls are taken as straight: of a tapered vessel give its widest inside width, and the hours come out short.",
        14,
        FORMATS.rate,
      ),
      cell(
        5,
        0,
        {
          formula: `=IF(${unclear}=0,"",${plural(unclear, "reading")}&" to fix on the sheet Readings: left out here until then.")`,
        },
        { look: "alert", across: 14 },
      ),
      cell(
        6,
        0,
        `Product: container or tea light, whose flame may be 30 mm high at most. Shape: round, box (square) or hexagon (width across the flats); of any other give the widest inside width as round or box. The chart draws the first ${DRAWN} tests of this table with all their weighings in Readings.`,
        { look: "note", across: 14 },
      ),
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
        place: { row: HEADING + 9, column: 0, rows: 22, columns: 10 },
      },
    ],
    print: { paper: "a4", landscape: true },
  };
}
