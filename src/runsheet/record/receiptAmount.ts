import { plain } from "../../core/check/plain";
import { largest, least } from "../../core/longLists";
import { amountWords } from "../amountWords";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import type { Ledger } from "../stock/ledger";
import { leftOf } from "../stock/lots";
import { isCarried } from "../stock/openings";
import type { Items } from "../tables/items";
import type { Move } from "../tables/moves";
import type { Receipt } from "./receipt";

/**
 * How many times an amount may be what came in before, or what a pack holds, before it is asked about; beside what is
 * on hand alone, which may be little, it has more room. Grams for kilograms are 1000, ounces for grams 28: common
 * practice, no source.
 */
const FAR = 10;
const FAR_FROM_SHELF = 100;

/** What an item usually is on the shelf and on arrival, as the table of moves counts. */
interface Usual {
  readonly amounts: readonly number[];
  readonly far: number;
  /** What the amounts are, in words. */
  readonly of: string;
}

function usualOf({ item, unit }: Receipt, items: Items, ledger: Ledger | undefined): Usual | undefined {
  const key = sameName(item);
  const isIn = (move: Move) =>
    move.run === "" && move.change.count > 0 && !isCarried(move) && sameName(move.item) === key;
  const cameIn = ledger?.moves.rows.filter(isIn).map(({ change }) => change.count) ?? [];
  const listed = items.get(key)?.[unit === "pieces" ? "count" : "weight"];
  // What the tables of items weigh is in the unit of the settings.
  const ratio = unit === "pieces" ? 1 : (ledger?.moves.ratio ?? 1);
  const packs = listed?.offers.map(({ size }) => size / ratio) ?? [];
  const amounts = [...cameIn, ...packs].filter((amount) => amount > 0);
  if (amounts.length > 0) {
    const of = [...(cameIn.length > 0 ? ["has come in before"] : []), ...(packs.length > 0 ? ["a pack holds"] : [])];
    return { amounts, far: FAR, of: of.join(" or ") };
  }
  const left = (ledger && leftOf(ledger, item, "count")) ?? (listed?.onHand && listed.onHand / ratio);
  return left !== undefined && left > 0 ? { amounts: [left], far: FAR_FROM_SHELF, of: "is on hand" } : undefined;
}

/** A receipt beside what the moves say. */
export interface Arrival {
  readonly receipt: Receipt;
  /** Its quantity as the table of moves counts it, and the unit of the weights there. */
  readonly change: number;
  readonly unit: WeightUnit;
  /** Undefined where there is no table of moves. */
  readonly ledger: Ledger | undefined;
}

/** Whether a quantity may be of another unit than it is written in: far more or far less than is usual of the item. */
export function amountDoubts({ receipt, change, ledger, unit: written }: Arrival, items: Items): string[] {
  const { unit } = receipt;
  const amountOf = (amount: number) => amountWords(amount, unit === "pieces" ? "count" : "weight", written);
  const quantity = plain(receipt.quantity);
  const usual = usualOf(receipt, items, ledger);
  if (!usual) {
    return receipt.isUnitKept
      ? [`the unit is still ${unit}, as of what was added before: is ${quantity} ${unit} right?`]
      : [];
  }
  const { amounts, far, of } = usual;
  const [fewest, most] = [least(amounts), largest(amounts)];
  const isMuch = change > far * most;
  if (!isMuch && change >= fewest / far) return [];
  const bound = isMuch ? `more than ${of}, at most ${amountOf(most)}` : `less than ${of}, at least ${amountOf(fewest)}`;
  return [`${quantity} ${unit} is far ${bound}: check the quantity and the unit`];
}
