import { atLeastZero } from "../../core/check/atLeastZero";
import { asWarning, type Problem } from "../problem";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import type { ByUse } from "./byUse";
import { ITEM } from "./commonFields";
import type { Field } from "./headings/field";
import { has, type Question } from "./questions";
import type { RowReader } from "./rowReader";
import { MONEY } from "./starterLooks";
import type { TableReader } from "./tableReader";
import { type Starter, type StarterColumn, tableType } from "./tableType";
import { AS_TEXT } from "./takenForDay";

const FIELDS = {
  date: {
    name: "Date",
    reads: "date",
    aliases: ["date of move", "date received", "day", "when", "purchase date", "date bought"],
    not: ["best", "before", "expiry", "exp", "expiration", "expires", "use", "due", "made", "paid", "invoice", "order"],
  },
  item: ITEM,
  lot: {
    name: "Lot",
    reads: "words",
    aliases: [
      ...["lot number", "lot code", "batch number", "batch code", "supplier lot", "supplier batch", "item lot"],
      ...["lot used", "batch id", "lot id"],
    ],
    alone: ["batch", "charge", "lots"],
    not: ["run", "candle", "pour", "date", "size"],
  },
  change: {
    name: "Change",
    reads: "amount",
    aliases: ["quantity in out", "in out", "quantity change", "change in stock", "stock change", "movement", "moved"],
    alone: ["quantity", "amount", "weight", "quantity used or received", "quantity moved", "change each"],
    not: ["item", "price", "balance"],
  },
  paid: {
    name: "Paid",
    reads: "money",
    aliases: ["amount paid", "total paid", "price paid", "total price", "total cost", "cost total", "invoice total"],
    alone: ["total", "cost of purchase", "purchase cost", "spent"],
    not: ["unit", "each", "pack", "per", "date", "by"],
  },
  bestBefore: {
    name: "Best before",
    reads: "date",
    aliases: [
      ...["best before date", "best before end", "use by", "use by date", "best by", "best by date", "expiry date"],
      ...[
        "expiry",
        "expiration date",
        "expiration",
        "expires",
        "expires on",
        "exp date",
        "use before",
        "shelf life until",
      ],
    ],
    alone: ["bb", "bbd", "bbe", "exp", "mhd"],
  },
  run: {
    name: "Run",
    reads: "words",
    aliases: ["run lot", "run number", "run sheet", "candle lot", "candle batch", "lot of run", "used in", "for run"],
    alone: ["pour", "pour number", "batch made", "made into"],
  },
  note: { name: "Note", reads: "words", aliases: ["notes", "remark", "remarks", "comment", "comments", "reason"] },
} satisfies Readonly<Record<string, Field>>;
type MoveField = keyof typeof FIELDS;

const ASK_DIRECTION: Question = {
  isAsked: (column) =>
    has(column, ["in", "out", "direction", "action", "transaction", "type"]) &&
    !has(column, ["item", "wax", "scent", "vessel"]),
  text: () =>
    "is not read: a change counts by its sign, + what was received and - what was used. Check the signs, then leave the column out",
};

export const MOVES = tableType({
  name: "Moves",
  purpose:
    "What came in and what went out, lot by lot: the stock ledger. A row for each lot received (+) or used (-), in one column of changes. Rows are only added: a slip is put right by one more row. What an item or a lot has left is the sum of its changes. Weights in the unit of the heading, vessels and components by number. Paid is the money for the whole row, delivery included.",
  gives: "Moves: lots, what is left of them and what they cost.",
  fields: FIELDS,
  needs: [["date"], ["item"], ["lot"], ["change"]],
  unusable: "warning",
  asks: [ASK_DIRECTION],
  starter,
  read: readMoves,
  doubts,
});

/** A row of the ledger: so much of a lot came in, or went out. */
export interface Move {
  /** Its place below the heading, from 0. */
  readonly row: number;
  /** A day as spreadsheets count them; undefined where it cannot be read, which is said with the item. */
  readonly date: number | undefined;
  readonly item: string;
  /** Empty where none is written. */
  readonly lot: string;
  /** Above 0 received, below 0 used. By number it is as it stands in the table, by weight in the unit of the reader. */
  readonly change: ByUse<number>;
  /** Money for all of it. */
  readonly paid: number | undefined;
  readonly bestBefore: number | undefined;
  /** The lot of the run that it went into; empty where it went elsewhere. */
  readonly run: string;
  readonly note: string;
}

export interface Moves {
  /** In the order of the table, which need not be that of the days. */
  readonly rows: readonly Move[];
  /** The unit of its weights, and how many of the reader's unit one of it is. */
  readonly unit: WeightUnit;
  readonly ratio: number;
  /** What is wrong and doubtful with the rows of an item: with an error its changes do not add up to what is there. */
  readonly said: ReadonlyMap<string, readonly Problem[]>;
  /** What is wrong or doubtful for each item that is weighed, and for each that is counted. */
  readonly saidOfAll: ByUse<readonly Problem[]>;
}

function readMoves(table: TableReader<MoveField>): Moves {
  const { ratio = 1, problem } = table.scale("change");
  const all = problem ? [problem] : [];
  const said = new Map<string, Problem[]>();
  const rows = table.rows.flatMap((reader) => {
    const item = reader.text("item");
    if (item === "") return [];
    const { move, problems } = readMove(reader, item, ratio);
    if (problems.length > 0) {
      const key = sameName(item);
      said.set(key, [...(said.get(key) ?? []), ...problems]);
    }
    return move ? [move] : [];
  });
  // A volume or a length is no number of pieces either; a unit that is not known says nothing of pieces.
  const ofCounts = all.filter(({ severity }) => severity === "error");
  const unit = table.unitOf("change");
  return {
    rows,
    unit: unit && "weight" in unit ? unit.weight : table.unit,
    ratio,
    said,
    saidOfAll: { weight: all, count: ofCounts },
  };
}

function readMove(reader: RowReader<MoveField>, item: string, ratio: number): { move?: Move; problems: Problem[] } {
  if (reader.isBlank("change")) {
    reader.error("change", `the cell is blank; write how much of ${item} came in (+) or went out (-)`);
  }
  const change = reader.number("change");
  if (reader.isBlank("date")) reader.error("date", "the cell is blank; write the day, such as 2026-11-26");
  const date = reader.date("date");
  const lot = reader.text("lot");
  const errors = reader.problems.length;
  const typed = reader.number("paid");
  const paid = typed === undefined ? undefined : reader.check("paid", () => atLeastZero("paid", typed));
  const bestBefore = reader.date("bestBefore");
  const [run, note] = [reader.text("run"), reader.text("note")];
  // What is left of a lot does not hang on these.
  const problems = reader.problems.map((one, i) => (i < errors ? one : asWarning(one)));
  if (paid !== undefined && change !== undefined && change < 0) {
    problems.push(reader.warning("paid", `${item}: what was paid counts beside what came in, and not beside a use`));
  }
  if (change === undefined) return { problems };
  const isReceipt = change > 0;
  return {
    move: {
      row: reader.row,
      date,
      item,
      lot,
      change: { count: change, weight: change * ratio },
      paid: isReceipt ? paid : undefined,
      bestBefore,
      run,
      note,
    },
    problems,
  };
}

/** Lots that the spreadsheet may have taken for a day, and rows that do not say of what they are. */
function doubts(table: TableReader<MoveField>): Problem[] {
  return table.rows.flatMap((reader) => [...dayForLot(reader), ...itemless(table, reader)]);
}

function dayForLot(reader: RowReader<MoveField>): Problem[] {
  if (reader.takenForDay("lot") === undefined) return [];
  // The same words for all rows: they are said once.
  const text = `Lot: a number that is a day of the calendar. Was the lot written like 11-26, and taken for a day? Then, and where it is a number, ${AS_TEXT}`;
  return [reader.warning("lot", text)];
}

/** A row that says how much, or of which lot, and not of what: it counts for no item. */
function itemless(table: TableReader<MoveField>, reader: RowReader<MoveField>): Problem[] {
  if (!reader.isBlank("item") || (reader.isBlank("change") && reader.isBlank("lot"))) return [];
  const text = `${table.nameOf("item")}: the cell is blank, so the row counts for nothing; write what ${reader.text("lot") ? `lot ${reader.text("lot")} is of` : "came in or went out"}`;
  return [reader.warning("item", text)];
}

/** The columns of the ledger, for those who begin one and those who add to it. */
export const moveColumns = (unit: WeightUnit) =>
  [
    { field: "date", heading: "Date", width: 12, format: "yyyy-mm-dd" },
    { field: "item", heading: "Item", width: 24 },
    { field: "lot", heading: "Lot", width: 16, format: "@" },
    { field: "change", heading: `Change (${unit})`, width: 14, format: "+0.0##;-0.0##;0" },
    { field: "paid", heading: "Paid", ...MONEY },
    { field: "bestBefore", heading: "Best before", width: 12, format: "yyyy-mm-dd" },
    { field: "run", heading: "Run", width: 14, format: "@" },
    { field: "note", heading: "Note", width: 32 },
  ] as const satisfies readonly (StarterColumn & { readonly field: MoveField })[];

function starter(unit: WeightUnit): Starter {
  return {
    note: `What came in (+) and what went out (-), lot by lot, weights in ${unit}, vessels and components by number. Begin with what is on the shelf today, a row for each lot. Rows are only added: a slip is put right by one more row.`,
    columns: moveColumns(unit).map(({ field, ...column }) =>
      field === "item" ? { ...column, choices: ["Items", "Item"] as const } : column,
    ),
  };
}
