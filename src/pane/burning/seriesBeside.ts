import { onBasis } from "../../core/scent/onBasis";
import { sameName } from "../../runsheet/sameName";
import type { Standing } from "../../runsheet/series/seriesAdditions";
import type { AllTables } from "../../runsheet/series/seriesNeeds";
import type { Settings } from "../../runsheet/settings";
import type { FittingTables } from "../../runsheet/tables/fittings";
import { isNoScent } from "../../runsheet/tables/isNoScent";
import { readTable } from "../../runsheet/tables/readTables";
import { fieldName, missingFields, TABLE_TYPE_IDS } from "../../runsheet/tables/registry";
import { type ByHand, type RowsLeft, tableOf } from "../givenTables";
import type { ReadTables } from "../state/useTables";
import { SERIES } from "../words/series";
import { type Names, namesBeside } from "./namesBeside";

/** What a series is planned beside, read once. */
export interface SeriesBeside {
  readonly read: ReadTables;
  readonly tables: AllTables;
  readonly settings: Settings;
  /** What goes with each vessel as it is poured, whatever a series tries. */
  readonly fittings: FittingTables;
  readonly names: Readonly<Record<"vessel" | "wax" | "scent" | "wick", Names>>;
  /** All tests that the workbook names, as they are written. */
  readonly tests: readonly string[];
  /** The first code that none of them begins with, behind all others. */
  readonly nextCode: string;
  readonly standing: {
    readonly burnTests: Standing<"burnTests"> | undefined;
    readonly readings: Standing<"readings"> | undefined;
  };
  /** The inside width of a vessel in mm, as it was tested last. */
  widthOf(vessel: string): number | undefined;
  /** The load of a scent on the usual basis; undefined where a recipe makes it, or where its basis is not clear. */
  loadOf(scent: string): number | undefined;
  /** The days that a scent cures. */
  cureOf(scent: string): number | undefined;
  /** What of a series the table of burn tests has no column for. */
  readonly columnless: readonly (typeof COMMON)[number][];
  /** Why nothing can be added to the tables as they stand. */
  readonly refused: string | undefined;
}

export function seriesBeside(read: ReadTables, byHand: ByHand, settings: Settings, rowsLeft: RowsLeft): SeriesBeside {
  const tables = Object.fromEntries(
    TABLE_TYPE_IDS.map((kind) => [kind, tableOf(kind, read, byHand, rowsLeft)]),
  ) as AllTables;
  const { unit, basis } = settings;
  const [burnTests, readings] = [readTable(tables.burnTests, unit), readTable(tables.readings, unit)];
  const scents = readTable(tables.scents, unit);
  const fittings = {
    vessels: readTable(tables.vessels, unit) ?? new Map(),
    components: readTable(tables.components, unit) ?? new Map(),
  };
  const recipes = readTable(tables.recipes, unit);
  const tests = [...[...(burnTests?.values() ?? [])].map(({ test }) => test), ...(readings?.keys() ?? [])];
  const notesOf = (scent: string) => scents?.get(sameName(scent))?.notes;
  return {
    ...{ read, tables, settings, fittings, tests, nextCode: nextCode(tests) },
    names: namesBeside(tables),
    standing: standingOf(tables, read),
    widthOf: (vessel) =>
      [...(burnTests?.values() ?? [])].filter((one) => sameName(one.vessel) === sameName(vessel) && one.width).at(-1)
        ?.width,
    loadOf: (scent) => {
      if (scent.trim() === "" || isNoScent(scent) || recipes?.has(sameName(scent))) return undefined;
      const notes = notesOf(scent);
      if (notes?.load === undefined) return settings.load;
      const taken = notes.basis ?? basis;
      // Where the heading names another basis the run itself asks which is meant.
      const said = notes.saidBasis?.basis;
      const isUnclear = said === "unclear" ? notes.basis === undefined : said !== undefined && said !== taken;
      return isUnclear ? undefined : onBasis(notes.load, taken, basis);
    },
    cureOf: (scent) => notesOf(scent)?.cureDays,
    columnless: tables.burnTests ? COMMON.filter((field) => tables.burnTests?.columns[field] === undefined) : [],
    refused: refusalIn("burnTests", tables, read) ?? refusalIn("readings", tables, read),
  };
}

/** What tells candles apart beside their wick. */
const COMMON = ["width", "wax", "scent", "load", "product"] as const;

const CODE = /^s(\d{1,6})(?=-|$)/i;

function nextCode(tests: readonly string[]): string {
  const numbers = tests.map((test) => Number(CODE.exec(test.trim())?.[1] ?? 0));
  return `S${numbers.reduce((most, one) => Math.max(most, one), 0) + 1}`;
}

/** The tables of burn tests and readings as they stand in the workbook. */
export const standingTables = (read: ReadTables, byHand: ByHand): SeriesBeside["standing"] =>
  standingOf({ burnTests: tableOf("burnTests", read, byHand), readings: tableOf("readings", read, byHand) }, read);

const standingOf = (tables: AllTables, read: ReadTables): SeriesBeside["standing"] => ({
  burnTests: standingIn("burnTests", tables, read),
  readings: standingIn("readings", tables, read),
});

function standingIn<K extends "burnTests" | "readings">(
  kind: K,
  tables: AllTables,
  read: ReadTables,
): Standing<K> | undefined {
  const table = tables[kind];
  return table && ({ ...table, name: read[kind]?.name ?? "" } as unknown as Standing<K>);
}

function refusalIn(kind: "burnTests" | "readings", tables: AllTables, read: ReadTables): string | undefined {
  const [table, source] = [tables[kind], read[kind]];
  if (!table || !source) return undefined;
  const missing = missingFields(kind, table.columns).map(([field]) => fieldName(kind, field ?? ""));
  if (missing.length > 0) return SERIES.missingColumns(source.name, missing.join(", "));
  return source.below ? SERIES.rowsBelow(source.below, source.name) : undefined;
}
