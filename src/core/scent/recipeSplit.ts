import { atLeastZero } from "../check/atLeastZero";
import { oneOf } from "../check/oneOf";
import { plain } from "../check/plain";
import { rate } from "../check/rate";
import { wrong } from "../check/wrong";
import { sum } from "../statistics/sum";
import { weighOut } from "../weighing/weighOut";

/** A row of a recipe: `part` counts parts of the wax base; the other bases are loads. */
export interface Ingredient {
  readonly share: number;
  readonly basis: string;
}

/** The row with its basis in the words used here; a fault where it is wrong by itself. */
export function checkedIngredient({ share, basis }: Ingredient): Ingredient {
  const on = oneOf("bases", basis, ["part", "of wax", "of total"]);
  return { share: on === "part" ? atLeastZero("shares", share) : rate("shares", share), basis: on };
}

/**
 * Weights of a recipe's ingredients that together are the fill. The wax base W holds the parts in their
 * proportion; with loads of wax a and loads of total b, W (1 + sum a) + fill sum b = fill.
 * Source: the definitions of the bases.
 * @param fill weight of everything, 0 or more, any one weight unit
 * @param ingredients shares: parts of 0 or more, any sum; loads are fractions, 0 or more and below 1
 * @param division of the scale, above 0, in the fill's unit: weighs the column out in whole divisions
 * @returns a weight for each ingredient, in the same order
 */
export function recipeSplit(fill: number, ingredients: readonly Ingredient[], division?: number): number[] {
  const whole = atLeastZero("fill", fill);
  const rows = ingredients.map(checkedIngredient);
  const shareOn = (on: string) => sum(rows.filter(({ basis }) => basis === on).map(({ share }) => share));
  const [parts, ofWax, ofTotal] = [shareOn("part"), shareOn("of wax"), shareOn("of total")];
  // Loads of half of it and more are no scent alone.
  if (parts === 0 && ofWax + ofTotal >= 0.5) {
    throw wrong("bases", 'all shares are loads; give each wax the basis "part", its share may stay as it is');
  }
  if (parts === 0) throw wrong("bases", 'no wax in the recipe; give each wax a share above 0 and the basis "part"');
  if (ofTotal >= 1) throw wrong("shares", `loads of total come to ${plain(ofTotal * 100)} %; keep them below 100 %`);
  const base = (whole * (1 - ofTotal)) / (1 + ofWax);
  const weights = rows.map(({ basis, share }) => {
    if (basis === "part") return (base * share) / parts;
    return share * (basis === "of wax" ? base : whole);
  });
  return division === undefined ? weights : weighOut(weights, division, whole);
}
