import { limit } from "../core/check/limit";
import { rate } from "../core/check/rate";
import { wrong } from "../core/check/wrong";
import { type Basis, basisOf } from "../core/scent/basis";
import { celsius } from "../core/units/celsius";
import { type Problem, type RowReader, readersOf, sameName, type TableRows } from "./tableReader";

/** What the table of scents says of one. Temperatures and times are words to be read, with the unit of their heading. */
export interface ScentNotes {
  readonly load: number | undefined;
  readonly basis: Basis | undefined;
  /** The most the wax holds, of wax. */
  readonly waxMaximum: number | undefined;
  /** The most the scent's documents allow, of total. */
  readonly productLimit: number | undefined;
  readonly melt: string;
  readonly add: string;
  readonly pour: string;
  readonly stir: string;
  readonly flash: string;
  /** Whether the scent is added at its flash point or above; false where the two cannot be compared. */
  readonly isAddedHot: boolean;
  /** Whole days from the pour. */
  readonly cureDays: number | undefined;
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
      first.wrong.push(reader.look("scent", `${reader.text("scent")} stands twice; the first row is taken`));
    } else if (name !== "") found.set(name, { notes: notesOf(reader), wrong: reader.wrong });
  }
  return found;
}

function notesOf(reader: RowReader<"scents">): ScentNotes {
  const share = (role: "load" | "waxMaximum" | "productLimit") => {
    const value = reader.number(role);
    if (role !== "load" && value === 1) {
      const text = `${reader.text("scent")} is not restricted here: 1 means 100 %; write 1% or 0.01 if 1 % was meant`;
      reader.wrong.push(reader.look(role, text));
    }
    return value === undefined ? undefined : reader.check(() => (role === "load" ? rate : limit)(role, value));
  };
  const words = (role: "melt" | "add" | "pour" | "stir" | "flash") =>
    [reader.text(role), reader.text(role) && reader.unit(role)].filter(Boolean).join(" ");
  const basis = reader.text("basis");
  const cure = reader.number("cure");
  const isAddedHot = addedHot(reader);
  if (isAddedHot) {
    const text = `${reader.text("scent")} is added at ${words("add")}, and its flash point is ${words("flash")}; keep below it, or follow the supplier's documents`;
    reader.wrong.push(reader.look("add", text));
  }
  return {
    load: share("load"),
    basis: basis === "" ? undefined : reader.check(() => basisOf("basis", basis)),
    waxMaximum: share("waxMaximum"),
    productLimit: share("productLimit"),
    melt: words("melt"),
    add: words("add"),
    pour: words("pour"),
    stir: words("stir"),
    flash: words("flash"),
    isAddedHot,
    cureDays:
      cure === undefined
        ? undefined
        : reader.check(() => {
            if (Number.isInteger(cure) && cure >= 0 && cure <= 3650) return cure;
            throw wrong("cure", `${cure} is no number of days; write whole days`);
          }),
  };
}

/** Whether both temperatures are numbers in a known unit, and the scent is added at its flash point or above. */
function addedHot(reader: RowReader<"scents">): boolean {
  const [add, flash] = (["add", "flash"] as const).map((role): number => {
    const [text, unit] = [reader.text(role), reader.unit(role)];
    return text === "" || !/^[CF]$/i.test(unit) ? Number.NaN : celsius(Number(text), role, unit);
  }) as [number, number];
  return add >= flash;
}
