import { atLeastZero } from "../core/check/atLeastZero";
import { weighError } from "../core/weighing/weighError";
import { weighOut } from "../core/weighing/weighOut";
import { mapCells, number, scalar, wholeRange } from "./cells";

/**
 * Weights in whole scale divisions that together are exactly the total, rounded to a division.
 * @customfunction WEIGHOUT
 * @param weights Weights to weigh out, any one weight unit; a range.
 * @param division Scale division, the smallest step the scale shows, in the same unit.
 * @returns The weights as the scale can weigh them, in the same unit and shape.
 * @example =POUR.WEIGHOUT({3.4;3.3;3.3}, 1) gives 4 ; 3 ; 3
 * @source The largest remainder method: each weight stays within one division of its exact value.
 */
export function WEIGHOUT(weights: any[][], division: any): any[][] {
  return wholeRange(
    [number("weights", weights)],
    (weight) => atLeastZero("weights", weight),
    (good) => weighOut(good, scalar(number("division", division))),
  );
}

/**
 * The worst relative error that half a scale division makes in a weight.
 * @customfunction WEIGHERROR
 * @param weight Weight to be weighed, any one weight unit; a cell or a range.
 * @param division Scale division, the smallest step the scale shows, in the same unit; a cell or a range.
 * @returns Error as a fraction of the weight; show it as a percentage.
 * @example =POUR.WEIGHERROR(20, 1) gives 0.025
 * @source A reading rounded to a division is off by at most half of one.
 */
export function WEIGHERROR(weight: any[][], division: any[][]): any[][] {
  return mapCells([number("weight", weight), number("division", division)], weighError);
}
