import { atLeastZero } from "../../core/check/atLeastZero";
import { oneOf } from "../../core/check/oneOf";
import { rate } from "../../core/check/rate";
import { type Problem, readersOf, sameName, type TableRows } from "./tableReader";

/** One thing that goes into a pot. The parts are the wax; of the loads those that are no additive are scent. */
export interface Ingredient {
  readonly name: string;
  readonly share: number;
  readonly basis: "part" | "of wax" | "of total";
  readonly isScent: boolean;
}

export interface Recipe {
  readonly ingredients: readonly Ingredient[];
  readonly wrong: readonly Problem[];
}

/** The recipes by scent, in the order of their rows. */
export function readRecipes(table: TableRows<"recipes"> | undefined): Map<string, Recipe> {
  const found = new Map<string, { ingredients: Ingredient[]; wrong: Problem[] }>();
  for (const reader of table ? readersOf(table) : []) {
    const scent = sameName(reader.text("scent"));
    if (scent === "" || reader.isBlank("share")) continue;
    const recipe = found.get(scent) ?? { ingredients: [], wrong: [] };
    found.set(scent, recipe);
    const name = reader.text("ingredient");
    if (name === "") reader.stop("ingredient", "the cell is blank; name the ingredient");
    const basis = reader.check(() =>
      oneOf<Ingredient["basis"]>("basis", reader.text("basis").replace(/^parts$/i, "part"), [
        "part",
        "of wax",
        "of total",
      ]),
    );
    const number = reader.number("share");
    const share =
      number === undefined
        ? undefined
        : reader.check(() => (isLoad(basis) ? rate("share", number) : atLeastZero("share", number)));
    // What no limit counts must not be taken for scent unseen.
    if (isLoad(basis) && reader.isBlank("sort") && NO_SCENT.test(name)) {
      recipe.wrong.push(reader.look("sort", `${name} has no kind and is taken as scent; write dye or other`));
    }
    const sort = reader.check(() => oneOf("sort", reader.text("sort") || (basis === "part" ? "wax" : "scent"), SORTS));
    const isScent = sort === "scent" || sort === "fragrance" || sort === "oil";
    // Among the parts it would be weighed as wax, and no limit would count it.
    if (isScent && basis === "part") {
      reader.stop("basis", `${name} is scent by its kind; give it a load, of wax or of total, and not parts`);
    }
    recipe.wrong.push(...reader.wrong);
    if (basis === undefined || share === undefined || sort === undefined) continue;
    recipe.ingredients.push({ name, share, basis, isScent: isScent && isLoad(basis) });
  }
  return found;
}

const isLoad = (basis: Ingredient["basis"] | undefined): boolean => basis === "of wax" || basis === "of total";

/** Names of what is no scent, as a rule. */
const NO_SCENT = /\b(dye|colou?r|pigment|mica|additive|stabili[sz]er)/i;

/** What an ingredient may be. A load that does not say is taken as scent: that is the safe side of every limit. */
const SORTS = ["wax", "scent", "fragrance", "oil", "dye", "colour", "color", "additive", "other"] as const;
