import { sameName } from "../sameName";
import type { Use } from "../tables/byUse";
import type { Ledger, LedgerLot } from "./ledger";
import { fromMillionths, toMillionths } from "./millionths";

/** A lot that has some left. Quantity and price are by the unit of what was asked for: a weight, or one piece. */
export interface StockLot {
  readonly lot: string;
  readonly quantity: number;
  readonly since: number | undefined;
  readonly bestBefore: number | undefined;
  /** Undefined where no price was written for any of it. */
  readonly unitPrice: number | undefined;
}

/** The lots of an item that have some left, the oldest first. */
export function lotsOf(ledger: Ledger, item: string, use: Use): StockLot[] {
  const ratio = ratioOf(ledger, use);
  return inStock(ledger.items.get(sameName(item))?.lots ?? []).map(({ lot, left }) => ({
    lot: lot.lot,
    quantity: fromMillionths(left) * ratio,
    since: lot.since,
    bestBefore: lot.bestBefore,
    unitPrice: lot.paidFor > 0 ? lot.paid / fromMillionths(lot.paidFor) / ratio : undefined,
  }));
}

/** How much of an item its moves leave; undefined where it has none. It is below 0 where more went out than came in. */
export function leftOf(ledger: Ledger, item: string, use: Use): number | undefined {
  const lots = ledger.items.get(sameName(item))?.lots;
  return lots && fromMillionths(lots.reduce((total, { left }) => total + left, 0)) * ratioOf(ledger, use);
}

/** Lots of an item of which more went out than came in: a receipt is missing, or a lot is not the one that was taken. */
export function overdrawn(ledger: Ledger, item: string): LedgerLot[] {
  return (ledger.items.get(sameName(item))?.lots ?? []).filter(({ lot, left }) => left < 0 && lot !== "");
}

/** So much of a lot. */
export interface Taken {
  readonly lot: string;
  /** In the unit of what was asked for. */
  readonly quantity: number;
  /** The same as the table of moves counts it: what a row for it has in its column of changes, with a minus before it. */
  readonly written: number;
  /** The day its best before was, where that is over. */
  readonly past: number | undefined;
}

/**
 * The lots that a quantity of an item comes from where nobody wrote one: the oldest that have some, one after the
 * other. Lots past their best before are not passed over: they are taken in their turn, and that is to be said.
 * @param today a day as spreadsheets count them
 * @returns also how much no lot has; 0 when all of it is there
 */
export function oldestLots(
  ledger: Ledger,
  item: string,
  quantity: number,
  use: Use,
  today: number,
): { readonly taken: readonly Taken[]; readonly lacking: Pick<Taken, "quantity" | "written"> } {
  const ratio = ratioOf(ledger, use);
  const both = (millionths: number) => {
    const written = fromMillionths(millionths);
    return { quantity: written * ratio, written };
  };
  let open = toMillionths(quantity / ratio);
  const taken: Taken[] = [];
  for (const { lot, left } of inStock(ledger.items.get(sameName(item))?.lots ?? [])) {
    if (open <= 0) break;
    const part = Math.min(left, open);
    open -= part;
    taken.push({ lot: lot.lot, ...both(part), past: isPast(lot, today) ? lot.bestBefore : undefined });
  }
  return { taken, lacking: both(Math.max(0, open)) };
}

/** Whether the best before of a lot is over: the day itself is still good. */
export const isPast = ({ bestBefore }: Pick<StockLot, "bestBefore">, today: number): boolean =>
  bestBefore !== undefined && bestBefore < today;

/** Lots that have some left. What went out without a lot, or beyond what a lot had, came from the oldest of the others. */
function inStock(lots: readonly LedgerLot[]): { readonly lot: LedgerLot; readonly left: number }[] {
  let owed = lots.reduce((total, { left }) => total + Math.max(0, -left), 0);
  return lots.flatMap((lot) => {
    if (lot.left <= 0) return [];
    const paidBack = Math.min(owed, lot.left);
    owed -= paidBack;
    return lot.left > paidBack ? [{ lot, left: lot.left - paidBack }] : [];
  });
}

const ratioOf = ({ moves }: Ledger, use: Use): number => (use === "weight" ? moves.ratio : 1);
