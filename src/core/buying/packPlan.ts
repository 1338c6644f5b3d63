import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { wrong } from "../check/wrong";
import { Fault } from "../fault";
import { divisionsIn } from "../weighing/divisionsIn";
import { planAtOnePrice } from "./planAtOnePrice";
import { planByBranches } from "./planByBranches";
import { planByGrid } from "./planByGrid";
import { planByRemainders } from "./planByRemainders";
import { wholeNumbers } from "./wholeNumbers";

/** A pack on sale: what it holds, in the unit of the need, and its price. */
export interface Pack {
  readonly size: number;
  readonly price: number;
}

/** The pack where its size is above 0 and its price 0 or more, else a fault. */
export function checkedPack({ size, price }: Pack): Pack {
  return { size: aboveZero("sizes", size), price: atLeastZero("prices", price) };
}

// What takes well under a second: the grid covers a need of a million steps with 12 packs, the remainders any need with
// 12 packs of up to a million steps each.
const FIRST_BRANCHES = 5000;
const BRANCHES = 500_000;
const ONE_PRICE_WORK = 10_000_000;
const REMAINDER_WORK = 12_000_000;
const GRID_WORK = 15_000_000;

/** Whole steps that cover a need. What binary fractions add to a need is no step more. */
function steps(need: bigint, step: bigint): bigint {
  const times = divisionsIn(Number(need), Number(step));
  return Number.isInteger(times) && times < 1e11 ? BigInt(times) : (need + step - 1n) / step;
}

const divisor = (a: bigint, b: bigint): bigint => (b === 0n ? a : divisor(b, a % b));

/**
 * How many of each pack to buy to cover a need: least cost, then least left over, then fewest packs.
 *
 * Exact: every number is taken to the 15 digits a spreadsheet keeps, and needs, sizes and prices are brought to
 * whole numbers by moving the decimal point, so nothing is rounded on the way. The need is rounded up to the
 * greatest common divisor of the sizes, which every total is a multiple of. Branch and bound then finds the best
 * plan; where too many plans come close, sums of the packs that are cheapest by size do, or shortest paths over the
 * remainders of one pack, or for a small need dynamic programming over it. When none can, a fault says so.
 * @param need 0 or more, any unit
 * @param packs sizes above 0 in the unit of the need, prices of 0 or more in any money
 * @returns a whole count for each pack, in the same order
 */
export function packPlan(need: number, packs: readonly Pack[]): number[] {
  const sold = packs.map(checkedPack);
  const [whole = 0n, ...sizes] = wholeNumbers([atLeastZero("need", need), ...sold.map(({ size }) => size)]).wholes;
  const prices = wholeNumbers(sold.map(({ price }) => price)).wholes;
  if (whole === 0n) return packs.map(() => 0);
  if (packs.length === 0) {
    throw new Fault("none", "sizes", "no pack has both a size and a price; write both for at least one");
  }
  // Beyond this a count is no exact number any more, and the numbers are so long that every search takes seconds.
  if (sold.some(({ size }) => need / size > Number.MAX_SAFE_INTEGER)) {
    throw wrong("sizes", "too many packs to count; check the need and the sizes");
  }
  const step = sizes.reduce(divisor);
  const cent = prices.reduce(divisor) || 1n;
  const task = {
    need: steps(whole, step),
    packs: sizes.map((size, i) => ({ size: size / step, price: (prices[i] as bigint) / cent })),
  };
  const plan =
    planByBranches(task, FIRST_BRANCHES) ??
    planAtOnePrice(task, ONE_PRICE_WORK) ??
    planByBranches(task, BRANCHES) ??
    planByRemainders(task, REMAINDER_WORK) ??
    planByGrid(task, GRID_WORK);
  if (!plan) throw wrong("sizes", "too many plans come close to compare them all; write sizes with fewer decimals");
  return plan;
}
