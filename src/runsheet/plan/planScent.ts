import type { Pot } from "../../core/batch/potPlan";
import type { Limit } from "../../core/batch/steps";
import { loadFrom } from "../../core/scent/loadFrom";
import { recipeSplit } from "../../core/scent/recipeSplit";
import { sum } from "../../core/statistics/sum";
import type { Problem } from "../problem";
import { sameName } from "../sameName";
import type { Settings } from "../settings";
import type { Ingredient } from "../tables/recipes";
import { flashRemarks, flashWords } from "./checks/flashPoint";
import { limitsOf, unknownLimits } from "./checks/limits";
import { asPutIn, inWax } from "./ingredients";
import { KeptPlans } from "./keptPlans";
import { oilsOf } from "./oils";
import type { Known } from "./planRun";
import type { PourRow } from "./pourRows";
import type { Loads, PlannedPot, PotLine, ScentRun } from "./runPlan";

/** The pane plans the whole batch anew at every change. */
const plans = new KeptPlans();

const NO_LOADS: Loads = { "of wax": 0, "of total": 0 };

/** The run of a scent of which nothing can be planned. */
export const emptyRun = ({ scent, wax, load, basis }: PourRow): ScentRun => ({
  ...{
    scent,
    wax,
    load,
    basis,
    loads: NO_LOADS,
    ingredients: [],
    notes: undefined,
    limits: [],
    flash: "",
    remarks: [],
  },
  ...{ pots: [], bound: 0 },
});

/** Packs the rows of one scent into pots and weighs them out. Candles that no pot holds are refused. */
export function planScent(
  group: readonly PourRow[],
  known: Known,
  settings: Settings,
  limit: Limit,
): { run: ScentRun; refused: Problem[] } {
  const [first] = group as [PourRow];
  const { scent, wax, basis } = first;
  const recipe = known.recipes.get(sameName(scent));
  const own = recipe ? recipe.ingredients : plainIngredients(first);
  const ingredients = asPutIn(inWax(own, wax, known.recipes));
  // Before rounding: a recipe's load is what its shares make of one unit.
  const { loads } = weighedParts(ingredients, 1);
  const load = recipe ? loads[basis] : first.load;

  const orders = group.map(({ vessel, fill, quantity }) => ({ vessel, fill, quantity }));
  const { pots, refused, bound } = plans.potPlan(orders, settings.potCapacity, settings.loss, limit, settings.unit);
  const weighed = pots.map((pot) => ({
    lines: linesOf(pot, group),
    ...weighedParts(ingredients, pot.weight, settings.division),
  }));
  const safety = safetyOf(known, scent, ingredients);
  return {
    run: { scent, wax, loads, load, basis, ingredients, ...safety, pots: weighed, bound },
    refused: refused.map(({ order, fault }) => {
      return { row: (group[order] as PourRow).row, field: "fill", severity: "error", text: fault.message };
    }),
  };
}

/** What is known of the limits and flash points of a scent and its oils. */
function safetyOf(
  { scents }: Known,
  scent: string,
  ingredients: readonly Ingredient[],
): Pick<ScentRun, "notes" | "limits" | "flash" | "remarks"> {
  const notesOf = (name: string) => scents.get(name)?.notes;
  const notes = notesOf(sameName(scent));
  const oils = oilsOf(ingredients, notesOf);
  const used = oils.filter(({ isUsed }) => isUsed);
  const remarks = [...unknownLimits(notes, used), ...flashRemarks(notes, used)];
  return { notes, limits: limitsOf(notes, oils), flash: flashWords(notes, used), remarks };
}

/** What a pot holds of each ingredient, in whole divisions where there are any. */
function weighedParts(ingredients: readonly Ingredient[], whole: number, division?: number) {
  const weights = recipeSplit(whole, ingredients, division);
  const sumOf = (which: (one: Ingredient) => boolean) =>
    sum(weights.filter((_, i) => which(ingredients[i] as Ingredient)));
  const wax = sumOf((one) => one.basis === "part");
  const scent = sumOf(({ isScent }) => isScent);
  const melted = sum(weights);
  return { weights, wax, scent, melted, loads: loadsOf(wax, scent, melted) };
}

/** The candles of a pot, those of one vessel with one fill together. */
function linesOf(pot: Pot, group: readonly PourRow[]): PlannedPot["lines"] {
  const lines = new Map<string, PotLine>();
  for (const { order, vessel, count } of pot.rows) {
    const { fill } = group[order] as PourRow;
    const key = JSON.stringify([sameName(vessel), fill]);
    const all = (lines.get(key)?.count ?? 0) + count;
    lines.set(key, { vessel, fill, count: all, poured: all * fill });
  }
  return [...lines.values()];
}

function loadsOf(wax: number, scent: number, whole: number): Loads {
  if (wax === 0) return NO_LOADS;
  return { "of wax": loadFrom(wax, scent), "of total": loadFrom(whole - scent, scent, "of total") };
}

/** Without a recipe a pot holds wax, and scent at the row's load. */
function plainIngredients({ scent, load, basis }: PourRow): Ingredient[] {
  const wax: Ingredient = { name: "Wax", share: 1, basis: "part", isScent: false, isDye: false };
  if (load === 0) return [wax];
  return [wax, { name: scent === "" ? "Scent" : scent, share: load, basis, isScent: true, isDye: false }];
}
