import { wrong } from "../../core/check/wrong";
import type { Basis } from "../../core/scent/basis";
import { onBasis } from "../../core/scent/onBasis";
import type { Addition } from "../../sheet/addition";
import type { Content } from "../../sheet/sheet";
import { tableSheet } from "../../sheet/tableSheet";
import type { Settings } from "../settings";
import { headingWords } from "../tables/headings/headingWords";
import { millimetresOf } from "../tables/readLength";
import { type FieldOf, matchColumns, TABLE_TYPES, tableName } from "../tables/registry";
import type { TableRows } from "../tables/tableRows";
import type { TableType } from "../tables/tableType";
import type { Series } from "./planSeries";

/** What all candles of a series have in common. */
export interface SeriesCandles {
  readonly vessel: string;
  /** Inside width in mm. */
  readonly width: number | undefined;
  readonly wax: string;
  readonly scent: string;
  /** Of wax; undefined without a scent. */
  readonly load: number | undefined;
  readonly cureDays: number;
  readonly product: string;
}

type Kind = "burnTests" | "readings";
/** A table that is in the workbook, under its name. */
export type Standing<K extends Kind> = TableRows<K> & { readonly name: string };
type Row<K extends Kind> = Readonly<Partial<Record<FieldOf<K>, string | number | undefined>>>;

/** Rows for the tests and for their empty readings: in the tables that are there, or in new ones. */
export function seriesAdditions(
  { candles, looks }: Series,
  { vessel, width, wax, scent, load, cureDays, product }: SeriesCandles,
  tables: {
    readonly burnTests?: Standing<"burnTests"> | undefined;
    readonly readings?: Standing<"readings"> | undefined;
  },
  settings: Pick<Settings, "unit" | "basis">,
): Addition[] {
  const all = { vessel, width, wax, scent, load, cure: cureDays, product };
  const tests = candles.map(({ test, wick, burnOn }) => ({ test, wick, burnOn, ...all }));
  return [
    additionOf("burnTests", tests, tables.burnTests, settings),
    additionOf("readings", looks, tables.readings, settings),
  ];
}

function additionOf<K extends Kind>(
  kind: K,
  rows: readonly Row<K>[],
  standing: Standing<K> | undefined,
  { unit, basis }: Pick<Settings, "unit" | "basis">,
): Addition {
  const { name, starter }: TableType = TABLE_TYPES[kind];
  const { columns } = starter(unit, () => undefined, []);
  const headings = standing?.headings ?? columns.map(({ heading }) => heading);
  const places = Object.entries<number | undefined>(standing?.columns ?? matchColumns(kind, headings)).flatMap(
    ([field, column]) => (column === undefined ? [] : [{ field: field as FieldOf<K>, column }]),
  );
  const contents = (row: Row<K>, given: typeof places) =>
    given.map(({ field, column }) => contentOf(inColumn(field, row[field], headings[column] ?? "", basis)));
  if (standing) {
    const given = places.filter(({ field }) => rows.some((row) => row[field] !== undefined));
    return {
      table: standing.name,
      headings: given.map(({ column }) => headings[column] as string),
      rows: rows.map((row) => contents(row, given)),
    };
  }
  const inOrder = headings.map((_, column) => places.find((place) => place.column === column) ?? NOWHERE);
  return tableSheet(
    { name, table: tableName(kind), columns },
    rows.map((row) => contents(row, inOrder as typeof places)),
  );
}

/** A column that the series has nothing for. */
const NOWHERE = { field: "", column: -1 } as const;

/** A width in the unit of its heading, a load on the basis of its own; one that names none is on the usual basis. */
function inColumn(
  field: string,
  value: string | number | undefined,
  heading: string,
  usual: Basis,
): string | number | undefined {
  if (typeof value !== "number") return value;
  const { basis } = headingWords(heading);
  if (field === "load") return onBasis(value, "of wax", basis === undefined || basis === "unclear" ? usual : basis);
  if (field !== "width") return value;
  const ratio = millimetresOf(heading);
  if (ratio === undefined)
    throw wrong("width", `the heading ${heading} names no unit of length; write mm, cm or in there`);
  return value / ratio;
}

/** A text stays text, whatever it begins with. */
function contentOf(value: string | number | undefined): Content | null {
  if (value === undefined || value === "") return null;
  return typeof value === "string" ? { text: value } : { number: Number(value.toPrecision(12)) };
}
