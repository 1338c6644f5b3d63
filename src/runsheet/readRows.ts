import { aboveZero } from "../core/check/aboveZero";
import { plain } from "../core/check/plain";
import { rate } from "../core/check/rate";
import { fillWeight } from "../core/fill/fillWeight";
import { netLabel } from "../core/label/netLabel";
import { type Basis, basisOf } from "../core/scent/basis";
import type { ScentNotes } from "./readScents";
import type { Settings } from "./settings";
import { type Problem, type RowReader, readersOf, sameName, type TableRows } from "./tableReader";

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
}

/** What a row's scent is known for elsewhere. */
export type NotesOf = (scent: string) => ScentNotes | undefined;

/** The rows of a table that are to be poured, and what is wrong with the others. Rows with no quantity are left out. */
export function readRows(
  table: TableRows<"pour">,
  notesOf: NotesOf,
  settings: Settings,
): { rows: PourRow[]; problems: Problem[] } {
  const good: PourRow[] = [];
  const problems: Problem[] = [];
  for (const reader of readersOf(table)) {
    if (reader.isBlank("quantity") || reader.number("quantity") === 0) continue;
    const found = readRow(reader, table.columns.scent !== undefined, notesOf, settings);
    if (found) good.push(found);
    problems.push(...reader.wrong);
  }
  return { rows: good, problems };
}

function readRow(
  reader: RowReader<"pour">,
  namesScents: boolean,
  notesOf: NotesOf,
  settings: Settings,
): PourRow | undefined {
  const vessel = reader.text("vessel");
  if (vessel === "") reader.stop("vessel", "the cell is blank; give the vessel a name");
  const quantity = reader.number("quantity");
  if (quantity !== undefined && !(Number.isInteger(quantity) && quantity > 0)) {
    reader.stop("quantity", `${plain(quantity)} is not a whole number above 0`);
  }
  const fill = fillOf(reader, settings);
  const scent = reader.text("scent");
  const notes = notesOf(sameName(scent));
  // A row that names no scent where others do is poured without: a load is never guessed onto it.
  const usual = namesScents && scent === "" ? 0 : (notes?.load ?? settings.load);
  const load = reader.check(() => rate("load", reader.number("load") ?? usual));
  const basis = reader.check(() => basisOf("basis", reader.text("basis") || notes?.basis || settings.basis));
  // A fill that no label can declare is a slip of its unit.
  if (fill !== undefined) reader.check(() => netLabel(fill, settings.unit, settings.label));
  if (reader.wrong.length > 0) return undefined;
  if (quantity === undefined || fill === undefined || load === undefined || basis === undefined) return undefined;
  return { row: reader.row, vessel, quantity, fill, scent, load, basis };
}

/** The fill of a row: its own fill weight, else its water weight times its own or the usual factor. */
function fillOf(reader: RowReader<"pour">, settings: Settings): number | undefined {
  if (reader.isBlank("fill") && reader.isBlank("water")) {
    reader.stop("fill", "neither a fill weight nor a water weight is given; weigh the water the vessel holds");
    return undefined;
  }
  if (!reader.isBlank("fill")) {
    const fill = reader.number("fill");
    return fill === undefined ? undefined : reader.check(() => aboveZero("fill", fill));
  }
  const [water, factor] = [reader.number("water"), reader.number("factor") ?? settings.waxFactor];
  return water === undefined ? undefined : reader.check(() => fillWeight(aboveZero("water", water), factor));
}
