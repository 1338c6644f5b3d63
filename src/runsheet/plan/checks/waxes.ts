import { isError, type Problem } from "../../problem";
import { sameName } from "../../sameName";
import type { Ingredient, Recipes } from "../../tables/recipes";
import { isItWords } from "../nearName";
import type { PourRow } from "../pourRows";

/**
 * What is to say of the waxes that rows name: what is wrong in their recipes, and waxes that nothing else knows. A slip
 * of its name makes a wax of its own, melted apart.
 * @param items the names of all items; none without a table of them
 */
export function waxProblems(rows: readonly PourRow[], recipes: Recipes, items: readonly string[]): Problem[] {
  const first = new Map<string, PourRow>();
  for (const row of rows) {
    const wax = sameName(row.wax);
    if (wax !== "" && !first.has(wax)) first.set(wax, row);
  }
  const blends = [...recipes.values()].filter(({ ingredients }) => ingredients.some(isPart));
  const parts = blends.flatMap(({ ingredients }) => ingredients.filter(isPart).map(({ name }) => name));
  const known = new Set([...parts, ...items].map(sameName));
  // What of a recipe cannot be read may be its waxes.
  const named = [...recipes.values()].filter((one) => blends.includes(one) || one.wrong.some(isError));
  const names = [...named.map(({ name }) => name), ...parts, ...items];
  return [...first].flatMap(([key, { wax, row }]): Problem[] => {
    const recipe = recipes.get(key);
    const at = { row, field: "wax" } as const;
    if (recipe) {
      const hasWax = recipe.ingredients.some(isPart);
      if (!hasWax && !recipe.wrong.some(isError)) {
        return [
          { ...at, severity: "error", text: `${wax}: its recipe holds no wax; give it parts, or name another wax` },
        ];
      }
      const scents = recipe.ingredients.filter(({ isScent }) => isScent).map(({ name }) => name);
      const text = `${wax}: of its recipe only the wax is taken here, and not ${scents.join(", ")}`;
      return [...recipe.wrong, ...(scents.length > 0 ? [{ ...at, severity: "warning", text } as const] : [])];
    }
    const isCompared = items.length > 0 || recipes.size > 0;
    if (!isCompared || known.has(key)) return [];
    const ask = isItWords(wax, names) || ". Check the name";
    const text = `${wax} is no recipe and no item that is known; it is melted as a wax of its own${ask}`;
    return [{ ...at, severity: "warning", text }];
  });
}

const isPart = ({ basis }: Ingredient): boolean => basis === "part";
