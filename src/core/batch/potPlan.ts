import { aboveZero } from "../check/aboveZero";
import { plain } from "../check/plain";
import { rate } from "../check/rate";
import { wholeNumber } from "../check/wholeNumber";
import { wrong } from "../check/wrong";
import { Fault } from "../fault";
import { sum } from "../statistics/sum";
import { packPots } from "./packPots";
import type { Limit } from "./steps";
import { tidyPots } from "./tidyPots";

/** Candles of one kind to pour: the vessel's name, the fill of one, and how many. */
export interface Order {
  readonly vessel: string;
  readonly fill: number;
  readonly quantity: number;
}

/** Candles of one kind poured from one pot. `order` is the place of the order in the list, from 0. */
export interface PotRow {
  readonly order: number;
  readonly vessel: string;
  readonly count: number;
  readonly weight: number;
}

export interface Pot {
  readonly rows: readonly PotRow[];
  readonly weight: number;
}

export interface PotPlan {
  /** The fullest first. */
  readonly pots: readonly Pot[];
  /** No plan needs fewer pots; the plan is proven the fewest where it has as many. */
  readonly bound: number;
  /** Orders that cannot be poured, with the reason. The pots hold the others. */
  readonly refused: readonly { readonly order: number; readonly fault: Fault }[];
}

/** More candles than these are a slip of the pen: a list of their pots would keep the spreadsheet waiting for seconds. */
const MOST_CANDLES = 100_000;
/** So are more fills times pots than these, which would keep it waiting as long. */
const MOST_PLACES = 10_000_000;

/**
 * Fewest pots for orders of one scent, whole candles, each pot at most its capacity (equal allowed); of the ways to
 * fill them one that splits few orders.
 * Orders of nothing are left out; a candle that alone passes the capacity is refused by name.
 * Source: bin packing, solved exactly by bounds and search (see packPots).
 * @param orders fills above 0 in one weight unit, whole quantities of 0 or more, a hundred thousand candles at most, and
 * fills times pots ten million
 * @param potCapacity above 0, in the same unit
 * @param loss share melted beyond what is poured, 0 or more and below 1; 0 when left out
 * @param limit how long to search; the plan may then have more pots than its bound
 * @param unit of the weights, for what is said of them; left out where it is not known
 */
export function potPlan(
  orders: readonly Order[],
  potCapacity: number,
  loss = 0,
  limit?: Limit,
  unit?: string,
): PotPlan {
  const capacity = aboveZero("potCapacity", potCapacity);
  const melted = 1 + rate("loss", loss);
  const refused: { order: number; fault: Fault }[] = [];
  const placed: { order: number; vessel: string; each: number; count: number }[] = [];
  for (const [order, { vessel, fill, quantity }] of orders.entries()) {
    try {
      const count = checkedQuantity(vessel, quantity);
      if (count === 0) continue;
      const each = checkedFill(vessel, fill) * melted;
      // A millionth of a millionth of a pot is no weight: binary fractions must not make a candle too large.
      if (each > capacity * (1 + 1e-12)) {
        throw new Fault("none", vessel, tooLarge(each, capacity, melted, unit));
      }
      placed.push({ order, vessel, each, count });
    } catch (fault) {
      if (!(fault instanceof Fault)) throw fault;
      refused.push({ order, fault });
    }
  }
  const candles = sum(placed.map(({ count }) => count));
  if (candles > MOST_CANDLES) {
    throw wrong("quantities", `${plain(candles)} candles in all; a plan takes at most ${plain(MOST_CANDLES)}`);
  }
  const pots = Math.ceil(sum(placed.map(({ each, count }) => (each / capacity) * count)));
  if (placed.length * pots > MOST_PLACES) {
    const what = `${plain(placed.length)} fills in ${plain(pots)} pots or more`;
    throw wrong("quantities", `${what} are too many for one plan; plan them in parts`);
  }
  const packing = packPots(
    placed.map(({ each }) => each),
    placed.map(({ count }) => count),
    capacity,
    limit,
  );
  // Pots that hold the same are one object, which keeps a plan of many thousand pots small.
  const byCounts = new Map<readonly number[], Pot>();
  const potOf = (counts: readonly number[]): Pot => {
    const known = byCounts.get(counts);
    if (known) return known;
    const rows = placed.flatMap(({ order, vessel, each }, i) => {
      const count = counts[i] as number;
      return count > 0 ? [{ order, vessel, count, weight: digits(count * each) }] : [];
    });
    const pot = { rows, weight: digits(sum(rows.map(({ weight }) => weight))) };
    byCounts.set(counts, pot);
    return pot;
  };
  const tidy = tidyPots(
    packing.pots,
    placed.map(({ each }) => each / capacity),
  );
  const filled = tidy.map(potOf).sort((a, b) => b.weight - a.weight);
  return { pots: filled, bound: packing.bound, refused };
}

function tooLarge(each: number, capacity: number, melted: number, unit: string | undefined): string {
  const weight = (value: number) => `${plain(value)}${unit === undefined ? "" : ` ${unit}`}`;
  const takes = `one candle takes ${weight(Number(each.toPrecision(6)))}${melted > 1 ? " with its loss" : ""}`;
  return unit === undefined
    ? `${takes} and the pot holds ${weight(capacity)}, in the unit of the fills; take a larger pot, or write both in one unit`
    : `${takes} and the pot holds ${weight(capacity)}; take a larger pot`;
}

function checkedFill(vessel: string, fill: number): number {
  if (fill > 0) return fill;
  throw wrong("fills", `${vessel} has a fill of ${plain(fill)}; write its fill weight, above 0`);
}

function checkedQuantity(vessel: string, quantity: number): number {
  const count = wholeNumber(quantity);
  if (count >= 0) return count;
  throw wrong("quantities", `${plain(quantity)} of ${vessel}; write a whole number, 0 or more`);
}

/** The 15 digits a spreadsheet keeps: 3 x 0.1 in a pot of 0.3 is 0.3. */
function digits(weight: number): number {
  return Number(weight.toPrecision(15));
}
