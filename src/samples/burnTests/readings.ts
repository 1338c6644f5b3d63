import type { CellRange, Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, lookUp, setting, table, thisRow, type Value } from "../layout";
import { TESTS, type Test } from "./measured";

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

/** For charts: the hours and the weights of one test. */
export function pointsOf(test: Test): { x: CellRange; y: CellRange } {
  const before = TESTS.slice(0, TESTS.indexOf(test)).flatMap(rowsOf).length;
  const column = (at: number) => ({
    sheet: "Readings",
    row: HEADING + 1 + before,
    column: at,
    rows: rowsOf(test).length,
    columns: 1,
  });
  return { x: column(6), y: column(3) };
}

/** Every reading of every test, in cycles. The last rows are free. */
export function readings(): Sheet {
  const width = lookUp("Tests", "Inside width (cm)", "Test", own("Test"));
  const pool = `IF(LEN(${own("Pool (cm)")})=0,"",POUR.POOLCHECK(${own("Pool (cm)")},${width},${own("Minutes")}/60))`;
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
        formula: `=IF(LEN(${own("Minutes")})=0,"",((${own("Cycle")}-1)*$B$4+${own("Minutes")})/60)`,
        format: FORMATS.hours,
        align: "center",
      },
      {
        heading: "Remarks",
        formula: `=TEXTJOIN("; ",TRUE,POUR.FLAMECHECK(${own("Flame (mm)")}),${pool})`,
        look: "alert",
      },
    ],
    [...TESTS.flatMap(rowsOf), [], [], []],
  );
  return {
    name: "Readings",
    widths: [15, 9, 10, 11, 12, 11, 13, 96],
    cells: [
      ...heading(
        "Readings",
        "Burnt in cycles of 240 minutes with breaks of at least 60, the pattern of EN 15426. Weighed with the vessel, unlit: what is not weighed or seen stays blank.",
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
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: HEADING + 1,
    print: { paper: "a4", landscape: true, repeatRows: [HEADING, HEADING] },
  };
}
