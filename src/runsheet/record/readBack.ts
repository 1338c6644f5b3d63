import { plain } from "../../core/check/plain";
import { isDay } from "../../core/label/calendarDay";
import { sum } from "../../core/statistics/sum";
import type { CellValue } from "../../sheet/sheet";
import { percent } from "../percent";
import {
  AT,
  columnsOn,
  DATE,
  lotIn,
  type RowKind,
  type SheetColumn,
  scaleOn,
  scentIn,
  scentInTotals,
} from "../sheet/layout";
import { nameIn } from "../sheet/potWords";
import { besideLabel, MADE_BY, NOTES } from "./handwritten";
import type { LotDay, PouredLine, PouredPart, PouredPot, PouredRun, Weighed } from "./poured";
import { ABOVE_0, AT_LEAST_0, SheetRow, WHOLE } from "./sheetRow";

/**
 * Reads a run sheet as it is now, by its column of keys: rows put in between, or blocks moved, change nothing.
 * Undefined when the cells are no run sheet.
 * @param cells of the sheet from A1 on
 */
export function readBack(cells: readonly (readonly CellValue[])[]): PouredRun | undefined {
  const lot = lotIn(cells[0]?.[AT.name]);
  const dated = cells.findIndex((row) => row[AT.name] === DATE);
  const date = cells[dated]?.[AT.figure];
  const scale = scaleOn(cells);
  if (lot === undefined || typeof date !== "number" || scale === undefined) return undefined;
  const noDay = isDay(date) ? [] : [`Row ${dated + 1}, date: "${plain(date)}" is no day; write one such as 2026-11-26`];
  const at = columnsOn(cells);
  const rows = cells.map((row, i) => new SheetRow(row, i + 1, at));
  const pots: OpenPot[] = [];
  const cure = new Map<string, number>();
  const lots = listedLots(rows);
  for (const row of rows) {
    const days = row.kind === "scents" ? row.number("days") : undefined;
    if (days !== undefined) cure.set(scentInTotals(row.label), days);
    if (row.kind === "pot") pots.push(openPot(row.named("pot")));
    const pot = pots.at(-1);
    // What stands above the first pot is the head.
    if (!pot) continue;
    if (row.kind === "cure") cure.set(row.label, row.number("days") ?? 0);
    else readInto(pot, row, lots);
  }
  return {
    lot,
    date: noDay.length > 0 ? 0 : date,
    unit: scale.unit,
    division: typeof scale.division === "number" ? scale.division : 0,
    pots: numbered(pots.map(closed)),
    lots,
    lotDays: rows.flatMap(lotDaysIn),
    cure,
    madeBy: besideLabel(cells, MADE_BY),
    notes: besideLabel(cells, NOTES),
    wrong: [...noDay, ...rows.flatMap(({ wrong }) => wrong)],
    unplanned: [...noDay, ...rows.flatMap(({ unplanned }) => unplanned)],
  };
}

/** What is written in the list of what to fetch, where the things have their ids: sheets before had no room there. */
function listedLots(rows: readonly SheetRow[]): ReadonlyMap<string, string> {
  return new Map(
    rows
      .filter(({ kind }) => kind === "thing")
      .flatMap((row) => listedIn(row).map(({ id, lot }): [string, string] => [id, row.words(lot).trim()]))
      .filter(([, lot]) => lot !== ""),
  );
}

/** The things in a row of the list, and the columns of their lots. */
const listedIn = (row: SheetRow): { readonly id: string; readonly lot: "lot" | "lotRight" }[] =>
  [
    { id: row.text("thing"), lot: "lot" as const },
    { id: row.text("thingRight"), lot: "lotRight" as const },
  ].filter(({ id }) => id !== "");

/** Lots that the spreadsheet may have taken for a day. */
const lotDaysIn = (row: SheetRow): LotDay[] =>
  lotColumns(row).flatMap((column) => {
    const day = row.takenForDay(column);
    return day === undefined ? [] : [{ row: row.row, day }];
  });

function lotColumns(row: SheetRow): SheetColumn[] {
  if (row.kind === "thing") return listedIn(row).map(({ lot }) => lot);
  return isIngredient(row.kind) ? ["lotUsed"] : [];
}

const isIngredient = (kind: RowKind | undefined): kind is PouredPart["sort"] =>
  kind === "wax" || kind === "scent" || kind === "additive";

/** A pot while its rows are read. */
interface OpenPot {
  readonly title: string;
  readonly scent: string;
  /** The shares of its scent by their basis. */
  readonly shares: Map<string, number>;
  readonly parts: PouredPart[];
  readonly remarks: string[];
  readonly steps: Map<string, string>;
  readonly done: string[];
  readonly lines: PouredLine[];
}

function openPot(title: string): OpenPot {
  return {
    title,
    scent: scentIn(title),
    shares: new Map(),
    parts: [],
    remarks: [],
    steps: new Map(),
    done: [],
    lines: [],
  };
}

function readInto(pot: OpenPot, row: SheetRow, lots: ReadonlyMap<string, string>): void {
  const { kind } = row;
  if (isIngredient(kind)) pot.parts.push(partIn(row, kind, lots));
  if (kind === "scent") {
    const [share, basis] = [row.number("share") ?? 0, row.text("basis")];
    if (share > 0) pot.shares.set(basis, (pot.shares.get(basis) ?? 0) + share);
  }
  if (kind === "weighed" || kind === "loads") pot.remarks.push(row.text("loadRemark"));
  if (kind && BESIDE_STEPS.has(kind)) readStep(pot, row);
  if (kind === "vessel") pot.lines.push(lineIn(row));
}

/** The rows of a pot in which a step may stand, beside something else or alone. */
const BESIDE_STEPS: ReadonlySet<RowKind> = new Set(["wax", "scent", "additive", "melted", "loads", "step"]);

function readStep(pot: OpenPot, row: SheetRow): void {
  const step = row.text("step") || (row.kind === "step" ? row.label : "");
  // Written before, the flash point stood beside the target.
  const target = row.words("target").replace(/ \(flash .*\)$/, "");
  if (step === "") return;
  if (target !== "") pot.steps.set(step, target);
  const done = [row.words("temperature").trim(), row.time("time")].filter((one) => one !== "");
  if (done.length > 0) pot.done.push(`${step} ${done.join(", ")}`);
}

function partIn(row: SheetRow, sort: PouredPart["sort"], lots: ReadonlyMap<string, string>): PouredPart {
  const planned = row.needed("planned", "to weigh", AT_LEAST_0);
  const actual = row.optional("actual", "actual weight", AT_LEAST_0);
  const lot = row.words("lotUsed").trim() || (lots.get(row.text("thing")) ?? "");
  const label = row.named("ingredient");
  return { sort, label, item: nameIn(label, sort), lot, row: row.row, planned, actual };
}

function lineIn(row: SheetRow): PouredLine {
  const count = row.needed("count", "count", WHOLE);
  const fill = row.needed("fill", "fill", ABOVE_0);
  const good = row.optional("good", "good candles", WHOLE);
  if (good !== undefined && good > count) {
    row.note("good candles", `${good} are more than the count of ${count}; raise the count or fix it`);
  }
  const weighed = row.optional("weighed", "weight of one", ABOVE_0);
  return { row: row.row, vessel: row.named("vessel"), count, fill, good, weighed };
}

/** Pots with what the log knows them by: a scent that is poured at two loads has two first pots. */
function numbered(pots: readonly Omit<PouredPot, "id">[]): PouredPot[] {
  const seen = new Map<string, number>();
  return pots.map((pot) => {
    // In tables a semicolon stands between pots.
    const title = pot.title.replaceAll(";", ",");
    const count = (seen.get(title) ?? 0) + 1;
    seen.set(title, count);
    return { ...pot, id: count === 1 ? title : `${title} (${count})` };
  });
}

function closed({ shares, remarks, ...pot }: OpenPot): Omit<PouredPot, "id"> {
  return {
    ...pot,
    load: [...shares].map(([basis, share]) => `${percent(share)} % ${basis}`).join(" + "),
    remark: remarks.filter((remark) => remark !== "").join(" "),
    wax: together(pot.parts, "wax"),
    scentWeight: together(pot.parts, "scent"),
  };
}

/** All parts of a sort together. */
function together(parts: readonly PouredPart[], sort: PouredPart["sort"]): Weighed {
  const own = parts.filter((part) => part.sort === sort);
  const actual = own.map((part) => part.actual);
  return {
    planned: sum(own.map(({ planned }) => planned)),
    actual: actual.length === 0 || actual.includes(undefined) ? undefined : sum(actual as number[]),
  };
}
