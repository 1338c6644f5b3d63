import { plain } from "../../core/check/plain";
import { rate } from "../../core/check/rate";
import { wholeNumber } from "../../core/check/wholeNumber";
import { netLabel } from "../../core/label/netLabel";
import { type Basis, basisOf } from "../../core/scent/basis";
import type { Settings } from "../settings";
import type { KnownScent } from "../tables/readScents";
import type { KnownVessels } from "../tables/readVessels";
import { type Problem, type RowReader, readersOf, sameName, type TableRows } from "../tables/tableReader";
import { rowFill } from "./rowFill";

/** A row of the table that is to be poured. */
export interface PourRow {
  /** Its place below the heading, from 0. */
  readonly row: number;
  readonly vessel: string;
  readonly quantity: number;
  readonly fill: number;
  /** Empty when the candle has no scent. */
  readonly scent: string;
  readonly load: number;
  readonly basis: Basis;
  /** Whether the load stands in a table, in this row or beside the scent, and is not the usual one. */
  readonly isLoadGiven: boolean;
}

/** What the other tables know that a row is read with. */
export interface KnownToRows {
  /** The scents by name. */
  readonly scents: ReadonlyMap<string, KnownScent>;
  /** The vessels by name; undefined without a table of them. */
  readonly vessels: KnownVessels | undefined;
  /** The scents whose load is made by a recipe. */
  readonly recipes: Pick<ReadonlyMap<string, unknown>, "has">;
}

/** The usual settings that serve where a row gives none. */
export type UsualSetting = "waxFactor" | "load" | "basis";

export interface ReadRows {
  readonly rows: PourRow[];
  readonly problems: Problem[];
  /** The scents of all rows that are to be poured, those of wrong rows too, and where each is named first. */
  readonly scents: ReadonlyMap<string, { readonly row: number; readonly scent: string }>;
  /** The usual settings that served any row. */
  readonly usual: ReadonlySet<UsualSetting>;
  /** How many rows name a vessel and no quantity. */
  readonly leftOut: number;
}

/** The rows of a table that are to be poured, and what is wrong with the others. Rows with no quantity are left out. */
export function readRows(table: TableRows<"pour">, known: KnownToRows, settings: Settings): ReadRows {
  const rows: PourRow[] = [];
  const problems: Problem[] = [];
  const scents = new Map<string, { row: number; scent: string }>();
  const usual = new Set<UsualSetting>();
  let leftOut = 0;
  const readers = readersOf(table);
  const scented = table.columns.scent === undefined ? "no column" : readers.some((one) => one.text("scent") !== "");
  for (const reader of readers) {
    if (reader.isBlank("quantity") || reader.number("quantity") === 0) {
      if (reader.text("vessel") !== "") leftOut++;
      continue;
    }
    const scent = reader.text("scent");
    if (!scents.has(sameName(scent))) scents.set(sameName(scent), { row: reader.row, scent });
    if (table.hidden?.includes(reader.row)) reader.wrong.push(reader.look("vessel", HIDDEN));
    const found = readRow(reader, scented, known, settings, usual);
    if (found) rows.push(found);
    problems.push(...reader.wrong);
  }
  return { rows, problems, scents, usual, leftOut };
}

/** The same words for each such row: the pane says them once for all. */
const HIDDEN = "hidden, and poured all the same; show it, or clear its quantity";

function readRow(
  reader: RowReader<"pour">,
  /** Whether any row names a scent. */
  scented: boolean | "no column",
  known: KnownToRows,
  settings: Settings,
  usual: Set<UsualSetting>,
): PourRow | undefined {
  const vessel = reader.text("vessel");
  if (vessel === "") reader.stop("vessel", "the cell is blank; give the vessel a name");
  const typed = reader.number("quantity");
  const quantity = typed === undefined ? undefined : wholeNumber(typed);
  if (typed !== undefined && !(quantity !== undefined && quantity > 0)) {
    reader.stop("quantity", `${plain(typed)} is not a whole number above 0`);
  }
  const isUnknown = vessel !== "" && known.vessels && !known.vessels.has(sameName(vessel));
  const isNotFound = isUnknown && reader.errorOf("fill") === "#N/A";
  if (isNotFound) reader.stop("vessel", `${vessel} is not in the table of vessels; fix the name, or add it there`);
  const fill = isNotFound ? undefined : rowFill(reader, known.vessels, settings, usual);
  const scent = reader.text("scent");
  const { notes, wrong } = known.scents.get(sameName(scent)) ?? {};
  // A row that names no scent where others do is poured without: a load is never guessed onto it.
  const isBare = scented !== "no column" && scent === "";
  const own = reader.number("load");
  // A load that is wrong in the table of scents is fixed there, not in each row that repeats it.
  const isWrongThere = wrong?.some(({ role, stops }) => role === "load" && stops) && !(own !== undefined && own < 1);
  if (isWrongThere) return undefined;
  const isMade = known.recipes.has(sameName(scent));
  if (own === undefined && notes?.load === undefined && !isBare && !isMade) usual.add("load");
  const load = reader.check(() => rate("load", own ?? (isBare ? 0 : (notes?.load ?? settings.load))));
  const named = reader.text("basis") || notes?.basis;
  if (!named && load !== 0) usual.add("basis");
  const basis = reader.check(() => basisOf("basis", named || settings.basis));
  // A fill that no label can declare is a slip of its unit.
  if (fill !== undefined) reader.check(() => netLabel(fill, settings.unit, settings.label));
  if (reader.wrong.some(({ stops }) => stops)) return undefined;
  if (quantity === undefined || fill === undefined || load === undefined || basis === undefined) return undefined;
  if (isBare && scented && reader.isBlank("load")) {
    const text = `${vessel} names no scent and is poured without; a scent with a load of 0 % would say that it is meant so`;
    reader.wrong.push(reader.look("scent", text));
  }
  const isLoadGiven = own !== undefined || notes?.load !== undefined;
  return { row: reader.row, vessel, quantity, fill, scent, load, basis, isLoadGiven };
}
