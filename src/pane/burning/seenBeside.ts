import { readSeries, type SeenWick, seriesOf } from "../../runsheet/series/readSeries";
import { seriesName } from "../../runsheet/series/seriesName";
import type { Settings } from "../../runsheet/settings";
import type { BurnTest } from "../../runsheet/tables/burnTests";
import { readTable } from "../../runsheet/tables/readTables";
import { fieldName, missingFields } from "../../runsheet/tables/registry";
import type { TableRows } from "../../runsheet/tables/tableRows";
import { alikeWicks, inOrderOfName } from "../../runsheet/tables/wick";
import { type ByHand, tableOf } from "../givenTables";
import type { ReadTables } from "../state/useTables";
import { SEEN } from "../words/seen";
import { fillOf } from "./fillOf";

/** A series with what its readings show. */
export interface SeenSeries {
  /** What its candles have in common, in words; no two series share it. */
  readonly name: string;
  readonly tests: readonly BurnTest[];
  readonly wicks: readonly SeenWick[];
  /** Wax and scent of one candle, in the unit of the settings; undefined where no table tells it. */
  readonly fill: number | undefined;
  /** Whether anything was read of it. */
  readonly isBegun: boolean;
}

export interface SeenBeside {
  readonly series: readonly SeenSeries[];
  /** What stands in the tables and is not read, or not as it may be meant. */
  readonly doubts: readonly string[];
}

/** The series of the workbook, the one planned last before all others. */
export function seenBeside(read: ReadTables, byHand: ByHand, settings: Settings): SeenBeside {
  const { unit, basis } = settings;
  const given = { burnTests: tableOf("burnTests", read, byHand), readings: tableOf("readings", read, byHand) };
  const tests = readTable(given.burnTests, unit) ?? new Map<string, BurnTest>();
  const readings = readTable(given.readings, unit) ?? new Map();
  const vessels = readTable(tableOf("vessels", read, byHand), unit);
  const strays = [...readings].flatMap(([name, [first]]) =>
    tests.has(name) || !first ? [] : [asWritten(given.readings, first.row) || name],
  );
  const series = seriesOf(tests).map((own): SeenSeries => {
    const first = own[0] as BurnTest;
    const fill = fillOf(first.vessel, vessels, settings);
    const wicks = readSeries(own, readings, fill).sort((one, other) => inOrderOfName(one.wick, other.wick));
    return { name: seriesName(first, basis), tests: own, wicks, fill, isBegun: wicks.some(isBegun) };
  });
  return {
    series: series.reverse(),
    doubts: [
      ...(["burnTests", "readings"] as const).flatMap((kind) => missing(kind, read, given[kind]?.columns)),
      ...(tests.size > 0 && !read.readings ? [SEEN.noReadings] : []),
      ...alikeWicks([...tests.values()].map(({ wick }) => wick)).map(SEEN.alike),
      ...(strays.length > 0 ? [SEEN.strays(strays, read.burnTests?.name)] : []),
    ],
  };
}

/** The name of a reading's test, as its row spells it. */
const asWritten = (table: TableRows<"readings"> | undefined, row: number): string =>
  String(table?.rows[row]?.[table.columns.test ?? -1] ?? "").trim();

const isBegun = ({ candles }: SeenWick): boolean =>
  candles.some(({ hours, rate, beyond, wrong }) => hours > 0 || rate !== undefined || beyond.length + wrong.length > 0);

function missing(
  kind: "burnTests" | "readings",
  read: ReadTables,
  columns: Parameters<typeof missingFields>[1] | undefined,
): string[] {
  const fields = columns ? missingFields(kind, columns).map(([field]) => fieldName(kind, field ?? "")) : [];
  return fields.length > 0 ? [SEEN.missingColumns(read[kind]?.name ?? "", fields.join(", "))] : [];
}
