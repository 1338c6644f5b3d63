import { sameName } from "../sameName";
import type { Ingredient, Recipes } from "../tables/recipes";

/**
 * Ingredients in the order in which they go into the pot. Dye goes in before the scent: it wants the wax at its hottest
 * and time to dissolve, and the scent is then added to wax that has cooled. Common practice, no source.
 */
export function asPutIn(ingredients: readonly Ingredient[]): Ingredient[] {
  const rank = ({ basis, isDye }: Ingredient) => (basis === "part" ? 0 : isDye ? 1 : 2);
  return [...ingredients].sort((a, b) => rank(a) - rank(b));
}

/**
 * The ingredients with their wax made another one: a recipe of that name gives its waxes, and what it adds to them that
 * is no scent; else it is one wax of that name. The loads stay.
 */
export function inWax(ingredients: readonly Ingredient[], wax: string, recipes: Recipes): readonly Ingredient[] {
  if (wax === "") return ingredients;
  const blend = recipes.get(sameName(wax))?.ingredients.filter(({ isScent }) => !isScent);
  const single: Ingredient = { name: wax, share: 1, basis: "part", isScent: false, isDye: false };
  return [...(blend ?? [single]), ...ingredients.filter(({ basis }) => basis !== "part")];
}
