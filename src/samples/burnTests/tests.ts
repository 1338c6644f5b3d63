import type { Cell, Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { day, heading, table } from "../layout";
import { CHECK, FIRST_ROW, HIGHEST, HOURS, KEY, LOOK, PLACE, RATE, RESULT, ROWS, TO_FIX } from "./candleFormulas";
import { CANDLES, HEADING_LINES } from "./series";

const right = { align: "right" } as const;
const center = { align: "center" } as const;

const HEADING = 3;
/** Wide enough for letters that are wider than Excel's, and for a button in a heading. */
const WIDTHS = [8.5, 17, 11, 9, 14.1, 8, 14, 10.1, 9.1, 14, 9.1, 11.1, 12, 12, 41, 0, 0, 0, 0, 0, 0];
const SHOWN = WIDTHS.filter((width) => width > 0).length;

/** Lines that a candle's check takes: a flame that ends the test most. */
const LINES: Readonly<Record<string, number>> = { "W-27": 4, "W-21": 2 };
const USUAL_LINES = 3;

/** A heading that nobody sees asks for no room, and a check for as much as it has to say. */
function withRoom({ look, ...cell }: Cell): Cell {
  const candle = cell.column === SHOWN - 1 ? CANDLES[cell.row - HEADING - 1] : undefined;
  return {
    ...cell,
    ...(look && WIDTHS[cell.column] !== 0 && { look }),
    ...(look === "heading" && { lines: HEADING_LINES }),
    ...(candle && { lines: LINES[candle.wick] ?? USUAL_LINES }),
  };
}

/** The candles with what their readings come to. The last rows are free. */
export function tests(): Sheet {
  const list = table(
    "BurnTests",
    HEADING,
    0,
    [
      { heading: "Test", look: "input", ...center },
      { heading: "Vessel", look: "input" },
      { heading: "Inside width (mm)", look: "input", format: FORMATS.count, ...center },
      { heading: "Wick", look: "input", ...center },
      { heading: "Thickness (mm)", look: "input", format: FORMATS.length, ...center },
      { heading: "Wax", look: "input" },
      { heading: "Scent", look: "input" },
      { heading: "Load (% of wax)", look: "input", format: FORMATS.load, ...center },
      { heading: "Cure days", look: "input", format: FORMATS.count, ...center },
      { heading: "Burn on", look: "input", format: FORMATS.date, ...center },
      { heading: "Burn rate (g/h)", formula: RATE, format: FORMATS.rate, ...right },
      { heading: "Hours burnt", formula: HOURS, format: FORMATS.hours, ...right },
      { heading: "Highest flame (mm)", formula: HIGHEST, format: FORMATS.count, ...right },
      { heading: "Result", formula: RESULT, ...center },
      { heading: "Check", formula: CHECK, look: "alert" },
      { heading: "First row", formula: FIRST_ROW },
      { heading: "Rows", formula: ROWS },
      { heading: "Place", formula: PLACE },
      { heading: "To fix", formula: TO_FIX },
      { heading: "Key", formula: KEY },
      { heading: "To look at", formula: LOOK },
    ],
    [
      ...CANDLES.map(({ test, vessel, width, wick, thickness, burnOn }) => [
        ...[test, vessel, width, wick, thickness, "Wax", "Rain on slate", 0.06, 14, day(2026, ...burnOn)],
      ]),
      [],
      [],
    ],
  );
  return {
    name: "Burn tests",
    widths: WIDTHS,
    cells: [
      ...heading(
        "Burn tests",
        "A row for each candle; its readings stand on the sheet Readings. Rate: weight lost an hour over all its weighings. Check: what its readings show beyond what is published or common practice, empty where all was read and is within. Result: to look at is within the limits, with a pool before or behind the rule of thumb. A burn-test laboratory has the last word; nothing here certifies a candle.",
        SHOWN,
      ),
      ...list.cells.map(withRoom),
    ],
    tables: [list.table],
    frozenRows: HEADING + 1,
    print: { paper: "a4", landscape: true, repeatRows: [HEADING, HEADING] },
  };
}
