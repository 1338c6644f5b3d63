import { limit } from "../../core/check/limit";
import { rate } from "../../core/check/rate";
import { wrong } from "../../core/check/wrong";
import { type Basis, basisOf } from "../../core/scent/basis";
import { roleName } from "./kinds";
import { readTemperature, type Temperature } from "./readTemperature";
import { headingOf, type Problem, type RowReader, readersOf, sameName, type TableRows } from "./tableReader";
import { isUnlikelyTemperature, LIKELY_TEMPERATURES } from "./unlikelyTemperature";

/** What the table of scents says of one. What is not given is undefined. */
export interface ScentNotes {
  /** Its place below the heading, from 0. */
  readonly row: number;
  readonly load: number | undefined;
  readonly basis: Basis | undefined;
  /** The most the wax holds, of wax. */
  readonly waxMaximum: number | undefined;
  /** The most the scent's documents allow, of total. */
  readonly productLimit: number | undefined;
  readonly melt: Temperature | undefined;
  readonly add: Temperature | undefined;
  readonly pour: Temperature | undefined;
  readonly flash: Temperature | undefined;
  /** Words to be read, with the unit of the heading. */
  readonly stir: string;
  /** Whole days from the pour. */
  readonly cureDays: number | undefined;
  /** The columns whose cells are wrong: that is said of them already. */
  readonly misread: ReadonlySet<string>;
}

/** A scent of the table. A row that is wrong stops only runs that use it: its problems come with it. */
export interface KnownScent {
  readonly notes: ScentNotes;
  readonly wrong: readonly Problem[];
}

/** The scents by name. */
export function readScents(table: TableRows<"scents"> | undefined): Map<string, KnownScent> {
  const found = new Map<string, { notes: ScentNotes; wrong: Problem[] }>();
  for (const reader of table ? readersOf(table) : []) {
    const name = sameName(reader.text("scent"));
    const first = found.get(name);
    if (first) {
      // Its limits may be the ones that were meant.
      const text = `${reader.text("scent")} stands twice; the first row is taken`;
      first.wrong.push({ ...reader.look("scent", text), safety: true });
    } else if (name !== "") {
      const notes = notesOf(reader, table as TableRows<"scents">);
      const wrong = reader.wrong.map((one) => (SAFETY.has(one.role ?? "") ? { ...one, safety: true as const } : one));
      found.set(name, { notes, wrong });
    }
  }
  return found;
}

/** The columns that keep people safe. */
const SAFETY: ReadonlySet<string> = new Set(["waxMaximum", "productLimit", "melt", "add", "pour", "flash"]);

function notesOf(reader: RowReader<"scents">, table: TableRows<"scents">): ScentNotes {
  const share = (role: "load" | "waxMaximum" | "productLimit") => {
    const value = reader.number(role);
    if (role !== "load" && value === 1) {
      const text = `${reader.text("scent")} is not restricted here: 1 means 100 %; write 1% or 0.01 if 1 % was meant`;
      reader.wrong.push(reader.look(role, text));
    }
    return value === undefined ? undefined : reader.check(() => (role === "load" ? rate : limit)(role, value));
  };
  const temperature = (role: "melt" | "add" | "pour" | "flash") => {
    const found = readTemperature(reader.text(role), headingOf(table, role));
    if (found && isUnlikelyTemperature(found)) {
      const text = `${reader.text("scent")}: ${roleName("scents", role)} says ${found.words}, outside ${LIKELY_TEMPERATURES}; is it in the other unit?`;
      reader.wrong.push(reader.look(role, text));
    }
    return found;
  };
  const basis = reader.text("basis");
  const cure = reader.number("cure");
  const notes = {
    row: reader.row,
    load: share("load"),
    basis: basis === "" ? undefined : reader.check(() => basisOf("basis", basis)),
    waxMaximum: share("waxMaximum"),
    productLimit: share("productLimit"),
    melt: temperature("melt"),
    add: temperature("add"),
    pour: temperature("pour"),
    flash: temperature("flash"),
    stir: [reader.text("stir"), reader.text("stir") && reader.unit("stir")].filter(Boolean).join(" "),
    cureDays:
      cure === undefined
        ? undefined
        : reader.check(() => {
            if (Number.isInteger(cure) && cure >= 0 && cure <= 3650) return cure;
            throw wrong("cure", `${cure} is no number of days; write whole days`);
          }),
  };
  return { ...notes, misread: new Set(reader.wrong.flatMap(({ role, stops }) => (role && stops ? [role] : []))) };
}
