import { columnLetters } from "../../sheet/columnLetters";
import type { Cell, CellRange, Series, Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { type Column, cell, heading, lookUp, setting, table, thisRow, type Value } from "../layout";
import { TESTS, type Test } from "./measured";
import { HOURS_BURNT, OUT_OF_ORDER, remarks, toFix, WEIGHT_COUNTED } from "./readingFormulas";

const own = thisRow("Readings");
const right = { align: "right" } as const;
const length = { look: "input", format: FORMATS.length, ...right } as const;
const count = { look: "input", format: FORMATS.count, align: "center" } as const;

const HEADING = 5;

/** The rows of one test: the start, an hour and two into the first cycle, then the end of each cycle. */
function rowsOf({ test, weights, flames, pools }: Test): Value[][] {
  const [start, ...ends] = weights as [number, ...number[]];
  const late = { flames: flames.slice(2), pools: pools.slice(2) };
  return [
    [test, 1, 0, start],
    [test, 1, 60, null, flames[0] ?? null, pools[0] ?? null],
    [test, 1, 120, null, flames[1] ?? null, pools[1] ?? null],
    ...ends.map((weight, i) => [test, i + 1, 240, weight, late.flames[i] ?? null, late.pools[i] ?? null]),
  ];
}

const MEASURED = TESTS.flatMap(rowsOf);
/** Enough for two more tests. */
const FREE = 2 * rowsOf(TESTS[0] as Test).length;

/** As many tests as the chart has lines for: the first ones of the sheet Tests. */
export const DRAWN = 7;
/** Hidden columns: what to fix and what counts, the hours for the chart, then a column for each test that is drawn. */
const HIDDEN = 8;
const HOURS = HIDDEN + 3;
/** Above each of those, the test it is for, and what its line is called. */
const KEY = 3;
const NAME = 4;

/** Lines of the weights over the hours. They are whole columns of the table, so that rows that are added are drawn. */
export function weightLines(): Series[] {
  const column = (at: number): CellRange => ({
    sheet: "Readings",
    row: HEADING + 1,
    column: at,
    rows: MEASURED.length + FREE,
    columns: 1,
  });
  return Array.from({ length: DRAWN }, (_, i) => ({
    name: { ...column(HOURS + 1 + i), row: NAME, rows: 1 },
    x: column(HOURS),
    y: column(HOURS + 1 + i),
  }));
}

/** The hidden columns with their headings: Excel draws a text as 0, and a point that is #N/A not at all. */
function hidden(width: string, rows: number): { headings: string[]; cells: Cell[] } {
  const columns: Column[] = [
    { heading: "To fix", formula: toFix(width) },
    { heading: "Out of order", formula: OUT_OF_ORDER },
    { heading: "Weight counted", formula: WEIGHT_COUNTED },
    { heading: "Hours drawn", formula: `=N(${own("Hours burnt")})` },
    ...Array.from({ length: DRAWN }, (_, line) => {
      const key = `${letterOf(line)}$${KEY + 1}`;
      const isOwn = `ISNUMBER(${own("Weight counted")})*(LEN(${key})>0)*(${own("Test")}=${key})`;
      return { heading: `Drawn ${line + 1}`, formula: `=IFERROR(IF(${isOwn},${own("Weight counted")},NA()),NA())` };
    }),
  ];
  return {
    headings: columns.map(({ heading }) => heading),
    cells: columns.flatMap(({ heading, formula = "" }, c) => [
      cell(HEADING, HIDDEN + c, heading),
      ...Array.from({ length: rows }, (_, r) => cell(HEADING + 1 + r, HIDDEN + c, { formula })),
    ]),
  };
}

const letterOf = (line: number): string => columnLetters(HOURS + 1 + line);

/** Above the hidden columns: the test in this place of the sheet Tests, and its line's name. */
function drawnTest(line: number) {
  const key = `${letterOf(line)}${KEY + 1}`;
  const ofTests = (column: string): string => `INDEX(Tests[${column}],${line + 1})`;
  return [
    cell(KEY, HOURS + 1 + line, {
      formula: `=IFERROR(IF(LEN(${ofTests("Test")})=0,"",${ofTests("Test")}),"")`,
    }),
    cell(NAME, HOURS + 1 + line, {
      formula: `=IF(LEN(${key})=0,"(free)",${key}&": "&${ofTests("Vessel")}&", "&LOWER(${ofTests("Wick")}))`,
    }),
  ];
}

/** Every reading of every test, in cycles. The last rows are free. */
export function readings(): Sheet {
  const ofTest = (column: string): string => lookUp("Tests", column, "Test", own("Test"));
  const width = ofTest("Inside width (cm)");
  const list = table(
    "Readings",
    HEADING,
    0,
    [
      { heading: "Test", look: "input", align: "center" },
      { heading: "Cycle", ...count },
      { heading: "Minutes", ...count },
      { heading: "Weight (g)", look: "input", format: FORMATS.weight, ...right },
      { heading: "Flame (mm)", look: "input", format: FORMATS.count, ...right },
      { heading: "Pool (cm)", ...length },
      {
        heading: "Hours burnt",
        formula: HOURS_BURNT,
        format: FORMATS.hours,
        align: "center",
      },
      {
        heading: "Remarks",
        formula: remarks(width, ofTest("Product")),
        look: "alert",
        // A remark on the flame and one on the pool.
        lines: 2,
      },
    ],
    [...MEASURED, ...Array.from({ length: FREE }, () => [])],
  );
  const { headings, cells } = hidden(width, list.table.rows);
  return {
    name: "Readings",
    widths: [15, 9, 10, 11, 12, 11, 13, 96, ...Array<number>(HOURS - HIDDEN + 1 + DRAWN).fill(0)],
    cells: [
      ...heading(
        "Readings",
        "Burnt in cycles of 240 minutes with breaks of at least 60, the pattern of EN 15426. Weighed with the vessel, unlit: what is not weighed or seen stays blank. A row with something to fix is left out; all others count.",
        8,
      ),
      ...setting(
        3,
        "Cycle (min)",
        240,
        "How long each cycle burns. Minutes are counted from its start.",
        8,
        FORMATS.count,
      ),
      cell(
        4,
        0,
        {
          formula:
            '=IF(COUNTIF($B$4,">0")=1,"","Fix the cycle: minutes as a number above 0, such as 240. Until then no hours are counted.")',
        },
        { look: "alert", across: 8 },
      ),
      ...Array.from({ length: DRAWN }, (_, line) => drawnTest(line)).flat(),
      ...list.cells,
      ...cells,
    ],
    tables: [{ ...list.table, headings: [...list.table.headings, ...headings] }],
    frozenRows: HEADING + 1,
    print: { paper: "a4", landscape: true, repeatRows: [HEADING, HEADING] },
  };
}
