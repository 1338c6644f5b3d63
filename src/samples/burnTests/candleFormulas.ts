import { BEYOND, NOT_FINISHED, TO_LOOK_AT } from "../../core/burn/openings";
import { thisRow, unlessBlank } from "../layout";
import { CYCLE } from "./readings";

/**
 * What the sheet Burn tests works out of a candle's readings. They stand together on their sheet, so that only these
 * are looked at: there are many more.
 */

const own = thisRow("BurnTests");
const [test, first, rows, width] = [own("Test"), own("First row"), own("Rows"), own("Inside width (mm)")];
const [toFix, rate, check] = [own("To fix"), own("Burn rate (g/h)"), own("Check")];

/** This candle's part of a column of the readings. */
const of = (column: string): string =>
  `INDEX(Readings[${column}],${first}):INDEX(Readings[${column}],${first}+${rows}-1)`;
const [CYCLES, MINUTES, WEIGHTS, FLAMES] = [of("Cycle"), of("Minutes"), of("Weight (g)"), of("Flame (mm)")];
const MINUTES_BURNT = `(${CYCLES}-1)*${CYCLE}+${MINUTES}`;
const MEASURED = [
  ["Weight (g)", "weight"],
  ["Flame (mm)", "flame"],
  ["Pool (mm)", "pool"],
  ["Wax left (mm)", "depth of wax left"],
  ["Glass temperature (C)", "glass temperature"],
] as const;

/** The first of these that holds says its text; else the last one is said. */
const firstOf = (steps: readonly (readonly [condition: string, says: string])[], otherwise: string): string =>
  steps.reduceRight((rest, [condition, says]) => `IF(${condition},${says},${rest})`, otherwise);

const NOT_BURNT = "nothing read yet";
const FIX = "Fix: ";
/** How weights go with hours: -1 on a falling line, above this where one was typed wrongly. */
const FALLING = -0.995;

export const FIRST_ROW = unlessBlank(test, `IFERROR(MATCH(${test},Readings[Test],0),"")`);
export const ROWS = `=IF(LEN(${first})=0,0,COUNTIF(Readings[Test],${test}))`;

/** Why it is not known when a candle was read. */
export const PLACE = unlessBlank(
  test,
  firstOf(
    [
      [`COUNTIF(BurnTests[Test],${test})>1`, '"two rows have this name"'],
      [`COUNTIF(${CYCLE},">0")=0`, '"the length of a cycle, on the sheet Readings"'],
      [`${rows}=0`, '""'],
      [`COUNTIF(${of("Test")},${test})<${rows}`, '"its readings do not stand together; sort them by test"'],
      [`COUNT(${CYCLES})<${rows}`, '"a cycle is not a number"'],
      [`COUNTIF(${CYCLES},"<1")+SUMPRODUCT(--(MOD(${CYCLES},1)>0))>0`, '"cycles are counted 1, 2, 3"'],
      [`COUNT(${MINUTES})<${rows}`, '"the minutes are not a number"'],
      [
        `COUNTIF(${MINUTES},"<0")+COUNTIFS(${MINUTES},">0",${MINUTES},"<1")>0`,
        '"minutes count from the start of a cycle: write 240, not 4:00"',
      ],
      [
        `COUNTIFS(${MINUTES},${CYCLE},${CYCLES},"<"&MAX(${CYCLES}))<MAX(${CYCLES})-1`,
        '"a cycle before its last one is not whole"',
      ],
    ],
    '""',
  ),
);

/** What to fix first, in the candle's row or its readings. */
export const TO_FIX = unlessBlank(
  test,
  firstOf(
    [
      [`LEN(${own("Place")})>0`, own("Place")],
      [`COUNTIF(${width},">0")=0`, '"the inside width is not a number above 0"'],
      [`${rows}=0`, '""'],
      ...MEASURED.map(([column, name]): readonly [string, string] => [
        `COUNTA(${of(column)})>COUNTIF(${of(column)},">0")`,
        `"a ${name} is not a number above 0"`,
      ]),
    ],
    '""',
  ),
);

/** Of a weighing, blank beside all other readings. */
const ofWeighing = (formula: string): string => `IF(ISNUMBER(${WEIGHTS}),IF(${WEIGHTS}>0,${formula},""),"")`;
const [HOURS_WEIGHED, WEIGHED] = [ofWeighing(`(${MINUTES_BURNT})/60`), ofWeighing(WEIGHTS)];

/** No rate while weights do not fall in a line, for it cannot be told which of them is wrong. */
export const RATE = unlessBlank(
  test,
  `IF(OR(${rows}=0,LEN(${own("Place")})>0),"",IF(IFERROR(CORREL(${WEIGHED},${HOURS_WEIGHED}),0)>${FALLING},"",POUR.BURNRATE(${HOURS_WEIGHED},${WEIGHED})))`,
);

const unlessToFix = (formula: string): string =>
  unlessBlank(test, `IF(${rows}=0,"",IF(LEN(${toFix})>0,"",IF(COUNT(${FLAMES})=0,"",${formula})))`);
export const HOURS = unlessToFix(`SUMPRODUCT(MAX((${MINUTES_BURNT})*ISNUMBER(${FLAMES})))/60`);
export const HIGHEST = unlessToFix(`MAX(${FLAMES})`);

const READ = ["Cycle", "Minutes", "Flame (mm)", "Pool (mm)"].map(of).join(",");
const AND_READ = ["Wax left (mm)", "Soot", "Glass temperature (C)"].map(of).join(",");

export const CHECK = unlessBlank(
  test,
  firstOf(
    [
      [`LEN(${toFix})>0`, `"${FIX}"&${toFix}`],
      [`${rows}=0`, `"${NOT_BURNT}"`],
      [`COUNT(${FLAMES})=0`, `"${NOT_BURNT}"`],
      [
        `AND(COUNT(${WEIGHTS})>2,LEN(${rate})=0)`,
        `"${FIX}its weights do not fall in a line; look for one typed wrongly"`,
      ],
    ],
    `POUR.BURNCHECK(${READ},${width},"mm",${AND_READ},"C","container",${WEIGHTS},"g")`,
  ),
);

export const RESULTS = {
  within: "within",
  look: "to look at",
  beyond: "beyond",
  open: "not finished",
  fix: "fix",
  not: "not burnt",
} as const;

/** Whether the check says one of these. */
function says(...words: readonly string[]): string {
  return `OR(${words.map((one) => `ISNUMBER(SEARCH("${one}",${check}))`).join(",")})`;
}

/** Whether it says one of these of a reading, which it names before. */
const saysOfReading = (...openings: readonly string[]): string => says(...openings.map((one) => `min: ${one}`));

/** As the pane counts: beyond the limits or not; what is not finished is neither. */
export const RESULT = unlessBlank(
  test,
  firstOf(
    [
      [`LEN(${check})=0`, `"${RESULTS.within}"`],
      [`LEFT(${check},${FIX.length})="${FIX}"`, `"${RESULTS.fix}"`],
      [`${check}="${NOT_BURNT}"`, `"${RESULTS.not}"`],
      [saysOfReading(...Object.values(BEYOND)), `"${RESULTS.beyond}"`],
      [says(NOT_FINISHED), `"${RESULTS.open}"`],
    ],
    `"${RESULTS.look}"`,
  ),
);

/** 1 for a candle with something to look at: it is within the limits all the same. */
export const LOOK = unlessBlank(test, `IF(LEN(${check})=0,0,IF(${saysOfReading(...Object.values(TO_LOOK_AT))},1,0))`);

/** By which the sheet Wicks finds the first candle of a wick with a result. */
export const KEY = unlessBlank(test, `${own("Vessel")}&"|"&${own("Wick")}&"|"&${own("Result")}`);
