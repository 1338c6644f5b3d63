import { plain } from "../core/check/plain";
import { waxFactor } from "../core/fill/waxFactor";
import { waxFactorSpread } from "../core/fill/waxFactorSpread";
import { loadFrom } from "../core/scent/loadFrom";
import { sum } from "../core/statistics/sum";
import type { Cell, CellValue, Content, Sheet } from "../sheet/sheet";
import { besideWater, isImpossible, isLikely } from "./likelyWeight";
import type { PouredRun } from "./readBack";
import { type KnownVessels, waterIn } from "./readVessels";
import { sameName } from "./tableReader";

/** The table that keeps what was really poured: rows are only ever added. */
export const RUNS_LOG = {
  table: "RunsLog",
  sheet: "Runs log",
  columns: [
    { heading: "Lot", width: 14 },
    { heading: "Date", width: 12, format: "yyyy-mm-dd" },
    { heading: "Scent", width: 20 },
    { heading: "Vessel", width: 20 },
    { heading: "Candles", width: 10, format: "0" },
    { heading: "Good", width: 8, format: "0" },
    { heading: "Yield", width: 8, format: "0%" },
    { heading: "Wax planned", width: 12, format: "0.0##" },
    { heading: "Wax actual", width: 12, format: "0.0##" },
    { heading: "Scent planned", width: 12, format: "0.0##" },
    { heading: "Scent actual", width: 12, format: "0.0##" },
    { heading: "Real load of wax", width: 12, format: "0.00%" },
    { heading: "Weighed each", width: 12, format: "0.0##" },
    { heading: "Water weight", width: 12, format: "0.0##" },
    { heading: "Wax factor shown", width: 12, format: "0.0000" },
    { heading: "Weights in", width: 10 },
    { heading: "Remarks", width: 40 },
  ],
} as const;

/**
 * The rows a poured run adds to the log: one for each vessel and scent. A pot's wax and scent are shared out among
 * its vessels as they were poured, so that the column adds up to what was weighed. What was not written stays blank.
 */
export function logRows(run: PouredRun, vessels: KnownVessels): (Content | null)[][] {
  interface Group {
    scent: string;
    vessel: string;
    count: number;
    good: { good: number; of: number }[];
    weighed: number[];
    remarks: Set<string>;
    weights: { wax: number; waxActual?: number | undefined; scent: number; scentActual?: number | undefined }[];
  }
  const groups = new Map<string, Group>();
  for (const pot of run.pots) {
    const poured = sum(pot.lines.map(({ count, fill }) => count * fill));
    for (const { vessel, count, fill, good, weighed } of pot.lines) {
      const key = JSON.stringify([sameName(pot.scent), sameName(vessel)]);
      const group: Group = groups.get(key) ?? {
        scent: pot.scent,
        vessel,
        count: 0,
        good: [],
        weighed: [],
        remarks: new Set(),
        weights: [],
      };
      groups.set(key, group);
      if (pot.remark !== "") group.remarks.add(pot.remark);
      const share = poured > 0 ? (count * fill) / poured : 0;
      const part = (weight: number | undefined) => (weight === undefined ? undefined : weight * share);
      group.count += count;
      if (good !== undefined) group.good.push({ good, of: count });
      if (weighed !== undefined) group.weighed.push(weighed);
      group.weights.push({
        wax: pot.wax.planned * share,
        waxActual: part(pot.wax.actual),
        scent: pot.scentWeight.planned * share,
        scentActual: part(pot.scentWeight.actual),
      });
    }
  }
  return [...groups.values()].map(({ scent, vessel, count, good, weighed, remarks, weights }) => {
    const all = (values: (number | undefined)[]) => (values.includes(undefined) ? undefined : sum(values as number[]));
    const [wax, waxActual, scentPlanned, scentActual] = [
      all(weights.map((one) => one.wax)),
      all(weights.map((one) => one.waxActual)),
      all(weights.map((one) => one.scent)),
      all(weights.map((one) => one.scentActual)),
    ];
    const goodCount = good.length > 0 ? sum(good.map((one) => one.good)) : undefined;
    // A pot whose candles were not counted is no pot of rejects: the yield waits until all are.
    const isCounted = sum(good.map((one) => one.of)) === count;
    const each = weighed.length > 0 ? sum(weighed) / weighed.length : undefined;
    const water = waterIn(vessels.get(sameName(vessel)), run.unit);
    const load =
      waxActual !== undefined && scentActual !== undefined && waxActual > 0
        ? loadFrom(waxActual, scentActual)
        : undefined;
    const numbers = [
      count,
      goodCount,
      goodCount !== undefined && isCounted && count > 0 ? goodCount / count : undefined,
      wax,
      waxActual,
      scentPlanned,
      scentActual,
      load,
      each,
      water,
      each !== undefined && water !== undefined ? each / water : undefined,
    ];
    return [
      { text: run.lot },
      { number: run.date },
      { text: scent },
      { text: vessel },
      ...numbers.map((number) => (number === undefined ? null : { number })),
      { text: run.unit },
      remarks.size === 0 ? null : { text: [...remarks].join(" ") },
    ];
  });
}

/** Weights of one candle that its vessel cannot hold. */
export function heavyCandles(run: PouredRun, vessels: KnownVessels): string[] {
  return candles(run, vessels).flatMap(({ row, vessel, weighed, water }) =>
    isImpossible(weighed, water)
      ? [`Row ${row}: one ${vessel} is written to weigh ${besideWater(weighed, water, run.unit)}; check both`]
      : [],
  );
}

/**
 * What is written on a poured sheet and may be a slip: to be asked about before it is logged, for a lot is logged
 * once. What is missing of a pot, loads over a limit, actual weights far from the plan, and candles far from what
 * their vessel's water lets expect.
 */
export function doubts(run: PouredRun, vessels: KnownVessels): string[] {
  const pots = run.pots.flatMap(({ title, parts, lines, remark }) => {
    const lacks = [
      ...missing(
        parts.filter(({ planned }) => planned > 0).map(({ actual }) => actual),
        "actual weight",
      ),
      ...missing(
        lines.map(({ good }) => good),
        "count of good ones",
      ),
    ];
    return [
      ...(lacks.length > 0 ? [`${title}: ${lacks.join(", ")}`] : []),
      ...(remark === "" ? [] : [`${title}, as weighed: ${remark}`]),
    ];
  });
  const far = run.pots.flatMap(({ parts }) =>
    parts.flatMap(({ row, label, planned, actual }) =>
      actual !== undefined && (actual > 2 * planned || actual < planned / 2)
        ? [`Row ${row}: ${label} is written as ${plain(actual)} and was planned as ${plain(planned)}`]
        : [],
    ),
  );
  const odd = candles(run, vessels).flatMap(({ row, vessel, weighed, water }) =>
    isLikely(weighed, water)
      ? []
      : [`Row ${row}: one ${vessel} is written to weigh ${besideWater(weighed, water, run.unit)}`],
  );
  return [...pots, ...far, ...odd];
}

/** `no actual weight`, or `2 of 3 without actual weight`; nothing where each is written. */
function missing(values: readonly (number | undefined)[], what: string): string[] {
  const lacking = values.filter((value) => value === undefined).length;
  if (lacking === 0) return [];
  return [lacking === values.length ? `no ${what}` : `${lacking} of ${values.length} without ${what}`];
}

/** The candles that were weighed and whose vessel's water is known, in the unit of the run. */
function candles(
  run: PouredRun,
  vessels: KnownVessels,
): { row: number; vessel: string; weighed: number; water: number }[] {
  return run.pots.flatMap(({ lines }) =>
    lines.flatMap(({ row, vessel, weighed }) => {
      const water = waterIn(vessels.get(sameName(vessel)), run.unit);
      return weighed === undefined || water === undefined ? [] : [{ row, vessel, weighed, water }];
    }),
  );
}

/** The log with its first rows, on a sheet of its own. */
export function logSheet(rows: readonly (readonly (Content | null)[])[]): Sheet {
  const { table, sheet, columns } = RUNS_LOG;
  const cells: Cell[] = columns.map(({ heading }, column) => ({
    row: 0,
    column,
    content: { text: heading },
    look: "heading",
  }));
  for (const [r, row] of rows.entries()) {
    for (const [column, content] of row.entries()) {
      const format = (columns[column] as { format?: string }).format;
      cells.push({ row: r + 1, column, ...(format && { format }), ...(content && { content }) });
    }
  }
  return {
    name: sheet,
    widths: columns.map(({ width }) => width),
    cells,
    tables: [{ name: table, row: 0, column: 0, headings: columns.map(({ heading }) => heading), rows: rows.length }],
    frozenRows: 1,
  };
}

/** The lots that are in the log. */
export function loggedLots(log: {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}): string[] {
  const column = log.headings.indexOf(RUNS_LOG.columns[0].heading);
  return log.rows.map((row) => String(row[column] ?? ""));
}

/** A factor that the log suggests for a vessel; the spread is half the width of its 95 % interval. */
export interface NewFactor {
  readonly vessel: string;
  /** The row of the vessel table, from 0 below the heading. */
  readonly row: number;
  readonly old: number | undefined;
  readonly factor: number;
  readonly spread: number | undefined;
  readonly pours: number;
}

/** The factors that all logged pours of the known vessels show together, but for those that no wax makes. */
export function newFactors(
  log: { readonly headings: readonly string[]; readonly rows: readonly (readonly CellValue[])[] },
  vessels: KnownVessels,
): NewFactor[] {
  const column = (heading: string) => log.headings.indexOf(heading);
  const [vesselAt, weighedAt, waterAt] = [column("Vessel"), column("Weighed each"), column("Water weight")];
  return [...vessels].flatMap(([key, { vessel, row, factor: old }]) => {
    const pours = log.rows.flatMap((cells) => {
      const [name, poured, water] = [cells[vesselAt], cells[weighedAt], cells[waterAt]];
      if (sameName(String(name ?? "")) !== key || typeof poured !== "number" || typeof water !== "number") return [];
      return water > 0 && isLikely(poured, water) ? [{ poured, water }] : [];
    });
    if (pours.length === 0) return [];
    const factor = waxFactor(pours);
    const spread = pours.length > 1 ? waxFactorSpread(pours) : undefined;
    return [{ vessel, row, old, factor, spread, pours: pours.length }];
  });
}
