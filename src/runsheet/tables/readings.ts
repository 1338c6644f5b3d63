import { plain } from "../../core/check/plain";
import { wrong } from "../../core/check/wrong";
import { celsius } from "../../core/units/celsius";
import type { Problem } from "../problem";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import { TEST } from "./burnTests";
import type { Field } from "./headings/field";
import { bracketed } from "./headings/tidyHeading";
import { lengthIn } from "./readLength";
import type { RowReader } from "./rowReader";
import { weightLook } from "./starterLooks";
import type { TableReader } from "./tableReader";
import { type Starter, tableType } from "./tableType";

const FIELDS = {
  test: TEST,
  cycle: {
    name: "Cycle",
    reads: "count",
    aliases: ["burn cycle", "cycle number", "burn number", "burn", "session", "burn session"],
  },
  minutes: {
    name: "Minutes",
    reads: "time",
    aliases: ["minutes burnt", "minutes in cycle", "burn time", "time burnt", "time", "elapsed", "min"],
    not: ["total", "start", "end"],
  },
  weight: {
    name: "Weight",
    reads: "weight",
    aliases: ["candle weight", "weight with vessel", "weight now", "gross weight", "weight after"],
    alone: ["gross"],
    not: ["counted", "lost", "burnt", "rate"],
  },
  flame: { name: "Flame", reads: "length", aliases: ["flame height", "flame high", "height of flame"] },
  pool: {
    name: "Pool",
    reads: "length",
    aliases: ["melt pool", "pool width", "pool diameter", "melt pool width", "melt pool diameter", "mp", "fmp"],
  },
  depth: {
    name: "Wax left",
    reads: "length",
    aliases: ["depth left", "wax depth left", "depth of wax left", "wax depth", "height of wax left", "wax left depth"],
  },
  poolDepth: {
    name: "Pool depth",
    reads: "length",
    aliases: ["melt pool depth", "depth of pool", "depth of melt pool", "mp depth"],
  },
  soot: { name: "Soot", reads: "words", aliases: ["sooting", "soot index", "soot seen", "smoke and soot"] },
  glass: {
    name: "Glass temperature",
    reads: "temperature",
    aliases: [
      "vessel temperature",
      "temperature of glass",
      "outside temperature",
      "surface temperature",
      "jar temperature",
    ],
    alone: ["temperature", "glass", "vessel", "heat"],
  },
  throw: {
    name: "Throw",
    reads: "count",
    aliases: ["hot throw", "scent throw", "throw score", "score of throw", "throw hot"],
    not: ["cold"],
  },
  remarks: { name: "Remarks", reads: "words", aliases: ["remark", "notes", "note", "comments", "comment", "seen"] },
} satisfies Readonly<Record<string, Field>>;
type ReadingField = keyof typeof FIELDS;

export const READINGS = tableType({
  name: "Readings",
  purpose:
    "What is seen while a candle burns: a row for each look at it, by the name of its test, the cycle and the minutes since that cycle began. Each hour the flame and the pool; before and after a cycle the weight; at the end the wax left. Where you score how a candle throws its scent (fragrance oil), a column Throw holds the number. What was not looked at stays blank.",
  gives: "Readings: what was seen in the burn tests.",
  fields: FIELDS,
  needs: [["test"], ["cycle"], ["minutes"]],
  unusable: "warning",
  asks: [],
  starter,
  read: readReadings,
});

/** One look at a burning candle: lengths in mm, the weight in the wanted unit, the heat in degrees Celsius. */
export interface TestReading {
  readonly row: number;
  readonly cycle: number | undefined;
  readonly minutes: number | undefined;
  readonly weight: number | undefined;
  readonly weightUnit: WeightUnit;
  readonly flame: number | undefined;
  readonly pool: number | undefined;
  readonly poolDepth: number | undefined;
  /** Wax left from the surface down. */
  readonly depth: number | undefined;
  /** An index an hour, or what was seen in words. */
  readonly soot: number | string | undefined;
  readonly glass: number | undefined;
  /** How the candle throws its scent, as the maker scores it. */
  readonly throw: number | undefined;
  readonly remarks: string;
  readonly wrong: readonly Problem[];
}

/** The readings by the name of their test, in the order of their rows. */
export type Readings = ReadonlyMap<string, readonly TestReading[]>;

function readReadings(table: TableReader<ReadingField>): Readings {
  const found = new Map<string, TestReading[]>();
  const scale = table.scale("weight").ratio;
  for (const reader of table.rows) {
    const test = sameName(reader.text("test"));
    if (test === "") continue;
    const weight = reader.number("weight");
    const length = (field: ReadingField) => lengthIn(table, reader, field);
    const reading = {
      row: reader.row,
      cycle: cycleIn(reader),
      minutes: minutesIn(table, reader),
      weight: weight === undefined || scale === undefined ? undefined : weight * scale,
      weightUnit: table.unit,
      ...{ flame: length("flame"), pool: length("pool"), poolDepth: length("poolDepth"), depth: length("depth") },
      ...{ soot: sootIn(table, reader), glass: glassIn(table, reader) },
      ...{ throw: reader.number("throw"), remarks: reader.text("remarks") },
    };
    const own = found.get(test) ?? [];
    found.set(test, own);
    own.push({ ...reading, wrong: reader.problems });
  }
  return found;
}

function cycleIn(reader: RowReader<ReadingField>): number | undefined {
  const cycle = reader.number("cycle");
  if (cycle === undefined) return undefined;
  return reader.check("cycle", () => {
    if (Number.isInteger(cycle) && cycle >= 1) return cycle;
    throw wrong("cycle", `${cycle} is no number of a cycle; write 1, 2, 3 and so on`);
  });
}

/** Whether the heading of the minutes says that they are hours. */
export const saysHours = (heading: string): boolean => /(^|[^\p{L}])(h|hrs?|hours?)([^\p{L}]|$)/iu.test(heading);

/** In minutes, also where the heading says hours. */
function minutesIn(table: TableReader<ReadingField>, reader: RowReader<ReadingField>): number | undefined {
  const time = reader.number("minutes");
  if (time === undefined) return undefined;
  const isHours = saysHours(table.heading("minutes"));
  return reader.check("minutes", () => {
    if (time > 0 && time < (isHours ? 1 / 60 : 1)) {
      throw wrong("minutes", `${plain(time)} is a clock time; write the minutes since the cycle began, such as 60`);
    }
    if (time >= 0) return isHours ? time * 60 : time;
    throw wrong("minutes", `${time} is below 0; write the minutes since the cycle began`);
  });
}

function sootIn(table: TableReader<ReadingField>, reader: RowReader<ReadingField>): number | string | undefined {
  const cell = table.cell(reader.row, "soot");
  if (typeof cell === "number") return cell;
  return reader.text("soot") || undefined;
}

function glassIn(table: TableReader<ReadingField>, reader: RowReader<ReadingField>): number | undefined {
  const heat = reader.number("glass");
  if (heat === undefined) return undefined;
  return reader.check("glass", () => celsius(heat, "glass", heatUnitIn(table.heading("glass"))));
}

/** The unit of heat in a heading, in brackets or as its last word. */
export const heatUnitIn = (heading: string): string => bracketed(heading)[0] || (heading.split(/[\s_]+/).at(-1) ?? "");

/** Where wax is weighed in ounces, thermometers are read in Fahrenheit. */
export const degreesWith = (unit: WeightUnit): "F" | "C" => (unit === "oz" || unit === "lb" ? "F" : "C");

function starter(unit: WeightUnit): Starter {
  return {
    note: "A row for each look at a burning candle: each hour of a cycle of at most 240 minutes, with breaks of at least 60, until 10 mm of wax are left. What was not looked at stays blank.",
    columns: [
      { heading: "Test", width: 10, choices: ["BurnTests", "Test"] },
      { heading: "Cycle", width: 8 },
      { heading: "Minutes", width: 10 },
      { heading: `Weight (${unit})`, ...weightLook(unit) },
      { heading: "Flame (mm)", width: 12 },
      { heading: "Pool (mm)", width: 12 },
      { heading: "Pool depth (mm)", width: 14 },
      { heading: "Wax left (mm)", width: 12 },
      { heading: "Soot", width: 14 },
      { heading: `Glass temperature (${degreesWith(unit)})`, width: 18 },
      { heading: "Remarks", width: 40 },
    ],
  };
}
