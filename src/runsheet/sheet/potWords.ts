import type { ScentRun } from "../plan/runPlan";
import type { Ingredient } from "../tables/recipes";

/** What an ingredient is, as the key of its row says it. */
export function sortOf({ basis, isScent }: Ingredient): "wax" | "scent" | "additive" {
  if (basis === "part") return "wax";
  return isScent ? "scent" : "additive";
}

/** An ingredient's name with what it is, where the name does not say so itself. */
export function labelOf(ingredient: Ingredient): string {
  const { name } = ingredient;
  const sort = sortOf(ingredient);
  if (sort === "scent") return `Scent: ${name}`;
  return sort === "wax" && !/wax/i.test(name) ? `Wax: ${name}` : name;
}

/** The name of an ingredient by its label. */
export const nameIn = (label: string, sort: "wax" | "scent" | "additive"): string =>
  sort === "additive" ? label : label.replace(sort === "scent" ? /^Scent: / : /^Wax: /, "");

/** The steps of a pot, each with what was aimed at: empty where the scent has no target for it. */
export function stepsOf({ notes, load }: Pick<ScentRun, "notes" | "load">): { name: string; target: string }[] {
  return [
    { name: "Melt at", target: notes?.melt?.words ?? "" },
    ...(load > 0
      ? [
          { name: "Add scent at", target: notes?.add?.words ?? "" },
          { name: "Stir", target: notes?.stir ?? "" },
        ]
      : []),
    { name: "Pour at", target: notes?.pour?.words ?? "" },
  ];
}

/** What stands above the steps: with the flash point of the scent, where one is known. */
export const stepsTitle = ({ load, flash }: Pick<ScentRun, "load" | "flash">): string =>
  load > 0 && flash !== "" ? `Steps; flash point ${flash.replaceAll(" ", "\u00a0")}` : "Steps";
