import type { CellValue } from "../../sheet/sheet";
import { sameName } from "../sameName";
import { CHOICES, type WeightUnit } from "../settings";
import { potsIn } from "../tables/potsWords";
import { headingIn, type LogHeading, POTS, RUNS_LOG } from "./runsLog";

/** The runs log as it stands in the workbook. */
export interface LogTable {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

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

export function readLog(table: LogTable): Log {
  const rows = table.rows.map((cells) => rowOf(table, cells)).filter(({ lot, vessel }) => lot !== "" || vessel !== "");
  return { rows: standing(rows), lots: rows.map(({ lot }) => lot) };
}

/** The pots of a lot that are in the log; undefined where it is there and does not say which: then all are. */
export function loggedPots({ rows }: Log, lot: string): readonly string[] | undefined {
  const pots = rows.filter((row) => row.lot === lot).map((row) => row.pots);
  return pots.some((ids) => ids === undefined) ? undefined : pots.flatMap((ids) => ids ?? []);
}

function rowOf(table: LogTable, values: readonly CellValue[]): LoggedRow {
  const cells = Object.fromEntries(
    RUNS_LOG.columns.map((column) => [
      column.heading,
      values[table.headings.indexOf(headingIn(table, column))] ?? null,
    ]),
  ) as LoggedRow["cells"];
  const number = (heading: LogHeading) => {
    const value = cells[heading];
    return typeof value === "number" ? value : undefined;
  };
  const above0 = (heading: LogHeading) => ((number(heading) ?? 0) > 0 ? number(heading) : undefined);
  const text = (heading: LogHeading) => String(cells[heading] ?? "").trim();
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
