import { isError, type Problem } from "../../problem";
import { sameName } from "../../sameName";
import type { Recipes } from "../../tables/recipes";
import type { PourRow } from "../pourRows";

/**
 * What is to say of the waxes that rows name: what is wrong in their recipes, and waxes that nothing else knows. A slip
 * of its name makes a wax of its own, melted apart.
 * @param items names of the items that are weighed; undefined without a table of them
 */
export function waxProblems(
  rows: readonly PourRow[],
  recipes: Recipes,
  items: ((name: string) => boolean) | undefined,
): Problem[] {
  const first = new Map<string, PourRow>();
  for (const row of rows) {
    const wax = sameName(row.wax);
    if (wax !== "" && !first.has(wax)) first.set(wax, row);
  }
  const parts = new Set(
    [...recipes.values()].flatMap(({ ingredients }) =>
      ingredients.filter(({ basis }) => basis === "part").map(({ name }) => sameName(name)),
    ),
  );
  return [...first].flatMap(([key, { wax, row }]): Problem[] => {
    const recipe = recipes.get(key);
    const at = { row, field: "wax" } as const;
    if (recipe) {
      const hasWax = recipe.ingredients.some(({ basis }) => basis === "part");
      if (!hasWax && !recipe.wrong.some(isError)) {
        return [
          { ...at, severity: "error", text: `${wax}: its recipe holds no wax; give it parts, or name another wax` },
        ];
      }
      const scents = recipe.ingredients.filter(({ isScent }) => isScent).map(({ name }) => name);
      const text = `${wax}: of its recipe only the wax is taken here, and not ${scents.join(", ")}`;
      return [...recipe.wrong, ...(scents.length > 0 ? [{ ...at, severity: "warning", text } as const] : [])];
    }
    const isCompared = items !== undefined || recipes.size > 0;
    if (!isCompared || parts.has(key) || items?.(key)) return [];
    const text = `${wax} is no recipe and no item that is known; it is melted as a wax of its own. Check the name`;
    return [{ ...at, severity: "warning", text }];
  });
}
