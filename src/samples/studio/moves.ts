import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { day, heading, table, type Value } from "../layout";
import { POURS, RECEIPTS } from "./moved";

const right = { align: "right" } as const;
const date = { look: "input", format: FORMATS.date, align: "center" } as const;

/** By day: what came in before what was poured. */
const rows = (): Value[][] =>
  [
    ...RECEIPTS.map(({ on, rows }) => ({
      on,
      rows: rows.map(([item, lot, change, paid, bestBefore, note]): Value[] => [
        ...[day(...on), item, lot, change, paid, bestBefore ? day(...bestBefore) : null, null, note ?? null],
      ]),
    })),
    ...POURS.map(({ on, run, note, rows }) => ({
      on,
      rows: rows.map(([item, lot, used]): Value[] => [day(...on), item, lot, -used, null, null, run, note]),
    })),
  ]
    .sort((a, b) => day(...a.on) - day(...b.on))
    .flatMap((one) => one.rows);

/** The stock ledger of an invented autumn, lot by lot. The last rows are free. */
export function moves(): Sheet {
  const list = table(
    "Moves",
    3,
    0,
    [
      { heading: "Date", ...date },
      { heading: "Item", look: "input", choices: ["Items", "Item"] },
      { heading: "Lot", look: "input" },
      { heading: "Change (g)", look: "input", format: FORMATS.change, ...right },
      { heading: "Paid", look: "input", format: FORMATS.money, ...right },
      { heading: "Best before", ...date },
      { heading: "Run", look: "input" },
      { heading: "Note", look: "input" },
    ],
    [...rows(), [], []],
  );
  return {
    name: "Moves",
    widths: [12, 22, 10, 12, 12, 13, 14, 32],
    cells: [
      ...heading(
        "Moves",
        "What came in (+) and what went out (-), lot by lot: grams, or pieces. Rows are only added; a slip is put right by one more row. Log this pour and Receiving in the pane add theirs here.",
        8,
      ),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", landscape: true, repeatRows: [3, 3] },
  };
}
