import { isKept } from "../../core/check/keptNumber";
import type { CellValue } from "../../sheet/sheet";
import { sameName } from "../sameName";
import { CHOICES, type WeightUnit } from "../settings";
import type { Field } from "./headings/field";
import { potsIn } from "./potsWords";
import type { TableReader } from "./tableReader";
import { type Starter, tableType } from "./tableType";

/** The column that says which pots of a run a row is of. */
export const POTS = "Pots";

/** The log as it is begun. Its columns have had other words before, and more have come to it later. */
export const LOG_COLUMNS = [
  { field: "lot", heading: "Lot", reads: "words", also: ["run lot", "candle lot"], width: 14 },
  { field: "date", heading: "Date", reads: "date", also: ["date poured"], width: 12, format: "yyyy-mm-dd" },
  { field: "scent", heading: "Scent", reads: "words", width: 20 },
  { field: "vessel", heading: "Vessel", reads: "words", width: 20 },
  { field: "candles", heading: "Candles", reads: "count", also: ["candles poured"], width: 10, format: "0" },
  { field: "good", heading: "Good", reads: "count", also: ["good candles"], width: 8, format: "0" },
  { field: "yield", heading: "Yield", reads: "share", width: 8, format: "0%" },
  { field: "waxPlanned", heading: "Wax planned", reads: "weight", width: 12, format: "0.0##" },
  { field: "waxActual", heading: "Wax actual", reads: "weight", width: 12, format: "0.0##" },
  { field: "scentPlanned", heading: "Scent planned", reads: "weight", width: 12, format: "0.0##" },
  { field: "scentActual", heading: "Scent actual", reads: "weight", width: 12, format: "0.0##" },
  {
    field: "load",
    heading: "Load as weighed (of wax)",
    reads: "share",
    also: ["real load of wax"],
    width: 12,
    format: "0.00%",
  },
  { field: "weighed", heading: "Weighed each", reads: "weight", width: 12, format: "0.0##" },
  { field: "water", heading: "Water weight", reads: "weight", width: 12, format: "0.0##" },
  { field: "factor", heading: "Wax factor shown", reads: "factor", width: 12, format: "0.0000" },
  { field: "unit", heading: "Weights in", reads: "words", width: 10 },
  { field: "remarks", heading: "Remarks", reads: "words", width: 40 },
  // A log that was begun without these goes on without them.
  { field: "notes", heading: "Notes", reads: "words", width: 40, isLater: true },
  { field: "madeBy", heading: "Made by", reads: "words", also: ["poured by"], width: 14, isLater: true },
  { field: "cured", heading: "Cured until", reads: "date", width: 12, format: "yyyy-mm-dd", isLater: true },
  { field: "loss", heading: "Loss shown", reads: "share", width: 10, format: "0.0%", isLater: true },
  { field: "pots", heading: POTS, reads: "words", width: 30, isLater: true },
] as const;

export type LogField = (typeof LOG_COLUMNS)[number]["field"];
export type LogHeading = (typeof LOG_COLUMNS)[number]["heading"];

const FIELDS = Object.fromEntries(
  LOG_COLUMNS.map(({ field, heading, reads, ...more }): [LogField, Field] => [
    field,
    { name: heading, reads, aliases: "also" in more ? more.also : [] },
  ]),
) as Readonly<Record<LogField, Field>>;

/** The table that keeps what was really poured: rows are only ever added. */
export const RUNS_LOG = tableType({
  name: "Runs log",
  table: "RunsLog",
  purpose:
    "What was poured and what came of it: logging a pour adds a row for each vessel, scent and load of a run, with the lot of the run. Which lots of wax, oil and all else went into it, the table of moves says. From the log come the wax factors, the loss and the rejects that your pours show, and the candles of a recall. Rows are only added: a correction takes back the row that is wrong and writes it anew.",
  gives: "Runs log: what was poured, and what that shows of wax factors, loss and rejects.",
  fields: FIELDS,
  needs: [["lot"], ["vessel"]],
  unusable: "warning",
  asks: [],
  isKnownBy: (headings) => TELLING.every((heading) => headings.includes(heading)),
  starter,
  read: readRuns,
});

/** Headings that no other table has together: by them a log is known that was renamed. */
const TELLING = ["Lot", "Scent", "Vessel", "Good", "Wax planned", "Weighed each", "Water weight"] as const;

/** A row of the log: the candles of one vessel and scent, from some pots of a run. */
export interface LoggedRow {
  readonly lot: string;
  readonly scent: string;
  readonly vessel: string;
  /** The pots it is of; undefined where the log does not say: then it is of all. */
  readonly pots: readonly string[] | undefined;
  readonly candles: number | undefined;
  /** The mean of the candles that were weighed for it. */
  readonly weighed: number | undefined;
  readonly water: number | undefined;
  /** Wax and scent planned for one candle. */
  readonly planned: number | undefined;
  readonly loss: number | undefined;
  readonly unit: WeightUnit | undefined;
  /** Its cells by the headings of today. */
  readonly cells: Readonly<Partial<Record<LogHeading, CellValue>>>;
}

/** The log, read once. */
export interface Log {
  /** The rows that hold: without those that a correction took back, and without what took them back. */
  readonly rows: readonly LoggedRow[];
  /** The lots of all rows. */
  readonly lots: readonly string[];
}

export const NO_LOG: Log = { rows: [], lots: [] };

function readRuns(table: TableReader<LogField>): Log {
  const rows = table.rows.map((_, row) => rowOf(table, row)).filter(({ lot, vessel }) => lot !== "" || vessel !== "");
  return { rows: standing(rows), lots: rows.map(({ lot }) => lot) };
}

function rowOf(table: TableReader<LogField>, row: number): LoggedRow {
  const cells = Object.fromEntries(
    LOG_COLUMNS.map(({ field, heading }) => [heading, table.cell(row, field)]),
  ) as LoggedRow["cells"];
  const number = (heading: LogHeading) => {
    const value = cells[heading];
    return typeof value === "number" && isKept(value) ? value : undefined;
  };
  const above0 = (heading: LogHeading) => ((number(heading) ?? 0) > 0 ? number(heading) : undefined);
  const text = (heading: LogHeading) => {
    const value = cells[heading] ?? "";
    // An error names nothing.
    return typeof value === "object" ? "" : String(value).trim();
  };
  const [wax, candles] = [number("Wax planned"), number("Candles")];
  return {
    lot: text("Lot"),
    scent: text("Scent"),
    vessel: text("Vessel"),
    pots: text(POTS) === "" ? undefined : potsIn(text(POTS)),
    candles,
    weighed: above0("Weighed each"),
    water: above0("Water weight"),
    planned: wax !== undefined && candles ? (wax + (number("Scent planned") ?? 0)) / candles : undefined,
    loss: number("Loss shown"),
    unit: CHOICES.unit.find((unit) => unit === cells["Weights in"]),
    cells,
  };
}

/** The rows that are not taken back: one with fewer than no candles takes back the one that it is the reverse of. */
function standing(rows: readonly LoggedRow[]): LoggedRow[] {
  const isReverse = ({ candles }: LoggedRow) => candles !== undefined && candles < 0;
  const keyOf = ({ lot, scent, vessel, pots, candles, cells }: LoggedRow) =>
    JSON.stringify([lot, sameName(scent), sameName(vessel), pots ?? null, Math.abs(candles ?? 0), weightOf(cells)]);
  const taken = rows.filter(isReverse).map(keyOf);
  // Of rows that are alike the first one is taken back.
  return rows.filter((row) => {
    if (isReverse(row)) return false;
    const at = taken.indexOf(keyOf(row));
    if (at !== -1) taken.splice(at, 1);
    return at === -1;
  });
}

const weightOf = (cells: LoggedRow["cells"]): number[] =>
  (["Wax actual", "Scent actual", "Good"] as const).map((heading) => {
    const value = cells[heading];
    return typeof value === "number" ? Math.abs(Number(value.toPrecision(9))) : 0;
  });

function starter(): Starter {
  return {
    note: "What was poured and what came of it. Log this pour, in the pane, adds the rows; it begins this table by itself where there is none.",
    columns: LOG_COLUMNS,
  };
}
