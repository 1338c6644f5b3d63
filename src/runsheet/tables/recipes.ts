import { atLeastZero } from "../../core/check/atLeastZero";
import { oneOf } from "../../core/check/oneOf";
import { plain } from "../../core/check/plain";
import { rate } from "../../core/check/rate";
import { sum } from "../../core/statistics/sum";
import { percent } from "../percent";
import type { Problem } from "../problem";
import { sameName } from "../sameName";
import { basisWords } from "./basisWords";
import { BASIS, SCENT } from "./commonFields";
import type { Field } from "./headings/field";
import { ASK_LIMIT, ASK_SHARE } from "./questions";
import type { RowReader } from "./rowReader";
import type { TableReader } from "./tableReader";
import { type Starter, tableType } from "./tableType";

const FIELDS = {
  scent: { ...SCENT, aliases: [...SCENT.aliases, "recipe", "blend", "candle", "product"], not: ["ingredient"] },
  ingredient: {
    name: "Ingredient",
    reads: "name",
    aliases: ["material", "raw material", "component", "made of"],
    alone: ["item", "name", "what", "wax or scent"],
  },
  share: {
    name: "Share",
    reads: "parts",
    aliases: ["parts", "part", "amount", "proportion", "quantity"],
    alone: ["%", "load", "ratio", "weight", "share %", "scent %", "load %"],
    not: ["number"],
  },
  basis: { ...BASIS, aliases: [...BASIS.aliases, "share basis"] },
  sort: { name: "Kind", reads: "words", aliases: ["type", "sort", "category"], not: ["vessel", "scent"] },
} satisfies Readonly<Record<string, Field>>;
type RecipeField = keyof typeof FIELDS;

export const RECIPES = tableType({
  name: "Recipes",
  purpose:
    'A row for each ingredient of a scent. Its basis is "part" for the waxes, "of wax" or "of total" for what they take up. Its kind says scent, dye, colour or additive; without a kind it is taken as scent, and limits count it. A scent without a recipe is one wax, called "Wax", and the scent.',
  gives: "Recipes: blends of waxes and oils, dye.",
  fields: FIELDS,
  needs: [["scent"], ["ingredient"], ["share"], ["basis"]],
  // It says what goes into a pot.
  unusable: "error",
  asks: [ASK_LIMIT, ASK_SHARE],
  starter,
  read: readRecipes,
});

/** One thing that goes into a pot. The parts are the wax; of the loads those that are no additive are scent. */
export interface Ingredient {
  readonly name: string;
  readonly share: number;
  readonly basis: "part" | "of wax" | "of total";
  readonly isScent: boolean;
  readonly isDye: boolean;
}

export interface Recipe {
  /** As it is written first. */
  readonly name: string;
  readonly ingredients: readonly Ingredient[];
  readonly wrong: readonly Problem[];
}

/** The recipes by scent, in the order of their rows. */
export type Recipes = ReadonlyMap<string, Recipe>;

function readRecipes(table: TableReader<RecipeField>): Recipes {
  const found = new Map<string, Recipe & { readonly ingredients: Ingredient[]; readonly wrong: Problem[] }>();
  const parts = new Map<string, RowReader<RecipeField>>();
  for (const reader of table.rows) {
    const scent = sameName(reader.text("scent"));
    if (scent === "" || reader.isBlank("share")) continue;
    const recipe = found.get(scent) ?? { name: reader.text("scent"), ingredients: [], wrong: [] };
    found.set(scent, recipe);
    const { ingredient, looks } = readIngredient(reader);
    recipe.wrong.push(...looks, ...reader.problems);
    if (ingredient) recipe.ingredients.push(ingredient);
    if (ingredient?.basis === "part" && !parts.has(scent)) parts.set(scent, reader);
  }
  for (const [scent, reader] of parts) {
    const { ingredients = [], wrong = [] } = found.get(scent) ?? {};
    const text = oddParts(ingredients);
    if (text !== "") wrong.push(reader.warning("share", `${reader.text("scent")}: ${text}`));
  }
  return found;
}

/** Parts that look like percentages and do not come to a whole: one may be missing. Empty where nothing is odd. */
function oddParts(ingredients: readonly Ingredient[]): string {
  const parts = ingredients.filter(({ basis }) => basis === "part").map(({ share }) => share);
  const [all, most] = [sum(parts), Math.max(...parts)];
  const whole = most < 1 ? 1 : 100;
  // Whole numbers are any proportion; near a hundred they are percentages, as a rule.
  if (parts.length < 2 || (whole === 100 && (all < 80 || all > 120))) return "";
  const ofTotal = sum(ingredients.filter(({ basis }) => basis === "of total").map(({ share }) => share));
  if ([all, all + ofTotal * whole].some((one) => Math.abs(one - whole) < whole / 200)) return "";
  return `the parts of its wax come to ${plain(Number(((all / whole) * 100).toPrecision(4)))} %; is one missing? They are taken as the whole wax`;
}

function readIngredient(reader: RowReader<RecipeField>): { ingredient: Ingredient | undefined; looks: Problem[] } {
  const name = reader.text("ingredient");
  if (name === "") reader.error("ingredient", "the cell is blank; name the ingredient");
  const basis = reader.check("basis", () =>
    oneOf<Ingredient["basis"]>("basis", basisWords(reader.text("basis").replace(/^parts$/i, "part")), [
      "part",
      "of wax",
      "of total",
    ]),
  );
  const number = reader.number("share");
  const share =
    number === undefined
      ? undefined
      : reader.check("share", () => (isLoad(basis) ? rate : atLeastZero)("share", number));
  // What no limit counts must not be taken for scent unseen.
  const looks =
    isLoad(basis) && reader.isBlank("sort") && NO_SCENT.test(name)
      ? [reader.warning("sort", `${name} has no kind and is taken as scent; write dye or other`)]
      : [];
  const sort = reader.check("sort", () =>
    oneOf("sort", reader.text("sort") || (basis === "part" ? "wax" : "scent"), SORTS),
  );
  const isScent = sort === "scent" || sort === "fragrance" || sort === "oil";
  // Among the parts it would be weighed as wax, and no limit would count it.
  if (isScent && basis === "part") {
    reader.error("basis", `${name} is scent by its kind; give it a load, of wax or of total, and not parts`);
  }
  if (basis === undefined || share === undefined || sort === undefined) return { ingredient: undefined, looks };
  const isDye = (sort === "dye" || sort === "colour" || sort === "color") && isLoad(basis);
  if (isLoad(basis) && !isScent && sort !== "wax" && share > (isDye ? MOST.dye : MOST.other)) {
    const begin = `${name} at ${percent(share)} % ${basis} is more than candles take of it as a rule`;
    looks.push(reader.warning("share", `${begin}; if ${plain(share)} % was meant, write ${plain(share)}%`));
  }
  return { ingredient: { name, share, basis, isScent: isScent && isLoad(basis), isDye }, looks };
}

/** Dye colours by tenths of a percent, what else goes into wax by a few: common practice, no source. */
const MOST = { dye: 0.03, other: 0.2 } as const;

const isLoad = (basis: Ingredient["basis"] | undefined): boolean => basis === "of wax" || basis === "of total";

/** Names of what is no scent, as a rule. */
const NO_SCENT = /\b(dye|colou?r|pigment|mica|additive|stabili[sz]er)/i;

/** What an ingredient may be. A load that does not say is taken as scent: that is the safe side of every limit. */
const SORTS = ["wax", "scent", "fragrance", "oil", "dye", "colour", "color", "additive", "other"] as const;

function starter(): Starter {
  return {
    note: "A row for each ingredient of a scent. Basis part: parts of the wax, any sum; of wax or of total: a load, such as 6%. Kind: wax, scent, dye or additive.",
    columns: [
      { heading: "Scent", width: 22, choices: ["Scents", "Scent"] },
      { heading: "Ingredient", width: 24 },
      { heading: "Share", width: 10 },
      { heading: "Basis", width: 12 },
      { heading: "Kind", width: 12 },
    ],
  };
}
