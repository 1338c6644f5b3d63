import { list } from "../../core/check/list";
import { isoOfDay } from "../../core/label/isoDay";
import { sum } from "../../core/statistics/sum";
import { tidy } from "../../core/tidy";
import { type Counted, countedId } from "../plan/fetchList";
import { wholePieces } from "../plan/uses";
import { sameName } from "../sameName";
import { type Ledger, ledgerOf } from "../stock/ledger";
import { lotsOf, oldestLots } from "../stock/lots";
import { asMoves, type Opening, openingsOf } from "../stock/openings";
import { severalLots } from "../stock/severalLots";
import type { ByUse } from "../tables/byUse";
import { type FittingTables, fittingsOf } from "../tables/fittings";
import type { Items } from "../tables/items";
import type { Move, Moves } from "../tables/moves";
import { AS_TEXT } from "../tables/takenForDay";
import { beyondLots } from "./beyondLots";
import { moveErrors } from "./moveErrors";
import type { PouredRun } from "./poured";

/** So much of a lot of an item that a pour took. */
export interface UsedLot {
  readonly item: string;
  /** Empty where none is known. */
  readonly lot: string;
  readonly use: keyof ByUse<unknown>;
  /** In the unit of the run, or by number. */
  readonly quantity: number;
  /** The same as the table of moves counts it. */
  readonly written: number;
  /** The ids of the pots that hold of it, or may where several lots went into them. */
  readonly pots: readonly string[];
}

/** What a pour took from the shelf, and what is to be said of it beforehand. */
export interface PourMoves {
  /** What On hand says of what has no move yet: it goes into the moves first. */
  readonly openings: readonly Opening[];
  readonly used: readonly UsedLot[];
  /** What was written and does not fit what the moves leave of a lot: to be asked about. */
  readonly asks: readonly string[];
  readonly says: readonly string[];
}

/** What is on hand in front of a pour, and what goes with each vessel. */
export interface Shelf extends FittingTables {
  readonly moves: Moves;
  /** What the tables of items say; nothing where there are none. */
  readonly items?: Items;
}

/**
 * What a poured run took, by item and lot: each ingredient as it was weighed, vessels and what goes with them by number,
 * spoilt candles included. Where no lot is written, the oldest that have some are taken.
 */
export function pourMoves(run: PouredRun, { moves: before, items = new Map(), ...tables }: Shelf): PourMoves {
  const says: string[] = [];
  const needs = [...ingredientsOf(run, says), ...countedOf(run, tables, says)];
  const { openings, says: ofOpenings } = openingsOf(needs, items, before);
  says.push(...ofOpenings);
  const moves = { ...before, rows: [...asMoves(openings, run.date, before.ratio), ...before.rows] };
  const ledger = ledgerOf(moves);
  says.push(...daysForLots(run, ledger));
  const known = needs.map((need) => (need.lot === "" ? [] : written(need, ledger, moves, says)));
  // What was written is gone before the oldest lots are looked for.
  const after = ledgerOf({ ...moves, rows: [...moves.rows, ...known.flat().map(asMove)] });
  const used = needs.flatMap((need, i) =>
    need.lot === "" ? oldest(need, after, moves, run.date, says) : (known[i] as UsedLot[]),
  );
  return { openings, used: together(used), asks: beyondLots(together(known.flat()), ledger, run), says };
}

/** Lots that the spreadsheet may have taken for a day: those that no move knows as they stand. */
function daysForLots({ lotDays }: PouredRun, ledger: Ledger): string[] {
  const known = new Set([...ledger.items.values()].flatMap(({ lots }) => lots.map(({ lot }) => lot)));
  return lotDays.flatMap(({ row, day }) =>
    known.has(String(day))
      ? []
      : [`Row ${row}: a lot stands there as the day ${isoOfDay(day)}. If it was written like 11-26, ${AS_TEXT}`],
  );
}

/** So much of an item, of a lot where one is written. */
type Need = Omit<UsedLot, "written">;

function ingredientsOf({ pots }: PouredRun, says: string[]): Need[] {
  const parts = pots
    .flatMap(({ id, parts }) => parts.map((part) => ({ ...part, pots: [id] })))
    .filter(({ planned, actual }) => (actual ?? planned) > 0);
  for (const { row, label, actual } of parts) {
    if (actual === undefined) says.push(`Row ${row}: no actual weight of ${label}, so it is counted as planned`);
  }
  return gathered(
    parts.map(({ item, lot, planned, actual, pots }) => ({
      ...{ item, lot, pots },
      ...{ use: "weight", quantity: actual ?? planned },
    })),
  );
}

function countedOf({ pots, lots }: PouredRun, tables: FittingTables, says: string[]): Need[] {
  const lines = pots.flatMap(({ id, lines }) => lines.map(({ vessel, count }) => ({ vessel, count, pots: [id] })));
  // What is the wick of one vessel and a component of another stands in the list once.
  const lotOf = (kind: Counted, item: string): string =>
    (kind === "vessel" ? [kind] : [kind, "wick" as const, "component" as const])
      .map((one) => lots.get(countedId(one, item)) ?? "")
      .find((lot) => lot !== "") ?? "";
  const counted = (kind: Counted, item: string, quantity: number, pots: Need["pots"]): Need => ({
    ...{ item, lot: lotOf(kind, item), use: "count", quantity, pots },
  });
  const fittings = lines.flatMap(({ vessel, count, pots }) =>
    fittingsOf(vessel, tables).flatMap(({ kind, item, each }) => {
      if (each !== undefined) return counted(kind, item, count * each, pots);
      says.push(`${item} for ${vessel}: how many one candle takes cannot be read, so none is counted`);
      return [];
    }),
  );
  const whole = (need: Need): Need => ({ ...need, quantity: wholePieces(need.quantity) });
  return gathered([...lines.map(({ vessel, count, pots }) => counted("vessel", vessel, count, pots)), ...fittings]).map(
    whole,
  );
}

/** Each item and lot once. */
const gathered = (needs: readonly Need[]): Need[] =>
  alike(needs)
    .map(
      (some): Need => ({
        ...(some[0] as Need),
        quantity: plainSum(some.map(({ quantity }) => quantity)),
        pots: allPots(some),
      }),
    )
    .filter(({ quantity }) => quantity > 0);

/** Those of one item and lot together, in the order of the first ones. */
function alike<T extends Pick<UsedLot, "item" | "lot" | "use">>(all: readonly T[]): T[][] {
  const found = new Map<string, T[]>();
  for (const one of all) {
    const some = found.get(keyOf(one)) ?? [];
    found.set(keyOf(one), some);
    some.push(one);
  }
  return [...found.values()];
}

const keyOf = ({ item, lot, use }: Pick<UsedLot, "item" | "lot" | "use">): string =>
  JSON.stringify([use, sameName(item), sameName(lot)]);

const allPots = (some: readonly Pick<UsedLot, "pots">[]): string[] => [...new Set(some.flatMap(({ pots }) => pots))];

const plainSum = (values: readonly number[]): number => tidy(sum(values));

/** A lot as it was written beside an ingredient; several in one cell are taken in turn, where all are known. */
function written(need: Need, ledger: Ledger, moves: Moves, says: string[]): UsedLot[] {
  const known = ledger.items.get(sameName(need.item))?.lots.filter(({ lot }) => lot !== "") ?? [];
  const find = (text: string) => known.find(({ lot }) => sameName(lot) === sameName(text))?.lot;
  const ratio = need.use === "weight" ? moves.ratio : 1;
  const of = (lot: string, quantity: number): UsedLot => ({ ...need, lot, quantity, written: tidy(quantity / ratio) });
  const whole = find(need.lot);
  const several = severalLots(need.lot);
  const unknown = several.filter((lot) => find(lot) === undefined);
  if (whole === undefined && several.length > 1 && unknown.length === 0) {
    const lots = several.map((lot) => find(lot) as string);
    const has = lotsOf(ledger, need.item, need.use);
    let open = need.quantity;
    return lots.flatMap((lot, i) => {
      const left = has.find((one) => one.lot === lot)?.quantity ?? 0;
      const part = i === lots.length - 1 ? open : Math.min(open, left);
      open = tidy(open - part);
      return part > 0 ? [of(lot, part)] : [];
    });
  }
  if (whole === undefined) {
    says.push(
      several.length > 1
        ? `${need.item}: ${need.lot} is taken for one lot, for no move says that ${list(unknown, "and")} came in. If these are several, first write down under Receiving what came in of each`
        : `${need.item}: lot ${need.lot} is written, and no move says that it came in`,
    );
  }
  return [of(whole ?? need.lot, need.quantity)];
}

/** The oldest lots of what has none written, and a row without a lot for what no lot has. */
function oldest(need: Need, ledger: Ledger, moves: Moves, today: number, says: string[]): UsedLot[] {
  const { item, use, quantity, pots } = need;
  const errors = moveErrors(moves, item, use);
  const ratio = use === "weight" ? moves.ratio : 1;
  if (errors.length > 0) {
    says.push(`${item}: its moves cannot be added up, so no lot is taken: ${errors[0]?.text}`);
    return [{ ...need, written: tidy(quantity / ratio) }];
  }
  const { taken, lacking } = oldestLots(ledger, item, quantity, use, today);
  const lots = taken.filter(({ lot }) => lot !== "").map(({ lot }) => lot);
  if (lots.length > 0) {
    const are =
      lots.length === 1 ? `the oldest, ${lots[0]}, is taken` : `the oldest, ${lots.join(", then ")}, are taken`;
    says.push(`no lot written for ${item}: ${are}`);
  }
  for (const { lot, past } of taken) {
    if (past !== undefined) says.push(`${item}: lot ${lot} is past its best before`);
  }
  const lines = taken.map(({ lot, quantity, written }): UsedLot => ({ item, use, lot, quantity, written, pots }));
  if (lacking.quantity <= 0) return lines;
  says.push(
    taken.length === 0
      ? `${item}: nothing is on hand by the moves, so its row has no lot`
      : `${item}: the moves have less on hand than was used, so the rest has no lot`,
  );
  return [...lines, { item, use, lot: "", ...lacking, pots }];
}

/** A lot once, whether it was written or found. */
const together = (used: readonly UsedLot[]): UsedLot[] =>
  alike(used).map(
    (some): UsedLot => ({
      ...(some[0] as UsedLot),
      quantity: plainSum(some.map(({ quantity }) => quantity)),
      written: plainSum(some.map(({ written }) => written)),
      pots: allPots(some),
    }),
  );

const asMove = ({ item, lot, quantity, written, use }: UsedLot, i: number): Move => ({
  row: Number.MAX_SAFE_INTEGER - i,
  date: undefined,
  item,
  lot,
  change: { count: -written, weight: -(use === "weight" ? quantity : written) },
  paid: undefined,
  bestBefore: undefined,
  run: "",
  note: "",
});
