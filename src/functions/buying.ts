import { packCost } from "../core/buying/packCost";
import { checkedPack, packPlan } from "../core/buying/packPlan";
import { unitPrice } from "../core/buying/unitPrice";
import { wrong } from "../core/check/wrong";
import {
  aboveZeroOr,
  answer,
  mapCells,
  number,
  numberOrZero,
  scalar,
  unit,
  valuesOf,
  wholeRange,
  zipRanges,
} from "./cells";

/**
 * How many packs of each size cover a need at the least cost, then with the least left over, then in the fewest packs.
 * @customfunction PACKPLAN
 * @param need What is needed, in the unit of the sizes; a cell, or a column beside sizes and prices in one row.
 * @param sizes What one pack of each kind holds, any one unit; a range. A pack with a blank is left out.
 * @param prices Price of one pack of each kind, any one money; a range of the same size.
 * @returns Whole packs of each kind, in the shape of the sizes; one row for each need.
 * @example =POUR.PACKPLAN(12, {1;5;10}, {3;10;18}) gives 2 ; 0 ; 1
 * @source Integer programming, solved exactly: decimals, taken to 15 digits, are brought to whole numbers, then branch and bound or dynamic programming. Checked against an integer-programming library.
 */
export function PACKPLAN(need: any[][], sizes: any[][], prices: any[][]): any[][] {
  const needs = aboveZeroOr("need", need).grid;
  const size = number("sizes", sizes);
  if (needs.length > 1 && size.grid.length > 1) {
    return answer(() => {
      throw wrong("need", "a column needs sizes and prices in one row each; lay them side by side");
    });
  }
  return needs.flatMap((cells) =>
    wholeRange(
      [size, number("prices", prices)],
      (size, price) => checkedPack({ size, price }),
      (packs, badRows) => {
        const amount = scalar(aboveZeroOr("need", cells));
        if (amount === undefined) return packs.map(() => "");
        if (badRows.length > 0) throw wrong("sizes", `pack ${badRows[0]} has an error; fix it first`);
        return packPlan(amount, packs);
      },
      { skip: [0, 1], always: true },
    ),
  );
}

/**
 * What the packs of PACKPLAN cost together.
 * @customfunction PACKCOST
 * @param need What is needed, in the unit of the sizes; a cell or a range.
 * @param sizes What one pack of each kind holds, any one unit; a range. A pack with a blank is left out.
 * @param prices Price of one pack of each kind, any one money; a range of the same size.
 * @returns The least cost of packs that cover the need, in the money of the prices.
 * @example =POUR.PACKCOST(12, {1;5;10}, {3;10;18}) gives 24
 * @source Integer programming, solved exactly, as in PACKPLAN.
 */
export function PACKCOST(need: any[][], sizes: any[][], prices: any[][]): any[][] {
  return mapCells([number("need", need)], (amount) =>
    packCost(
      amount,
      valuesOf(zipRanges([number("sizes", sizes), number("prices", prices)], [0, 1]), (size, price) => ({
        size,
        price,
      })),
    ),
  );
}

/**
 * Price of one unit of what a pack holds, such as one gram of a 5 lb bag.
 * @customfunction UNITPRICE
 * @param price Price of the pack, any one money; a cell or a range.
 * @param size What the pack holds, in sizeUnit; a cell or a range.
 * @param sizeUnit Unit of the size: a weight (g, kg, oz, lb), a volume (ml, l, floz, in3, cm3) or a length (mm, cm, in).
 * @param perUnit Unit to price, of the same kind as sizeUnit.
 * @param delivery Money for the pack, added to its price; 0 when left out.
 * @returns Price of one perUnit, in the money of the price.
 * @example =POUR.UNITPRICE(36, 2, "kg", "g", 4) gives 0.02
 * @source Division, with the units' own definitions.
 */
export function UNITPRICE(
  price: any[][],
  size: any[][],
  sizeUnit: any[][],
  perUnit: any[][],
  delivery?: any[][],
): any[][] {
  return mapCells(
    [
      number("price", price),
      number("size", size),
      unit("sizeUnit", sizeUnit, "weight", "volume", "length"),
      unit("perUnit", perUnit, "weight", "volume", "length"),
      numberOrZero("delivery", delivery),
    ],
    unitPrice,
  );
}
