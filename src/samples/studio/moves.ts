import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { day, heading, table, type Value } from "../layout";
import { POURS, RECEIPTS } from "./moved";
import { allSaid, firstRow, isNoNumber, isUnknown, slipLine } from "./slips";

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

/** What no item takes: its name is not known, its figures are none, or nothing came in for what was paid. */
const LOST = [
  firstRow(
    "Moves",
    "Item",
    `(LEN(Moves[Item])+LEN(Moves[Change (g)])>0)*${isUnknown("Moves[Item]", "Items", "Item")}`,
    "no such item on the sheet Items, so nothing counts it.",
  ),
  firstRow("Moves", "Item", `(LEN(Moves[Item])>0)*(1-ISNUMBER(Moves[Change (g)]))`, "write Change as a number."),
  firstRow(
    "Moves",
    "Item",
    `${isNoNumber("Moves[Paid]")}+ISNUMBER(Moves[Paid])*(Moves[Paid]<=0)`,
    "write Paid as a number above 0, without the currency, or leave it blank.",
  ),
  firstRow(
    "Moves",
    "Item",
    `ISNUMBER(Moves[Change (g)])*ISNUMBER(Moves[Paid])*(Moves[Change (g)]<=0)`,
    "Paid stands beside nothing that came in.",
  ),
];

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
      slipLine(allSaid(LOST), 8),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", landscape: true, repeatRows: [3, 3] },
  };
}
