import { USUAL, waxOf } from "../plan/checks/untested";
import type { RunPlan } from "../plan/runPlan";
import { sameName } from "../sameName";
import type { Settings } from "../settings";
import { readTables } from "../tables/readTables";
import type { TableRows, Tables } from "../tables/tableRows";
import { wickOf } from "../tables/wick";

/** What the candles of a series are made of. */
export interface SeriesPour {
  readonly vessel: string;
  readonly wicks: readonly string[];
  /** All of them. */
  readonly candles: number;
  /** Empty for the usual one. */
  readonly wax: string;
  /** Empty for candles without one. */
  readonly scent: string;
  /** On the usual basis; undefined as the scent has it. */
  readonly load: number | undefined;
}

/** The tables of a workbook; there need not be one to pour from. */
export type AllTables = { readonly [K in keyof Tables]?: Tables[K] | undefined };

/**
 * The tables by which a run of just these candles is planned: what it takes and what the shelf lacks is worked out as
 * for any other. The wicks to try stand in for the approved one and the components, equally many of each.
 */
export function seriesTables(
  pour: SeriesPour,
  tables: AllTables,
  settings: Settings,
): { readonly tables: Tables; readonly isFillKnown: boolean } {
  const { vessel, wicks, candles, wax, scent, load } = pour;
  const fill = fillOf(vessel, tables, settings);
  const share = load === undefined ? {} : { load, basis: settings.basis };
  const { burnTests, readings, vessels, ...others } = tables;
  const each = new Map<string, number>();
  for (const wick of wicks) {
    const { name, each: count } = wickOf(wick);
    each.set(name, (each.get(name) ?? 0) + count / wicks.length);
  }
  return {
    tables: {
      ...others,
      vessels: vessels && withoutWicks(vessels),
      pour: madeTable("pour", [
        { vessel, quantity: candles, scent: scent || null, wax: wax || null, ...share, ...(fill ?? standIn(settings)) },
      ]),
      components: madeTable(
        "components",
        [...each].map(([item, each]) => ({ vessel, item, each })),
      ),
    },
    isFillKnown: fill !== undefined,
  };
}

/** The load of such a plan, of wax; undefined for candles without scent, and while there is none. */
export const plannedLoad = ({ scents: [candle] }: RunPlan): number | undefined =>
  candle && candle.load > 0 ? candle.loads["of wax"] : undefined;

/** The wax as burn tests name it, that of a recipe too; empty for the usual one. */
export function plannedWax({ scents: [candle] }: RunPlan): string {
  const wax = candle ? waxOf(candle) : "";
  return sameName(wax) === USUAL ? "" : wax;
}

/** What fills a vessel: nothing of its own where the table of vessels knows it, else what a row of the batch says. */
function fillOf(
  vessel: string,
  tables: AllTables,
  { unit }: Settings,
): Readonly<Record<string, number | undefined>> | undefined {
  const read = readTables(tables as Tables, unit).rows;
  const key = sameName(vessel);
  const known = read.vessels?.get(key);
  if (known && (known.water !== undefined || known.wrong.length > 0)) return {};
  const rows = read.pour?.rows.filter((row) => sameName(row.vessel.value ?? "") === key) ?? [];
  const filled = rows.find(({ fill, water }) => (fill.value ?? water.value) !== undefined);
  if (!filled) return undefined;
  const { fill, water, factor } = filled;
  if (fill.value !== undefined) return { fill: fill.value };
  return { water: water.value, ...(factor.value !== undefined && { factor: factor.value }) };
}

/** For a fill that nobody knows, so much that no scale is too coarse: so the load is held against its limits all the same. */
const standIn = ({ potCapacity }: Settings) => ({ fill: potCapacity / 2 });

function withoutWicks(vessels: TableRows<"vessels">): TableRows<"vessels"> {
  const { wick: _, ...columns } = vessels.columns;
  return { ...vessels, columns };
}

/** A table of rows by field. */
function madeTable<K extends "pour" | "components">(
  type: K,
  rows: readonly Readonly<Record<string, string | number | null | undefined>>[],
): TableRows<K> {
  const fields = Object.keys(rows[0] ?? {});
  return {
    type,
    headings: fields.map(() => ""),
    rows: rows.map((row) => fields.map((field) => row[field] ?? null)),
    columns: Object.fromEntries(fields.map((field, column) => [field, column])),
  } as unknown as TableRows<K>;
}
