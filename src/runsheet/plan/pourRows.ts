import { rate } from "../../core/check/rate";
import { isoOfDay } from "../../core/label/isoDay";
import { netLabel } from "../../core/label/netLabel";
import { type Basis, basisOf } from "../../core/scent/basis";
import { isError, type Problem } from "../problem";
import { sameName } from "../sameName";
import type { Settings, UsualSetting } from "../settings";
import type { Batch, BatchRow } from "../tables/batch";
import type { SaidBasis } from "../tables/entry";
import { isNoScent } from "../tables/isNoScent";
import { type FieldOf, fieldName } from "../tables/registry";
import { RowNotes } from "../tables/rowNotes";
import type { Scents } from "../tables/scents";
import { takenForDay } from "../tables/takenForDay";
import type { Vessels } from "../tables/vessels";
import { notInVessels, rowFill } from "./rowFill";

/** A row of the batch that is to be poured, with what other tables and the settings add to it. */
export interface PourRow {
  /** Its place below the heading, from 0. */
  readonly row: number;
  readonly vessel: string;
  readonly quantity: number;
  readonly fill: number;
  /** What the row itself says of its vessel, where it does. */
  readonly water?: number | undefined;
  readonly factor?: number | undefined;
  /** Empty when the candle has no scent. */
  readonly scent: string;
  /** Empty for the usual one. */
  readonly wax: string;
  readonly load: number;
  readonly basis: Basis;
  /** The table that gives the load: the batch, or that of the scents. Undefined where the default is taken. */
  readonly loadFrom: "pour" | "scents" | undefined;
  /** The basis that the heading of that load names. */
  readonly saidBasis: SaidBasis | undefined;
}

/** What the other tables know that a row is read with. */
export interface KnownToRows {
  readonly scents: Scents;
  /** Undefined without a table of them. */
  readonly vessels: Vessels | undefined;
  /** The scents whose load is made by a recipe. */
  readonly recipes: Pick<ReadonlyMap<string, unknown>, "has">;
}

export interface PourRows {
  readonly rows: readonly PourRow[];
  readonly problems: readonly Problem[];
  /** The scents of all rows that are to be poured, those of wrong rows too, and where each is named first. */
  readonly scents: ReadonlyMap<string, { readonly row: number; readonly scent: string }>;
  /** The defaults that served any row. */
  readonly usual: ReadonlySet<UsualSetting>;
  /** How many rows name a vessel and no quantity. */
  readonly leftOut: number;
}

/** What rows are completed by, and the defaults that have served so far. */
export interface Completing {
  readonly batch: Batch;
  readonly known: KnownToRows;
  readonly settings: Settings;
  readonly usual: Set<UsualSetting>;
}
export type BatchNotes = RowNotes<FieldOf<"pour">>;

/** The rows that are to be poured, and what is wrong with the others. Rows with no quantity are left out. */
export function pourRows(batch: Batch | undefined, known: KnownToRows, settings: Settings): PourRows {
  const rows: PourRow[] = [];
  const problems: Problem[] = [];
  const scents = new Map<string, { row: number; scent: string }>();
  const usual = new Set<UsualSetting>();
  if (!batch) return { rows, problems, scents, usual, leftOut: 0 };
  const isCounted = ({ quantity }: BatchRow) => !quantity.isBlank && quantity.value !== 0;
  for (const cells of batch.rows.filter(isCounted)) {
    const notes: BatchNotes = new RowNotes("pour", cells.row, (field) => fieldName("pour", field));
    const row = pourRow(cells, notes, { batch, known, settings, usual });
    if (row) rows.push(row);
    problems.push(...notes.problems);
    const scent = scentOf(cells, known);
    if (!scents.has(sameName(scent))) scents.set(sameName(scent), { row: cells.row, scent });
  }
  const leftOut = batch.rows.filter((cells) => !isCounted(cells) && cells.vessel.value !== "").length;
  return { rows, problems, scents, usual, leftOut };
}

/** The same words for each such row: the pane says them once for all. */
const HIDDEN = "hidden, and poured all the same; show it, or clear its quantity";

/** What stands where a row adds the others up. */
const TOTALS = /^((grand|sub|over-?all)[\s-]*)?(total|sum)s?\s*:?$/i;

function pourRow(cells: BatchRow, notes: BatchNotes, completing: Completing): PourRow | undefined {
  const { known, settings } = completing;
  const quantity = notes.take(cells.quantity);
  const day = takenForDay(quantity ?? null);
  if (day !== undefined) {
    notes.problems.push(notes.warning("quantity", `${day} candles, or the day ${isoOfDay(day)} shown as a number?`));
  }
  notes.take(cells.scent);
  const scent = scentOf(cells, known);
  const wax = notes.take(cells.wax) ?? "";
  if (cells.isHidden) notes.problems.push(notes.warning("vessel", HIDDEN));
  const vessel = notes.take(cells.vessel) ?? "";
  if (vessel === "") notes.error("vessel", "the cell is blank; give the vessel a name");
  const unknownTo = vessel !== "" && !known.vessels?.has(sameName(vessel)) ? known.vessels : undefined;
  if (TOTALS.test(vessel) && !known.vessels?.has(sameName(vessel))) {
    notes.error("vessel", `${vessel} looks like a row of totals; take it out of the table, or clear its quantity`);
    return undefined;
  }
  const isNotFound = unknownTo !== undefined && cells.fill.errorCode === "#N/A";
  if (isNotFound) notes.error("vessel", notInVessels(vessel, unknownTo));
  const fill = isNotFound ? undefined : rowFill(cells, vessel, notes, completing);
  // A fill that no label can declare is a slip of its unit.
  if (fill !== undefined) notes.check("fill", () => netLabel(fill, settings.unit, settings.label));
  const share = rowLoad(cells, notes, completing);
  if (!share || notes.problems.some(isError) || quantity === undefined || fill === undefined) return undefined;
  if (share.isBare && cells.load.isBlank && completing.batch.namesScents) {
    const text = `${vessel} names no scent and is poured without; a scent with a load of 0 % would say that it is meant so`;
    notes.problems.push(notes.warning("scent", text));
  }
  const { isBare, ...load } = share;
  const { waterRatio } = completing.batch;
  const [typed, factor] = [cells.water.value, cells.factor.value];
  const water = typed === undefined || waterRatio === undefined ? undefined : typed * waterRatio;
  return { row: cells.row, vessel, quantity, fill, water, factor, scent, wax, ...load };
}

/** The scent of a row; empty where its words say that there is none, and no table knows them as a name. */
function scentOf({ scent: { value = "" } }: BatchRow, { scents, recipes }: KnownToRows): string {
  const name = sameName(value);
  return isNoScent(value) && !scents.has(name) && !recipes.has(name) ? "" : value;
}

type RowLoad = Pick<PourRow, "load" | "basis" | "loadFrom" | "saidBasis">;

/** The load of a row with its basis: its own; else that of its scent; else the default. */
function rowLoad(
  cells: BatchRow,
  notes: BatchNotes,
  { batch, known, settings, usual }: Completing,
): (RowLoad & { readonly isBare: boolean }) | undefined {
  const scent = cells.scent.value ?? "";
  const { notes: noted, wrong } = known.scents.get(sameName(scent)) ?? {};
  // A row that names no scent where others do is poured without: a load is never guessed onto it.
  const isBare = batch.hasScents && scent === "";
  const own = notes.take(cells.load);
  // A load that is wrong in the table of scents is fixed there, not in each row that repeats it.
  const isWrongThere = wrong?.some((one) => one.field === "load" && isError(one)) && !(own !== undefined && own < 1);
  if (isWrongThere) return undefined;
  const isMade = known.recipes.has(sameName(scent));
  const isNone = isNoScent(scent) && !isMade;
  const isGiven = own !== undefined || noted?.load !== undefined;
  if (!isGiven && !isBare && !isMade && !isNone) usual.add("load");
  const elsewhere = isBare ? 0 : (noted?.load ?? (isNone ? 0 : settings.load));
  const load = notes.check("load", () => rate("load", own ?? elsewhere));
  if (isNone && load !== undefined && load > 0) {
    const where = own === undefined ? " in the table of scents" : "";
    notes.error("load", `the scent is "${scent}" and has a load${where}; name the scent, or write 0 %`);
    return undefined;
  }
  // The same words for each such row: the pane says them once for all.
  if (isNone && !isGiven) notes.problems.push(notes.warning("scent", `"${scent}" is taken for no scent, load 0 %`));
  const named = notes.take(cells.basis) || noted?.basis;
  if (!named && load !== 0) usual.add("basis");
  const basis = notes.check("basis", () => basisOf("basis", named || settings.basis));
  if (load === undefined || basis === undefined) return undefined;
  const loadFrom = own !== undefined ? "pour" : noted?.load !== undefined ? "scents" : undefined;
  const said = loadFrom === "pour" ? batch.saidBasis : loadFrom && noted?.saidBasis;
  // A heading that names neither is asked about where nothing else does.
  const saidBasis = named && said?.basis === "unclear" ? undefined : said;
  return { load, basis, loadFrom, saidBasis, isBare };
}
