import { limit } from "../../core/check/limit";
import { rate } from "../../core/check/rate";
import { type Basis, basisOf } from "../../core/scent/basis";
import { isError, type Problem } from "../problem";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import { basisWords } from "./basisWords";
import { BASIS, LOAD, SCENT } from "./commonFields";
import type { SaidBasis } from "./entry";
import type { Field } from "./headings/field";
import { fitsOf } from "./headings/matching";
import { ASK_LOAD, ASK_SHARE, ASK_WICK, has, isLimit, orLeave, type Question } from "./questions";
import { daysIn } from "./readDays";
import { readTemperature, type Temperature } from "./readTemperature";
import type { RowReader } from "./rowReader";
import { RATE } from "./starterLooks";
import type { TableReader } from "./tableReader";
import { type Starter, tableType } from "./tableType";
import { isUnlikelyTemperature, LIKELY_TEMPERATURES } from "./unlikelyTemperature";

const FIELDS = {
  scent: { ...SCENT, alone: ["name", "blend", "product"] },
  load: LOAD,
  basis: BASIS,
  waxMaximum: {
    name: "Wax maximum",
    reads: "share",
    aliases: ["wax limit", "most the wax holds", "wax holds"],
    unsure: ["maximum load", "maximum scent", "maximum %", "maximum"],
  },
  productLimit: {
    name: "Product limit",
    reads: "share",
    // The trade's body for safety publishes limits of the finished product: common practice, no source.
    aliases: ["candle limit", "safety limit", "safe limit", "legal limit", "ifra maximum", "ifra"],
  },
  melt: {
    name: "Melt at",
    reads: "temperature",
    aliases: ["melt to", "melt", "heat to", "heat wax to"],
    not: ["point"],
  },
  add: {
    name: "Add at",
    reads: "temperature",
    aliases: [
      ...["add scent at", "add scent", "adding", "scent temperature", "scent in at", "scent at", "stir in at", "add"],
    ],
  },
  pour: { name: "Pour at", reads: "temperature", aliases: ["pour temperature", "pour"] },
  stir: { name: "Stir minutes", reads: "time", aliases: ["stir for", "stir time", "stir", "stir min"] },
  flash: { name: "Flash point", reads: "temperature", aliases: ["flash", "flash temperature", "fp"], not: ["wax"] },
  cure: { name: "Cure days", reads: "days", aliases: ["cure time", "cure for", "cure"] },
} satisfies Readonly<Record<string, Field>>;
type ScentField = keyof typeof FIELDS;

const ASK_WHOSE_LIMIT: Question = {
  isAsked: (column) => isLimit(column) || (column.words.has("maximum") && !column.isWeight && column.words.size === 1),
  text: () =>
    "is not read: a limit, and not known whose. Choose it as Wax maximum or Product limit under Columns, or leave it out",
};
const ASK_FLASH: Question = {
  isAsked: (column) => has(column, ["flash"]) && column.columnOf("flash") === undefined,
  text: () => orLeave("the flash point"),
};
const ASK_CURE: Question = {
  isAsked: (column) => has(column, ["cure"]) && column.columnOf("cure") === undefined,
  text: () => "is not read: curing is read in whole days. Write it so, or leave it out",
};

export const SCENTS = tableType({
  name: "Scents",
  purpose:
    "A row for each scent (fragrance oil). The wax maximum is a share of the wax, the product limit a share of the total. Temperatures stand on the sheet with the unit in their heading's brackets, C or F.",
  gives: "Scents (fragrance oils): loads, limits, temperatures, cure.",
  fields: FIELDS,
  needs: [["scent"], ["load", "waxMaximum", "productLimit", "melt", "add", "pour", "stir", "flash", "cure"]],
  // It holds the limits of what goes into a pot.
  unusable: "error",
  asks: [ASK_WHOSE_LIMIT, ASK_LOAD, ASK_SHARE, ASK_WICK, ASK_FLASH, ASK_CURE],
  starter,
  read: readScents,
  doubts: (table) => [...otherBases(table), ...unsureLimits(table)],
});

/** What the table of scents says of one. What is not given is undefined. */
export interface ScentNotes {
  /** Its place below the heading, from 0. */
  readonly row: number;
  readonly load: number | undefined;
  readonly basis: Basis | undefined;
  /** The basis that the heading of the loads names. */
  readonly saidBasis: SaidBasis | undefined;
  /** The most the wax holds, of wax. */
  readonly waxMaximum: number | undefined;
  /** The most the scent's documents allow, of total. */
  readonly productLimit: number | undefined;
  readonly melt: Temperature | undefined;
  readonly add: Temperature | undefined;
  readonly pour: Temperature | undefined;
  readonly flash: Temperature | undefined;
  /** Whether the table has a column for it. */
  readonly hasFlash: boolean;
  /** Words to be read, with the unit of the heading. */
  readonly stir: string;
  /** Whole days from the pour. */
  readonly cureDays: number | undefined;
  /** The fields whose cells are wrong: that is said of them already. */
  readonly misread: ReadonlySet<string>;
}

/** A scent of the table. What is wrong in its row matters only to runs that use it. */
export interface Scent {
  readonly name: string;
  readonly notes: ScentNotes;
  readonly wrong: readonly Problem[];
}

/** The scents by name. */
export type Scents = ReadonlyMap<string, Scent>;

function readScents(table: TableReader<ScentField>): Scents {
  const found = new Map<string, { name: string; notes: ScentNotes; wrong: Problem[] }>();
  for (const reader of table.rows) {
    const name = sameName(reader.text("scent"));
    const first = found.get(name);
    if (first) {
      // Its limits may be the ones that were meant.
      const text = `${reader.text("scent")} stands twice; the first row is taken`;
      first.wrong.push({ ...reader.warning("scent", text), safety: true });
    } else if (name !== "") {
      const notes = notesOf(reader, table);
      const wrong = reader.problems.map((one) =>
        SAFETY.has(one.field ?? "") ? { ...one, safety: true as const } : one,
      );
      found.set(name, { name: reader.text("scent"), notes, wrong });
    }
  }
  return found;
}

/** The fields that keep people safe. */
const SAFETY: ReadonlySet<string> = new Set(["waxMaximum", "productLimit", "melt", "add", "pour", "flash"]);

function notesOf(reader: RowReader<ScentField>, table: TableReader<ScentField>): ScentNotes {
  const basis = basisWords(reader.text("basis"));
  const notes = {
    row: reader.row,
    ...{ load: shareIn(reader, "load"), saidBasis: table.saidBasis("load") },
    basis: basis === "" ? undefined : reader.check("basis", () => basisOf("basis", basis)),
    ...{ waxMaximum: shareIn(reader, "waxMaximum"), productLimit: shareIn(reader, "productLimit") },
    ...{ melt: temperatureIn(reader, table, "melt"), add: temperatureIn(reader, table, "add") },
    ...{ pour: temperatureIn(reader, table, "pour"), flash: temperatureIn(reader, table, "flash") },
    hasFlash: table.has("flash"),
    stir: [reader.text("stir"), reader.text("stir") && reader.unit("stir")].filter(Boolean).join(" "),
    cureDays: daysIn(reader, "cure"),
  };
  return { ...notes, misread: new Set(reader.problems.filter(isError).flatMap(({ field }) => field ?? [])) };
}

function shareIn(reader: RowReader<ScentField>, field: "load" | "waxMaximum" | "productLimit"): number | undefined {
  const value = reader.number(field);
  if (field !== "load" && value === 1) {
    const text = `${reader.text("scent")} is not restricted here: 1 means 100 %; write 1% or 0.01 if 1 % was meant`;
    reader.problems.push(reader.warning(field, text));
  }
  return value === undefined ? undefined : reader.check(field, () => (field === "load" ? rate : limit)(field, value));
}

function temperatureIn(
  reader: RowReader<ScentField>,
  table: TableReader<ScentField>,
  field: "melt" | "add" | "pour" | "flash",
): Temperature | undefined {
  const found = readTemperature(reader.text(field), table.heading(field));
  if (found && isUnlikelyTemperature(found)) {
    const text = `${reader.text("scent")}: ${table.nameOf(field)} says ${found.words}, outside ${LIKELY_TEMPERATURES}; is it in the other unit?`;
    reader.problems.push(reader.warning(field, text));
  }
  return found;
}

/** Headings of limits that name another basis than limits have. */
function otherBases(table: TableReader<ScentField>): Problem[] {
  return (["waxMaximum", "productLimit"] as const).flatMap((field) => {
    const taken = field === "waxMaximum" ? "of wax" : "of total";
    const said = table.saidBasis(field);
    if (said === undefined || said.basis === taken) return [];
    return [table.problem("warning", field, `${said.says}; it is held as a share ${taken}, as such limits are`)];
  });
}

/** Limits whose heading does not say whose they are: held as the wax maximum, which is the stricter one. */
function unsureLimits(table: TableReader<ScentField>): Problem[] {
  const heading = table.heading("waxMaximum");
  if (!fitsOf(FIELDS, heading).some(({ field, isUnsure }) => field === "waxMaximum" && isUnsure)) return [];
  const text = `The column "${heading}" does not say whose limit it is and is held as the wax maximum, the stricter one; write Wax maximum or Product limit in its heading`;
  return [table.problem("warning", "waxMaximum", text)];
}

function starter(unit: WeightUnit): Starter {
  // Where wax is weighed in ounces, thermometers are read in Fahrenheit.
  const degrees = unit === "oz" || unit === "lb" ? "F" : "C";
  return {
    note: "Loads and limits come from the suppliers' documents; write 6% or 0.06. A load is a share of the wax or of the total, as its basis says.",
    columns: [
      { heading: "Scent", width: 22 },
      { heading: "Load (%)", ...RATE },
      { heading: "Basis (of wax or of total)", width: 14 },
      { heading: "Wax maximum (%)", ...RATE },
      { heading: "Product limit (%)", ...RATE },
      { heading: `Melt at (${degrees})`, width: 12 },
      { heading: `Add at (${degrees})`, width: 12 },
      { heading: "Stir (min)", width: 12 },
      { heading: `Pour at (${degrees})`, width: 12 },
      { heading: `Flash point (${degrees})`, width: 16 },
      { heading: "Cure days", width: 10 },
    ],
  };
}
