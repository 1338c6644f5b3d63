import { sameName } from "../sameName";
import type { Move, Moves } from "../tables/moves";
import { fromMillionths, toMillionths } from "./millionths";

/** A lot of an item, as its moves add up. Amounts are whole millionths of the unit that the table of moves is in. */
export interface LedgerLot {
  /** As it is written first; empty for what moved without a lot. */
  readonly lot: string;
  readonly received: number;
  readonly used: number;
  /** Below 0 where more went out than came in. */
  readonly left: number;
  /** The day it first came in; undefined where none is known. */
  readonly since: number | undefined;
  /** The one that was written last: a lot that was tested anew gets a row with its new day. */
  readonly bestBefore: number | undefined;
  /** Money for what was received with a price, and how much that was. */
  readonly paid: number;
  readonly paidFor: number;
  /** The last row with a price: where it stands, its day, and the price of one unit of the table. */
  readonly lastPaid: { readonly row: number; readonly date: number; readonly unitPrice: number } | undefined;
}

/** An item with its lots, the oldest first. */
export interface LedgerItem {
  readonly item: string;
  readonly lots: readonly LedgerLot[];
}

/** What the table of moves adds up to, by item. */
export interface Ledger {
  readonly moves: Moves;
  readonly items: ReadonlyMap<string, LedgerItem>;
}

type Growing = { -readonly [K in keyof LedgerLot]: LedgerLot[K] } & { dated: number };

/** Adds the moves up. The order of the rows does not matter but where two are of one day: then the lower is the later. */
export function ledgerOf(moves: Moves): Ledger {
  const found = new Map<string, { item: string; lots: Map<string, Growing> }>();
  const keyOf = remembered(sameName);
  for (const move of moves.rows) {
    const key = keyOf(move.item);
    const item = found.get(key) ?? { item: move.item, lots: new Map() };
    found.set(key, item);
    const lotKey = keyOf(move.lot);
    const lot = item.lots.get(lotKey) ?? begun(move);
    item.lots.set(lotKey, lot);
    add(lot, move);
  }
  const items = [...found].map(([key, { item, lots }]) => {
    return [key, { item, lots: [...lots.values()].sort(byAge).map(finished) }] as const;
  });
  return { moves, items: new Map(items) };
}

const begun = ({ lot }: Move): Growing => ({
  ...{ lot, dated: NEVER, received: 0, used: 0, left: 0, paid: 0, paidFor: 0 },
  ...{ since: undefined, bestBefore: undefined, lastPaid: undefined },
});

function add(lot: Growing, { row, date, change, paid, bestBefore }: Move): void {
  const amount = toMillionths(change.count);
  const day = date ?? NEVER;
  if (amount > 0) {
    lot.received += amount;
    if (date !== undefined && (lot.since === undefined || date < lot.since)) lot.since = date;
  } else lot.used -= amount;
  lot.left += amount;
  if (bestBefore !== undefined && day >= lot.dated) {
    lot.bestBefore = bestBefore;
    lot.dated = day;
  }
  if (paid === undefined || amount <= 0) return;
  lot.paid += paid;
  lot.paidFor += amount;
  if (!lot.lastPaid || day >= lot.lastPaid.date) {
    lot.lastPaid = { row, date: day, unitPrice: paid / fromMillionths(amount) };
  }
}

/** The day of a row without one: before all others. */
const NEVER = Number.NEGATIVE_INFINITY;

/** The oldest first; what has no day comes last. Those of one day stay as their rows stand. */
const byAge = (a: Growing, b: Growing): number => {
  const [x, y] = [a.since ?? Number.POSITIVE_INFINITY, b.since ?? Number.POSITIVE_INFINITY];
  return x === y ? 0 : x - y;
};

const finished = ({ dated: _, ...lot }: Growing): LedgerLot => lot;

/** A function that is asked the same thing many times over. */
export function remembered<T>(work: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const found = known.get(text);
    if (found !== undefined) return found;
    const made = work(text);
    known.set(text, made);
    return made;
  };
}
