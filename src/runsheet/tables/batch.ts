import { plain } from "../../core/check/plain";
import { wholeNumber } from "../../core/check/wholeNumber";
import type { Problem } from "../problem";
import type { WeightUnit } from "../settings";
import { basisWords } from "./basisWords";
import { BASIS, FACTOR, LOAD, SCENT, VESSEL, WATER } from "./commonFields";
import { type Entry, entryOf, type SaidBasis } from "./entry";
import { columnRef } from "./headings/columnRef";
import type { Field } from "./headings/field";
import { headingUnit } from "./headings/headingUnit";
import { columnsFor } from "./headings/matching";
import { isAmount } from "./isAmount";
import { isNoScent } from "./isNoScent";
import {
  ASK_FACTOR,
  ASK_LIMIT,
  ASK_LOAD,
  ASK_SHARE,
  ASK_WATER,
  ASK_WICK,
  FOLLOWS,
  has,
  orLeave,
  type Question,
} from "./questions";
import type { RowReader } from "./rowReader";
import { fillHeading, weightLook } from "./starterLooks";
import type { TableReader } from "./tableReader";
import { type Present, type Starter, tableType } from "./tableType";

import { weightRatio } from "./weightUnits";

const FIELDS = {
  vessel: VESSEL,
  quantity: {
    name: "Quantity",
    reads: "count",
    aliases: ["how many", "to make", "to pour", "count", "pieces", "number of", "number to make", "batch quantity"],
    alone: [
      ...["make", "candles", "number", "pcs", "pc", "units", "total quantity", "total candles", "candles total"],
      ...["batch size", "batch", "jars", "tins", "containers", "vessels", "ordered", "planned", "batch count"],
      ...["jars needed", "candles needed"],
    ],
  },
  fill: {
    name: "Fill weight",
    reads: "weight",
    aliases: [
      ...["fill", "wax and scent", "wax scent", "net weight", "pour weight", "candle fill", "fill each", "pour each"],
    ],
    alone: ["fill amount each", "fill weight each", "net", "total each", "wax and scent each"],
  },
  water: WATER,
  factor: FACTOR,
  scent: SCENT,
  wax: {
    name: "Wax",
    reads: "name",
    aliases: ["wax type", "wax blend", "wax name", "wax used", "wax or blend", "type of wax", "base wax", "which wax"],
    alone: ["base"],
    not: ["and", "plus", "for"],
  },
  load: LOAD,
  basis: BASIS,
} satisfies Readonly<Record<string, Field>>;
type BatchField = keyof typeof FIELDS;

const ASK_SCENT_WEIGHT: Question = {
  isAsked: (column) =>
    has(column, ["scent"]) && !has(column, ["wax", "total"]) && (column.isWeight || column.isNumeric),
  text: () =>
    "is a weight of scent, and no load is read in this table: write the load as a share of wax or of total, as POUR.LOADFROM works it out, or leave the column out",
  figure: "load",
  onlyWhere: "not here",
};
const ASK_WAX_WEIGHT: Question = {
  isAsked: (column) =>
    has(column, ["wax"]) &&
    !has(column, ["scent", "total", ...(column.columnOf("water") ? ["each"] : [])]) &&
    (column.isWeight || column.isNumeric),
  text: () =>
    "is a weight of wax alone, and no fill weight is read: write the weight of wax and scent together, or leave the column out",
  figure: "fill",
  onlyWhere: "default",
};
const ASK_WEIGHT: Question = {
  isAsked: (column) => column.isWeight && !has(column, ["wax", "scent", ...FOLLOWS]),
  text: () => orLeave("the fill weight or the water weight"),
  figure: "fill",
};

const DONE = ["done", "poured", "made", "finished", "complete", "completed", "status", "logged", "ok"];
const ASK_DONE: Question = {
  isAsked: (column) => has(column, DONE) && column.isTicked,
  text: () =>
    "is not read: rows that are ticked there are poured all the same. Clear the quantity of those that are done, or leave the column out",
  isOfAny: true,
};

export const BATCH = tableType({
  name: "Pour from",
  purpose:
    "The one table that must be there, whatever its name: a row for each vessel and scent (fragrance oil) to pour. Rows without a quantity are left out. A scent such as Unscented, none or - is a candle without scent. A row without a fill weight is filled by its water weight and wax factor, else by its vessel in the table of vessels. A wax that it names, an item or a recipe, is poured in place of the usual one: one scent in two waxes is melted in pots of their own.",
  fields: FIELDS,
  needs: [["vessel"], ["quantity"], ["fill", "water"]],
  // Vessels that are known by name fill rows that give no weight.
  standIn: { field: "fill", type: "vessels" },
  unusable: "error",
  asks: [
    ...[ASK_LIMIT, ASK_LOAD, ASK_SCENT_WEIGHT, ASK_WAX_WEIGHT, ASK_WEIGHT],
    ...[ASK_FACTOR, ASK_WATER, ASK_SHARE, ASK_WICK, ASK_DONE],
  ],
  starter,
  read: readBatch,
  refuses: otherUnits,
  doubts: (table) => [...loadsAsScents(table), ...weightsAsWaxes(table)],
});

/** A row of the batch, as it stands: what other tables know is not in it. */
export interface BatchRow {
  /** Its place below the heading, from 0. */
  readonly row: number;
  readonly isHidden: boolean;
  readonly vessel: Entry<string>;
  readonly quantity: Entry<number>;
  readonly fill: Entry<number>;
  readonly water: Entry<number>;
  readonly factor: Entry<number>;
  readonly scent: Entry<string>;
  /** An item, or a recipe of waxes; blank for the usual one. */
  readonly wax: Entry<string>;
  readonly load: Entry<number>;
  readonly basis: Entry<string>;
}

export interface Batch {
  readonly rows: readonly BatchRow[];
  /** Whether there is a column of scents. */
  readonly hasScents: boolean;
  /** Whether any row names one. */
  readonly namesScents: boolean;
  /** The column that a row without a weight leaves blank; undefined where there is none. */
  readonly weightColumn: "fill" | "water" | undefined;
  /** How many of the wanted unit one of the water weights' unit is; undefined where it is no weight. */
  readonly waterRatio: number | undefined;
  /** The basis that the heading of the loads names. */
  readonly saidBasis: SaidBasis | undefined;
}

function readBatch(table: TableReader<BatchField>): Batch {
  const rows = table.rows.map(({ row }): BatchRow => {
    const text = (field: BatchField) => entryOf(table, row, field, (one) => one.text(field));
    const number = (field: BatchField) => entryOf(table, row, field, (one) => one.number(field));
    return {
      row,
      isHidden: table.isHidden(row),
      vessel: text("vessel"),
      quantity: entryOf(table, row, "quantity", quantityOf),
      fill: number("fill"),
      water: number("water"),
      factor: number("factor"),
      scent: text("scent"),
      wax: text("wax"),
      load: number("load"),
      basis: entryOf(table, row, "basis", (one) => basisWords(one.text("basis"))),
    };
  });
  const weightColumn = table.has("fill") ? "fill" : table.has("water") ? "water" : undefined;
  const namesScents = rows.some(({ scent }) => scent.value !== "");
  return {
    ...{ rows, hasScents: table.has("scent"), namesScents, weightColumn },
    ...{ waterRatio: table.scale("water").ratio, saidBasis: table.saidBasis("load") },
  };
}

function quantityOf(reader: RowReader<BatchField>): number | undefined {
  const typed = reader.number("quantity");
  if (typed === undefined || typed === 0) return typed;
  const whole = wholeNumber(typed);
  if (whole > 0) return whole;
  reader.error("quantity", `${plain(typed)} is not a whole number above 0`);
  return undefined;
}

/** Columns whose headings name another unit than the setting, or no weight at all: their numbers are not converted. */
function otherUnits(table: TableReader<BatchField>): Problem[] {
  // What no row is filled by is never read.
  const isRead = { fill: true, water: table.rows.some((row) => !row.isBlank("quantity") && row.isBlank("fill")) };
  return (["fill", "water"] as const).flatMap((field): Problem[] => {
    if (!isRead[field]) return [];
    const { ratio, problem } = table.scale(field);
    if (problem) return [problem];
    if (ratio === 1) return [];
    const text = `The heading ${table.heading(field)} and the setting "Weights in" (${table.unit}) differ; give both the unit that the numbers are in. A new heading converts no numbers`;
    return [table.problem("error", field, text)];
  });
}

/** Scents that are numbers as loads are, or amounts: a column of these that is read as names. */
function loadsAsScents(table: TableReader<BatchField>): Problem[] {
  const names = namesIn(table, "scent").filter((text) => !isNoScent(text));
  const isLoad = (text: string) => /%$/.test(text) || (Number(text) > 0 && Number(text) < 0.3);
  const heading = table.heading("scent");
  const [amount] = names.filter(isAmount);
  if (amount !== undefined) {
    const text = `The column "${heading}" holds amounts, such as ${amount}, and is read as the names of the scents; write a unit in its heading, or choose another column as Scent under Columns`;
    return [table.problem("error", "scent", text)];
  }
  if (names.length === 0 || !names.every(isLoad)) return [];
  const text = `The column "${heading}" holds shares and is read as the names of the scents; under Columns choose it as Load, and another as Scent`;
  return [table.problem("error", "scent", text)];
}

/** A column of weights of wax that is read as the names of waxes. */
function weightsAsWaxes(table: TableReader<BatchField>): Problem[] {
  const names = namesIn(table, "wax");
  const [amount] = names.filter(isAmount);
  const isNumbers = names.length > 0 && names.every((text) => /^[\d.,]+$/.test(text));
  if (amount === undefined && !isNumbers) return [];
  const what = amount === undefined ? "numbers" : `amounts, such as ${amount},`;
  const text = `The column "${table.heading("wax")}" holds ${what} and is read as the names of the waxes; write a unit in its heading, or choose another column as Wax under Columns`;
  return [table.problem("error", "wax", text)];
}

const namesIn = (table: TableReader<BatchField>, field: BatchField): string[] =>
  table.rows.map((reader) => reader.text(field)).filter((text) => text !== "");

function starter(unit: WeightUnit, present: (name: string) => Present | undefined): Starter {
  const fill = fillHeading(unit);
  const vessels = present("Vessels") ?? { name: "Vessels", headings: ["Vessel", fill] };
  return {
    name: "Batch",
    note: "What to pour: a row for each vessel and scent (fragrance oil). Rows without a quantity are left out. A row typed or pasted right below the table becomes a part of it; one that does not, the pane asks about.",
    columns: [
      { heading: "Vessel", width: 24, choices: ["Vessels", "Vessel"] },
      { heading: "Scent", width: 22, choices: ["Scents", "Scent"] },
      { heading: "Quantity", width: 10 },
      { heading: fill, ...weightLook(unit), ...lookUp(vessels, "Batch[[#This Row],[Vessel]]", unit) },
    ],
  };
}

/** The formula that looks a vessel's fill up in this unit; none where the table of vessels has no column for it. */
function lookUp({ name, headings }: Present, sought: string, unit: WeightUnit): { formula?: string } {
  const { vessel, fill } = columnsFor(FIELDS, headings);
  if (vessel === undefined || fill === undefined) return {};
  const known = headingUnit(headings[fill] as string);
  if (known && !("weight" in known)) return {};
  const ratio = weightRatio(known, unit);
  const column = (place: number) => columnRef(name, headings[place] as string);
  return {
    formula: `=IF(${sought}="","",INDEX(${column(fill)},MATCH(TRIM(${sought}),${column(vessel)},0))${ratio === 1 ? "" : `*${plain(ratio)}`})`,
  };
}
