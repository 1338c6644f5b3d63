import { loadFrom } from "../../core/scent/loadFrom";
import { sum } from "../../core/statistics/sum";
import type { Cell, Content, Sheet } from "../../sheet/sheet";
import { formatWeight, isWaxFactor, POURED } from "../likelyWeight";
import { sameName } from "../sameName";
import type { Vessels } from "../tables/vessels";
import { formatMass, massCheck } from "./massCheck";
import type { LogTable } from "./newFactors";
import type { PouredPot, PouredRun } from "./readBack";

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
    { heading: "Load as weighed (of wax)", before: "Real load of wax", width: 12, format: "0.00%" },
    { heading: "Weighed each", width: 12, format: "0.0##" },
    { heading: "Water weight", width: 12, format: "0.0##" },
    { heading: "Wax factor shown", width: 12, format: "0.0000" },
    { heading: "Weights in", width: 10 },
    { heading: "Remarks", width: 40 },
  ],
} as const;

/** Candles of one vessel and scent at one load, gathered from their pots. */
interface Group {
  readonly scent: string;
  readonly load: string;
  readonly vessel: string;
  count: number;
  readonly good: { good: number; of: number }[];
  readonly weighed: number[];
  readonly pots: PouredPot[];
  readonly weights: { wax: number; waxActual?: number | undefined; scent: number; scentActual?: number | undefined }[];
}

/**
 * The rows a poured run adds to the log: one for each vessel, scent and load. A pot's wax and scent are shared out
 * among its vessels as they were poured, so that the column adds up to what was weighed. What was not written stays
 * blank.
 */
export function logRows(run: PouredRun, vessels: Vessels): (Content | null)[][] {
  const groups = groupsOf(run);
  return groups.map((group) => {
    const { scent, vessel, count, good, weighed, weights } = group;
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
    const water = vessels.get(sameName(vessel))?.water;
    // A candle weighed with its vessel must become no factor, nor hide among others: it is left out, and that is said.
    const isFit = (weight: number) => water === undefined || isWaxFactor(weight / water);
    const fit = weighed.filter(isFit);
    const unfit = weighed.filter((weight) => !isFit(weight));
    const each = mean(fit.length > 0 ? fit : weighed);
    // More scent than wax is a slip that was logged all the same: it shows no load.
    const isLoad = waxActual !== undefined && scentActual !== undefined && scentActual < waxActual;
    const numbers = [
      count,
      goodCount,
      goodCount !== undefined && isCounted && count > 0 ? goodCount / count : undefined,
      wax,
      waxActual,
      scentPlanned,
      scentActual,
      isLoad ? loadFrom(waxActual, scentActual) : undefined,
      each,
      water,
      water !== undefined && fit.length > 0 && each !== undefined ? each / water : undefined,
    ];
    const remarks = [
      ...(groups.some((one) => isSameScent(one, group) && one.load !== group.load)
        ? [`Planned at ${group.load}.`]
        : []),
      ...new Set(group.pots.map(({ remark }) => remark).filter((remark) => remark !== "")),
      ...massRemark(group.pots, run),
      ...unfit.map(
        (weight) =>
          `Left out of the wax factor: one of ${formatWeight(weight, run.unit)}, not within ${POURED.least} to ${POURED.most} of its water.`,
      ),
    ];
    return [
      { text: run.lot },
      { number: run.date },
      { text: scent },
      { text: vessel },
      ...numbers.map((number) => (number === undefined ? null : { number })),
      { text: run.unit },
      remarks.length === 0 ? null : { text: remarks.join(" ") },
    ];
  });
}

const mean = (values: readonly number[]): number | undefined =>
  values.length > 0 ? sum(values) / values.length : undefined;

function groupsOf(run: PouredRun): Group[] {
  const groups = new Map<string, Group>();
  for (const pot of run.pots) {
    const { scent, load } = pot;
    const poured = sum(pot.lines.map(({ count, fill }) => count * fill));
    for (const { vessel, count, fill, good, weighed } of pot.lines) {
      const key = JSON.stringify([sameName(scent), load, sameName(vessel)]);
      const group: Group = groups.get(key) ?? {
        scent,
        load,
        vessel,
        count: 0,
        good: [],
        weighed: [],
        pots: [],
        weights: [],
      };
      groups.set(key, group);
      if (!group.pots.includes(pot)) group.pots.push(pot);
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
  return [...groups.values()];
}

const isSameScent = (a: Group, b: Group): boolean => sameName(a.scent) === sameName(b.scent);

/** What became of the wax of a row's pots, as far as candles of theirs were weighed. */
function massRemark(pots: readonly PouredPot[], { division, unit }: PouredRun): string[] {
  const weighed = pots.filter(({ lines }) => lines.some((line) => line.weighed !== undefined));
  const mass = massCheck(weighed, division, unit);
  if (!mass) return [];
  const of =
    pots.length === 1
      ? "Its pot"
      : weighed.length < pots.length
        ? `${weighed.length} of its ${pots.length} pots`
        : `Its ${pots.length} pots`;
  return [`${of}: ${formatMass(mass, unit)}.`];
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
export function loggedLots({ headings, rows }: LogTable): string[] {
  const column = headings.indexOf("Lot");
  return rows.map((row) => String(row[column] ?? "").trim());
}

/** Whether a table is the runs log, whatever it is called now. */
export function isRunsLog({
  name,
  headings,
}: {
  readonly name: string;
  readonly headings: readonly string[];
}): boolean {
  return name === RUNS_LOG.table || TELLING.every((heading) => headings.includes(heading));
}
const TELLING = ["Lot", "Scent", "Vessel", "Good", "Wax planned", "Weighed each", "Water weight"] as const;

/** The headings to add rows under: those of a log that was begun with other words stay. */
export function logHeadings({ headings }: LogTable): string[] {
  return RUNS_LOG.columns.map((column) => {
    const before = "before" in column ? column.before : column.heading;
    return headings.includes(column.heading) || !headings.includes(before) ? column.heading : before;
  });
}
