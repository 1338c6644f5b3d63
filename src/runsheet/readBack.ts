import type { CellValue } from "../sheet/sheet";

/** Candles of one kind in one pot, as planned and as poured. What is not written on the sheet is undefined. */
export interface PouredLine {
  readonly vessel: string;
  readonly count: number;
  readonly fill: number;
  readonly good: number | undefined;
  /** Weight of one candle's wax and scent, as weighed. */
  readonly weighed: number | undefined;
}

/** One pot, as planned and as weighed. */
export interface PouredPot {
  readonly scent: string;
  readonly wax: Weighed;
  readonly scentWeight: Weighed;
  readonly lines: readonly PouredLine[];
}

export interface Weighed {
  readonly planned: number;
  /** Undefined until every part of it is written down. */
  readonly actual: number | undefined;
}

export interface PouredRun {
  readonly lot: string;
  /** Spreadsheet serial of the day. */
  readonly date: number;
  /** Of its weights; empty when its head does not say. */
  readonly unit: string;
  readonly pots: readonly PouredPot[];
  /** What is written on the sheet and cannot be, by row. */
  readonly wrong: readonly string[];
}

/** Columns of a run sheet, from 0; see describeRun and potBlock. */
const [NAME, COUNT, FILL, PLANNED, ACTUAL, WEIGHED, , KEY] = [0, 1, 2, 3, 4, 5, 6, 7] as const;

/**
 * Reads a run sheet as it is now, by its column of keys: rows put in between, or blocks moved, change nothing.
 * Undefined when the cells are no run sheet.
 * @param rows the cells of the sheet from A1 on
 */
export function readBack(rows: readonly (readonly CellValue[])[]): PouredRun | undefined {
  const lot = /^Run sheet (\S+)$/.exec(String(rows[0]?.[NAME] ?? ""))?.[1];
  const date = rows.find((row) => row[NAME] === "Date")?.[COUNT];
  if (lot === undefined || typeof date !== "number") return undefined;
  const pots: { scent: string; wax: CellValue[][]; scentRows: CellValue[][]; lines: PouredLine[] }[] = [];
  const wrong: string[] = [];
  for (const [r, row] of rows.entries()) {
    const what = /^\d+ (\w+)$/.exec(String(row[KEY] ?? ""))?.[1];
    if (what === "pot") {
      const scent = String(row[NAME]).replace(/: pot \d+ of \d+$/, "");
      pots.push({ scent, wax: [], scentRows: [], lines: [] });
    }
    const pot = pots.at(-1);
    if (!pot) continue;
    const check = (column: number, name: string, most = Number.POSITIVE_INFINITY) => {
      const cell = row[column] ?? null;
      if (cell === null || cell === "" || (typeof cell === "number" && cell >= 0 && cell <= most)) return;
      const shown = typeof cell === "object" ? cell.error : String(cell);
      const limit = most < Number.POSITIVE_INFINITY ? `from 0 to ${most}` : "of 0 or more";
      wrong.push(`Row ${r + 1}, ${name}: "${shown.slice(0, 40)}" is no number ${limit}; mend it or clear it`);
    };
    if (what === "wax" || what === "scent" || what === "additive") check(ACTUAL, "actual weight");
    if (what === "vessel") {
      check(ACTUAL, "good ones", numberIn(row[COUNT]) ?? 0);
      check(WEIGHED, "weight of one");
    }
    if (what === "wax") pot.wax.push([...row]);
    if (what === "scent") pot.scentRows.push([...row]);
    if (what === "vessel") {
      pot.lines.push({
        vessel: String(row[NAME] ?? ""),
        count: numberIn(row[COUNT]) ?? 0,
        fill: numberIn(row[FILL]) ?? 0,
        good: numberIn(row[ACTUAL]),
        weighed: numberIn(row[WEIGHED]),
      });
    }
  }
  return {
    lot,
    date,
    unit: rows.map((row) => /^Scale division \((\w+)\)$/.exec(String(row[NAME] ?? ""))?.[1]).find(Boolean) ?? "",
    pots: pots.map(({ scent, wax, scentRows, lines }) => ({
      scent,
      wax: weighedOf(wax),
      scentWeight: weighedOf(scentRows),
      lines,
    })),
    wrong,
  };
}

/** Whether anything was written on the sheet after the pour. */
export function isPoured({ pots }: PouredRun): boolean {
  return pots.some(
    ({ wax, scentWeight, lines }) =>
      wax.actual !== undefined ||
      (scentWeight.actual !== undefined && scentWeight.planned > 0) ||
      lines.some(({ good, weighed }) => good !== undefined || weighed !== undefined),
  );
}

function numberIn(cell: CellValue | undefined): number | undefined {
  return typeof cell === "number" ? cell : undefined;
}

function weighedOf(rows: readonly (readonly CellValue[])[]): Weighed {
  const add = (column: number) =>
    rows.reduce<number | undefined>((total, row) => {
      const value = numberIn(row[column]);
      return total === undefined || value === undefined ? undefined : total + value;
    }, 0);
  return { planned: add(PLANNED) ?? 0, actual: add(ACTUAL) };
}
