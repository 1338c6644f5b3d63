import { thisRow } from "../layout";

/**
 * What the sheet Readings works out of one row, so that a slip spoils its own row only. The order of a test's
 * weighings is the one thing that is judged together: no candle grows heavier.
 */

const own = thisRow("Readings");
const [test, cycle, minutes, weight] = [own("Test"), own("Cycle"), own("Minutes"), own("Weight (g)")];
const [flame, pool, hours] = [own("Flame (mm)"), own("Pool (cm)"), own("Hours burnt")];
const CYCLE = "$B$4";

/** The faults of an input, each with the condition it is told by, the first that holds; of a blank `blank` is said. */
function fault(input: string, name: string, blank: string, faults: readonly (readonly [string, string])[]): string {
  const told = faults.reduceRight((otherwise, [condition, says]) => `IF(${condition},"${says}",${otherwise})`, '""');
  return `IF(ISBLANK(${input}),"${blank}",IF(ISNUMBER(${input}),${told},"${name} not a number"))`;
}

/** Rows of this test at other hours than these, on one side of them, whose weight is on one side of this one. */
const others = (side: "<" | ">"): string =>
  `COUNTIFS(Readings[Test],${test},Readings[Hours burnt],"${side}"&${hours},Readings[Weight (g)],"${side}"&${weight},Readings[Weight (g)],">0")`;

/** Weighings of this test that this one does not go with: earlier ones that are lighter, later ones that are heavier. */
export const OUT_OF_ORDER = `=IF(COUNT(${hours},${weight})<2,0,IF(${weight}>0,${others("<")}+${others(">")},0))`;

/** The one that goes with the fewest is the slip; where two are as bad either may be it. */
const isOutOfOrder = `${own("Out of order")}=MAXIFS(Readings[Out of order],Readings[Test],${test}),${own("Out of order")}>0`;

export const HOURS_BURNT = `=IF(COUNT(${cycle},${minutes},${CYCLE})<3,"",IF(OR(${cycle}<1,${cycle}<>INT(${cycle}),${minutes}<0,AND(${minutes}>0,${minutes}<1),${CYCLE}<=0),"",((${cycle}-1)*${CYCLE}+${minutes})/60))`;

/** The weight, where it can be relied on. */
export const WEIGHT_COUNTED = `=IF(COUNT(${hours},${weight})<2,"",IF(${weight}<=0,"",IF(AND(${isOutOfOrder}),"",${weight})))`;

/** What to fix in a row; empty where nothing is, and in a free row. `width` is the inside width of the row's vessel. */
export function toFix(width: string): string {
  const faults = [
    `IF(ISBLANK(${test}),"the test is missing",IF(COUNTIF(Tests[Test],${test})=0,"no such test on the sheet Tests",""))`,
    fault(cycle, "the cycle is", "the cycle is missing", [
      [`OR(${cycle}<1,${cycle}<>INT(${cycle}))`, "cycles are counted 1, 2, 3"],
    ]),
    fault(minutes, "the minutes are", "the minutes are missing", [
      [`${minutes}<0`, "the minutes are below 0"],
      [`AND(${minutes}>0,${minutes}<1)`, "the minutes are a clock time: write 240, not 4:00"],
    ]),
    fault(weight, "the weight is", "", [
      [`${weight}<=0`, "the weight is not above 0"],
      [`AND(${isOutOfOrder})`, "the weight rises: it is above an earlier or below a later one"],
    ]),
    fault(flame, "the flame is", "", [[`${flame}<0`, "the flame is below 0"]]),
    fault(pool, "the pool is", "", [
      [`${pool}<0`, "the pool is below 0"],
      [
        `IFERROR(AND(${width}>0,${pool}>${width}),FALSE)`,
        "the pool is wider than the vessel: measure both inside, in cm, at the surface of the wax",
      ],
    ]),
  ];
  const inputs = [test, cycle, minutes, weight, flame, pool].join(",");
  return `=IF(COUNTA(${inputs})=0,"",TEXTJOIN("; ",TRUE,${faults.join(",")}))`;
}

/** What to fix, then what is to be said of the flame and the pool where they can be judged. */
export function remarks(width: string, product: string): string {
  const flameOf = `IF(IFERROR(${product}="tea light",FALSE),"tea light","container")`;
  const isFlame = `COUNTIF(${flame},">=0")=1`;
  const canJudge = `IFERROR(AND(COUNT(${pool},${width},${hours})=3,${width}>0,${pool}>=0,${pool}<=${width}),FALSE)`;
  const said = [
    `IF(LEN(${own("To fix")})=0,"","Fix: "&${own("To fix")})`,
    `IF(${isFlame},POUR.FLAMECHECK(${flame},"mm",${flameOf}),"")`,
    `IF(${canJudge},POUR.POOLCHECK(${pool},${width},${minutes}/60,"cm"),"")`,
  ];
  return `=TEXTJOIN("; ",TRUE,${said.join(",")})`;
}
