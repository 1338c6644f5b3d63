import { list } from "../../core/check/list";
import { plain } from "../../core/check/plain";
import { wrong } from "../../core/check/wrong";
import { Fault } from "../../core/fault";
import { checkedUnit } from "../../core/units/checkedUnit";
import type { CellValue } from "../../sheet/sheet";
import { isError } from "../problem";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import type { BurnTest } from "../tables/burnTests";
import { columnRef } from "../tables/headings/columnRef";
import { headingUnit } from "../tables/headings/headingUnit";
import { heatUnitIn, saysHours } from "../tables/readings";
import { millimetresOf } from "../tables/readLength";
import { type FieldOf, fieldName, missingFields } from "../tables/registry";
import { weightRatio } from "../tables/weightUnits";
import type { Standing } from "./seriesAdditions";

/** The tables that a sheet of a series follows. */
export interface SeenTables {
  readonly burnTests: Standing<"burnTests">;
  readonly readings: Standing<"readings">;
}

/** A column as formulas read it. */
export interface SeenColumn {
  readonly ref: string;
  /** What the number of a cell is multiplied by, as the end of a formula: `*10`, or nothing. */
  readonly times: string;
}

type TestField = FieldOf<"burnTests">;
export type ReadingField = FieldOf<"readings">;

export interface SeenColumns {
  readonly test: (field: TestField) => SeenColumn | undefined;
  readonly reading: (field: ReadingField) => SeenColumn | undefined;
  /** The unit of the vessel's heat; C where none is read. */
  readonly heatUnit: "C" | "F";
  /** That of all weights. */
  readonly weightUnit: WeightUnit;
  /** Formula of a text that says which headings are not those that the units here were read from; empty where all are. */
  readonly renamed: string;
}

const LENGTHS = ["width", "flame", "pool", "depth"];
/** Their headings name a unit that formulas work with. */
const WITH_UNIT = [...LENGTHS, "minutes", "weight", "glass"];

/** The columns of the tables as formulas read them: lengths in mm, minutes, weights in this unit. */
export function seenColumns({ burnTests, readings }: SeenTables, unit: WeightUnit): SeenColumns {
  for (const table of [burnTests, readings]) {
    if (table.name === "") {
      throw new Fault("none", "", "a selected range is followed by no sheet; make it a table of the workbook first");
    }
  }
  needAll(burnTests);
  needAll(readings);
  const ofTests = columnsOf(burnTests);
  const ofReadings = columnsOf(readings);
  const glass = ofReadings("glass");
  return {
    test: (field) => withTimes(ofTests(field), field, unit),
    reading: (field) => withTimes(ofReadings(field), field, unit),
    heatUnit: glass ? checkedUnit("temperature", glass.heading, heatUnitIn(glass.heading)) : "C",
    weightUnit: unit,
    renamed: renamedOf([burnTests, readings]),
  };
}

function needAll({ type, name, columns }: Standing<"burnTests"> | Standing<"readings">): void {
  const missing = missingFields(type, columns).map(([field]) => fieldName(type, field as never));
  if (missing.length > 0)
    throw new Fault("none", "", `${name} has no column for ${list(missing, "and")}; fix the heading`);
}

interface Found {
  readonly ref: string;
  readonly heading: string;
}

function columnsOf<K extends "burnTests" | "readings">(table: Standing<K>): (field: FieldOf<K>) => Found | undefined {
  return (field) => {
    const column = (table.columns as Readonly<Record<string, number | undefined>>)[field];
    const heading = table.headings[column ?? -1];
    return heading === undefined ? undefined : { ref: columnRef(table.name, heading), heading };
  };
}

/** Units are written into the formulas: a heading that names another one later leaves them with the one before. */
function renamedOf(tables: readonly (Standing<"burnTests"> | Standing<"readings">)[]): string {
  const said = tables.flatMap(({ name, headings, columns }) =>
    Object.entries<number | undefined>(columns).flatMap(([field, column]) => {
      const heading = headings[column ?? -1];
      if (heading === undefined || !WITH_UNIT.includes(field)) return [];
      const place = `1+COLUMN(${columnRef(name, heading)})-MIN(COLUMN(${name}[#Headers]))`;
      const text = heading.replaceAll('"', '""');
      return [`IF(EXACT(INDEX(${name}[#Headers],1,${place}),"${text}"),"","${text} in ${name}")`];
    }),
  );
  const changed = 'IF(changed="","",changed&" is called otherwise now: write this sheet anew in the pane")';
  return `=LET(changed,TEXTJOIN(", ",TRUE,${said.join(",")}),${changed})`;
}

function withTimes(found: Found | undefined, field: string, unit: WeightUnit): SeenColumn | undefined {
  const ratio = found && ratioOf(found.heading, field, unit);
  return found && ratio !== undefined ? { ref: found.ref, times: ratio === 1 ? "" : `*${plain(ratio)}` } : undefined;
}

function ratioOf(heading: string, field: string, unit: WeightUnit): number | undefined {
  if (field === "minutes") return saysHours(heading) ? 60 : 1;
  if (field === "weight") {
    const said = headingUnit(heading);
    return said && "other" in said ? undefined : weightRatio(said, unit);
  }
  if (!LENGTHS.includes(field)) return 1;
  const ratio = millimetresOf(heading);
  if (ratio === undefined) throw wrong(heading, "the heading names no unit of length; write mm, cm or in there");
  return ratio;
}

/** What the candles of a series have in common, as the cells of the table say it. */
export const KEYS = ["vessel", "wax", "scent", "load", "cure", "product"] as const satisfies readonly TestField[];
export type SeenKeys = Readonly<Record<(typeof KEYS)[number], CellValue>>;

/**
 * What formulas look for to find the candles of a series: the cells of its first row. Refuses where another one says
 * the same in other words, for a formula would not find it, and where something in the rows cannot be read.
 */
export function seenKeys(tests: readonly BurnTest[], { burnTests }: SeenTables): SeenKeys {
  const unread = tests.flatMap(({ test, wrong }) => wrong.filter(isError).map(({ text }) => `${test}: ${text}`));
  if (unread.length > 0) throw new Fault("value", "", `fix first in ${burnTests.name}: ${unread.join("; ")}`);
  const [first] = tests as readonly [BurnTest];
  const keys = keysOf(first, burnTests);
  for (const field of KEYS) {
    const others = tests.filter((test) => said(field, keysOf(test, burnTests)[field]) !== said(field, keys[field]));
    if (others.length === 0) continue;
    const named = list(
      others.map(({ test }) => test),
      "and",
    );
    throw new Fault(
      "value",
      "",
      `${named} in ${burnTests.name}: ${fieldName("burnTests", field)} is written in another way than for ${first.test}; write it alike, so that formulas find it`,
    );
  }
  return keys;
}

function keysOf({ row }: BurnTest, table: Standing<"burnTests">): SeenKeys {
  const cell = (field: TestField): CellValue => {
    const column = (table.columns as Readonly<Record<string, number | undefined>>)[field];
    return column === undefined ? null : (table.rows[row]?.[column] ?? null);
  };
  return Object.fromEntries(KEYS.map((field) => [field, cell(field)])) as unknown as SeenKeys;
}

const said = (field: string, value: CellValue): string =>
  sameName(String(value ?? "")) || (field === "product" ? "container" : "");
