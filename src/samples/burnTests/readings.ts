import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, setting, table } from "../layout";
import { HEADING_LINES, LOOKS } from "./series";

const right = { align: "right" } as const;
const count = { look: "input", format: FORMATS.count, align: "center" } as const;
const measured = { look: "input", format: FORMATS.count, ...right } as const;

/** Where the length of a cycle stands. */
export const CYCLE = "Readings!$B$3";

const HEADING = 5;
/** Rows to go on in. */
const FREE = 10;
const WIDTHS = [16, 12, 15, 13, 12, 12, 12, 19, 22, 32];

/** Rows that no candle has. */
const LOST = "(MAX(COUNTA(Readings[Test]),COUNTA(Readings[Minutes]))-SUM(BurnTests[Rows]))";

/** Every look at every candle, hour by hour. The last rows are free. */
export function readings(): Sheet {
  const list = table(
    "Readings",
    HEADING,
    0,
    [
      { heading: "Test", look: "input", align: "center", choices: ["BurnTests", "Test"] },
      { heading: "Cycle", ...count },
      { heading: "Minutes", ...count },
      { heading: "Weight (g)", look: "input", format: FORMATS.weight, ...right },
      { heading: "Flame (mm)", ...measured },
      { heading: "Pool (mm)", ...measured },
      { heading: "Wax left (mm)", ...measured },
      { heading: "Glass temperature (C)", ...count },
      { heading: "Soot", look: "input" },
      { heading: "Remarks", look: "input" },
    ],
    [
      ...LOOKS.map(({ test, cycle, minutes, weight, flame, pool, left, glass, soot, remarks }) => [
        ...[test, cycle, minutes, weight, flame, pool, left, glass, soot, remarks],
      ]),
      ...Array.from({ length: FREE }, () => []),
    ],
  );
  return {
    name: "Readings",
    widths: WIDTHS,
    cells: [
      ...heading(
        "Readings",
        "Each hour of each cycle: flame, pool, glass. Before and after it the weight with the vessel; at its end the wax left and soot. What was not looked at stays blank. The rows of a candle stand together; Burn tests says what to fix in them.",
        WIDTHS.length,
      ),
      ...setting(
        2,
        "Cycle (min)",
        240,
        "How long a cycle burns, at most 240 with breaks of at least 60 (EN 15426). A candle's last one may be shorter.",
        WIDTHS.length,
        FORMATS.count,
      ),
      cell(
        3,
        0,
        {
          formula: `=IF(${LOST}=0,"",${LOST}&" of the rows name no test of the sheet Burn tests: they are left out.")`,
        },
        { look: "alert", across: WIDTHS.length },
      ),
      ...list.cells.map((one) => (one.look === "heading" ? { ...one, lines: HEADING_LINES } : one)),
    ],
    tables: [list.table],
    frozenRows: HEADING + 1,
    print: { paper: "a4", landscape: true, repeatRows: [HEADING, HEADING] },
  };
}
