import { plain } from "../../core/check/plain";
import { largest, least } from "../../core/longLists";
import { tidy } from "../../core/tidy";
import { amountWords } from "../amountWords";
import { isError, type Problem } from "../problem";
import { sameName } from "../sameName";
import type { Settings } from "../settings";
import type { ByUse, Use } from "../tables/byUse";
import type { Item, Items, Offer } from "../tables/items";
import type { Moves } from "../tables/moves";
import { joinItems } from "./joinItems";
import { type Ledger, ledgerOf } from "./ledger";
import { lotPrice } from "./lotPrice";
import { isPast, leftOf, lotsOf, overdrawn, type StockLot } from "./lots";
import { isInMoves, isSame } from "./openings";

/** What is known of an item: on the shelf, on sale, and how little of it there should be. */
export interface Supply {
  readonly item: string;
  /** What can be used: lots past their best before are not in it. Undefined where nobody wrote it. */
  readonly onHand: number | undefined;
  /** Lots that are there and past their best before. */
  readonly past: readonly StockLot[];
  readonly offers: readonly Offer[];
  readonly reorderBelow: number | undefined;
  /** Why its stock is not known, and what is doubtful about it. */
  readonly wrong: readonly Problem[];
  readonly looks: readonly Problem[];
}

/** What one unit costs, or why that is not known. */
export interface PriceFound {
  readonly price: number | undefined;
  readonly wrong: readonly Problem[];
  readonly looks: readonly Problem[];
}

/** The tables that say something of items. */
export interface SupplyRows {
  readonly items?: Items | undefined;
  readonly stock?: Items | undefined;
  readonly prices?: Items | undefined;
  readonly moves?: Moves | undefined;
}

/** All that the tables say of items: those of the table of items, and of those that have moves what their lots say. */
export class Supplies {
  private readonly items: Items;
  private readonly ledger: Ledger | undefined;

  constructor(
    private readonly rows: SupplyRows,
    private readonly method: Settings["stockPrice"],
    /** Undefined where nobody said: then no lot is past its best before. */
    private readonly today: number | undefined,
  ) {
    this.items = joinItems([rows.items, rows.stock, rows.prices].flatMap((one) => one ?? []));
    this.ledger = rows.moves && ledgerOf(rows.moves);
  }

  /** Every item that any table knows, with how it is used where its kind says so. */
  get all(): { readonly item: string; readonly use: Use | undefined }[] {
    const named = [...this.items].map(([key, { weight }]): [string, { item: string; use: Use | undefined }] => [
      key,
      { item: weight.item, use: weight.use },
    ]);
    const moved = [...(this.ledger?.items ?? [])].map(([key, { item }]): (typeof named)[number] => [
      key,
      { item, use: undefined },
    ]);
    return [...new Map([...moved, ...named]).values()];
  }

  /** Whether any table is there to say what is on hand. */
  get hasStock(): boolean {
    const { items, stock, moves } = this.rows;
    const isSaid = ({ weight }: ByUse<Item>) => weight.onHand !== undefined || of(weight, ["onHand"]).length > 0;
    return stock !== undefined || moves !== undefined || [...(items?.values() ?? [])].some(isSaid);
  }

  /** Whether any is there to say what things cost. A table of stock names packs to buy, and need not price all. */
  get hasPrices(): boolean {
    const { items, prices } = this.rows;
    const isPaid = [...(this.ledger?.items.values() ?? [])].some(({ lots }) => lots.some(({ paidFor }) => paidFor > 0));
    const isPriced = ({ weight }: ByUse<Item>) => weight.unitPrice !== undefined || weight.offers.length > 0;
    return prices !== undefined || isPaid || [...(items?.values() ?? [])].some(isPriced);
  }

  /** Undefined where no table knows the item. */
  supply(name: string, use: Use): Supply | undefined {
    const listed = this.items.get(sameName(name))?.[use];
    const moved = this.moved(name, use, listed?.onHand);
    if (!listed && !moved) return undefined;
    const { offers = [], reorderBelow } = listed ?? {};
    const own = stockProblems(listed, moved !== undefined);
    return {
      item: listed?.item ?? name,
      onHand: moved ? moved.onHand : listed?.onHand,
      past: moved?.past ?? [],
      offers,
      reorderBelow,
      wrong: [...own, ...(moved?.wrong ?? [])],
      looks: [...(listed?.looks ?? []), ...(moved?.looks ?? [])],
    };
  }

  /** What one unit costs where so much is taken: by the lots in stock, else as the table of items says. */
  price(name: string, use: Use, amount: number): PriceFound {
    const listed = this.items.get(sameName(name))?.[use];
    const byLots = this.ledger && lotPrice(this.ledger, name, use, this.method, amount);
    if (byLots) {
      const looks = byLots.unpriced.map((lot): Problem => {
        const text = `${name}: nothing is written in Paid for ${lotName(lot)}; it is taken at what was paid last`;
        return { table: "moves", severity: "warning", text };
      });
      return { price: byLots.price, wrong: [], looks };
    }
    const wrong = priceProblems(listed);
    const [pack] = listed?.offers ?? [];
    return { price: listed?.unitPrice ?? (pack && pack.price / pack.size), wrong, looks: oddPrice(listed) };
  }

  private moved(name: string, use: Use, listed: number | undefined) {
    const ledger = this.ledger;
    const own = ledger?.moves.said.get(sameName(name));
    const left = ledger && leftOf(ledger, name, use);
    // A move that cannot be read is a move all the same.
    if (!ledger || (left === undefined && !own)) return undefined;
    const all = [...(own ?? []), ...ledger.moves.saidOfAll[use]];
    const past =
      this.today === undefined ? [] : lotsOf(ledger, name, use).filter((lot) => isPast(lot, this.today ?? 0));
    const pastQuantity = past.reduce((total, { quantity }) => total + quantity, 0);
    const over = overdrawn(ledger, name).map(({ lot }): Problem => {
      const text = `${name}: more of ${lotName(lot)} went out than came in; add what came in, or put its lot right by two more rows`;
      return { table: "moves", severity: "warning", text };
    });
    const against = left === undefined ? [] : againstMoves(ledger, name, use, listed, tidy(left));
    return {
      onHand: tidy((left ?? 0) - pastQuantity),
      past,
      wrong: all.filter(isError),
      looks: [...all.filter((one) => !isError(one)), ...over, ...against],
    };
  }
}

/** What is doubtful of what the moves leave: On hand says something else that is not in them, or it is below nothing. */
function againstMoves(ledger: Ledger, name: string, use: Use, listed: number | undefined, left: number): Problem[] {
  const { rows, ratio, unit } = ledger.moves;
  const inUnit = (amount: number) => amountWords(amount / (use === "weight" ? ratio : 1), use, unit);
  if (listed !== undefined && !isSame(listed, left) && !isInMoves(listed, name, use, rows)) {
    const text = `${name}: On hand says ${inUnit(listed)} and the moves leave ${inUnit(left)}, which is what counts. Was ${inUnit(listed)} there before the first of them? Then add it to Moves as a row of its own; else clear On hand`;
    return [{ table: "items", field: "onHand", severity: "warning", text }];
  }
  if (left >= 0 || overdrawn(ledger, name).length > 0) return [];
  const text = `${name}: the moves leave ${inUnit(left)}, for more went out than came in. Add to Moves what was there before, or what came in since`;
  return [{ table: "moves", severity: "warning", text }];
}

export const lotName = (lot: string): string => (lot === "" ? "what has no lot" : `lot ${lot}`);

const of = (item: Item | undefined, fields: readonly string[]): readonly Problem[] =>
  item?.wrong.filter(({ field = "" }) => fields.includes(field)) ?? [];

/** What keeps the stock of an item from being known. With moves what the table of items says on hand does not count. */
const stockProblems = (item: Item | undefined, hasMoves: boolean): readonly Problem[] =>
  of(item, ["item", ...(hasMoves ? [] : ["onHand"]), "packSize", "packPrice", "reorderBelow", "delivery"]);

/** What keeps its price from being known: where none is written, what is wrong with its packs. */
function priceProblems(item: Item | undefined): readonly Problem[] {
  const own = of(item, ["price"]);
  return item?.unitPrice !== undefined || own.length > 0 ? own : of(item, ["packSize", "packPrice"]);
}

/** A written unit price is as a rule near that of the packs; beyond this it is likely one of another unit or pack. */
const FAR = 2;

function oddPrice(item: Item | undefined): Problem[] {
  const price = item?.unitPrice;
  const packs = item?.offers.map((pack) => pack.price / pack.size) ?? [];
  if (item === undefined || price === undefined || packs.length === 0) return [];
  if (price <= FAR * largest(packs) && FAR * price >= least(packs)) return [];
  const text = `${item.item}: the unit price is ${plain(price)}, and its packs make ${plain(packs[0] as number)}; check which one is meant`;
  return [{ table: "items", field: "price", severity: "warning", text }];
}
