import { potPlan } from "../core/batch/potPlan";
import { plain } from "../core/check/plain";
import type { Basis } from "../core/scent/basis";
import { loadCheck } from "../core/scent/loadCheck";
import { loadFrom } from "../core/scent/loadFrom";
import { recipeSplit } from "../core/scent/recipeSplit";
import { sum } from "../core/statistics/sum";
import type { Ingredient, Recipe } from "./readRecipes";
import type { PourRow } from "./readRows";
import type { ScentNotes } from "./readScents";
import type { Settings } from "./settings";
import { type Problem, sameName } from "./tableReader";

/** Candles of one kind in one pot. */
export interface PotLine {
  readonly vessel: string;
  readonly count: number;
  /** Fill of one candle, and of all of them. */
  readonly fill: number;
  readonly poured: number;
}

/** One pot: what to weigh, in whole scale divisions, and what is poured from it. */
export interface PlannedPot {
  readonly lines: readonly PotLine[];
  readonly melted: number;
  /** One for each ingredient of the scent, in the same order. */
  readonly weights: readonly number[];
  readonly wax: number;
  readonly scent: number;
  /** The load after rounding, on the basis of the scent. */
  readonly trueLoad: number;
}

/** All pots of one scent at one load. */
export interface ScentRun {
  /** Empty when the candles have no scent. */
  readonly scent: string;
  readonly load: number;
  readonly basis: Basis;
  readonly ingredients: readonly Ingredient[];
  readonly notes: ScentNotes | undefined;
  readonly pots: readonly PlannedPot[];
  /** No plan needs fewer pots than this. */
  readonly bound: number;
}

export interface Totals {
  readonly candles: number;
  readonly pots: number;
  readonly wax: number;
  readonly scent: number;
  readonly melted: number;
  readonly poured: number;
}

export interface RunPlan {
  readonly scents: readonly ScentRun[];
  readonly totals: Totals;
}

/** What other tables know of a scent, by its name in lower case. */
export interface Known {
  readonly notes: (scent: string) => ScentNotes | undefined;
  readonly recipe: (scent: string) => Recipe | undefined;
}

/**
 * Groups the rows by scent, load and basis, packs each group into the fewest pots and weighs every pot out.
 * Problems: candles that no pot holds and loads over a limit (they stop), and what deserves a look.
 */
export function planRun(
  rows: readonly PourRow[],
  known: Known,
  settings: Settings,
): { plan: RunPlan; problems: Problem[] } {
  const problems: Problem[] = [...lookTwice(rows)];
  const scents = groupsOf(rows, known).map((group) => {
    const [first] = group as [PourRow];
    const recipe = known.recipe(sameName(first.scent));
    const ingredients = recipe ? recipe.ingredients : plainIngredients(first);
    const orders = group.map(({ vessel, fill, quantity }) => ({ vessel, fill, quantity }));
    const { pots, refused, bound } = potPlan(orders, settings.potCapacity, settings.loss);
    for (const { order, fault } of refused) {
      problems.push({ row: (group[order] as PourRow).row, role: "fill", text: fault.message, stops: true });
    }
    if (recipe && !ingredients.some(({ basis, share }) => basis === "part" && share > 0)) {
      problems.push({ row: first.row, role: "scent", text: `The recipe of ${first.scent} has no wax`, stops: true });
      return { ...first, ingredients, notes: undefined, pots: [], bound: 0 };
    }
    const planned = pots.map((pot): PlannedPot => {
      const lines = pot.rows.map(({ order, vessel, count }) => {
        const { fill } = group[order] as PourRow;
        return { vessel, count, fill, poured: count * fill };
      });
      const weights = recipeSplit(pot.weight, ingredients, settings.division);
      const weightOf = (which: (one: Ingredient) => boolean) =>
        sum(weights.filter((_, i) => which(ingredients[i] as Ingredient)));
      const [wax, scent] = [weightOf(({ basis }) => basis === "part"), weightOf(({ isScent }) => isScent)];
      return {
        lines,
        melted: sum(weights),
        weights,
        wax,
        scent,
        trueLoad: wax > 0 ? loadFrom(wax, scent, first.basis) : 0,
      };
    });
    // Before rounding: a recipe's load is what its shares make of one unit.
    const exact = recipeSplit(1, ingredients);
    const part = (which: (one: Ingredient) => boolean) =>
      sum(exact.filter((_, i) => which(ingredients[i] as Ingredient)));
    const load = recipe
      ? loadFrom(
          part(({ basis }) => basis === "part"),
          part(({ isScent }) => isScent),
          first.basis,
        )
      : first.load;
    const notes = known.notes(sameName(first.scent));
    const run: ScentRun = { scent: first.scent, load, basis: first.basis, ingredients, notes, pots: planned, bound };
    problems.push(...overLimits(group, run), ...tooSmall(group, run, settings));
    if (planned.length > bound) {
      problems.push({
        text: `${nameOf(first)}: ${planned.length} pots; as few as ${bound} could not be ruled out`,
        stops: false,
      });
    }
    return run;
  });
  return { plan: { scents, totals: totalsOf(scents) }, problems };
}

/** The scent's name in front of a person. */
export function nameOf({ scent }: { readonly scent: string }): string {
  return scent === "" ? "Unscented" : scent;
}

/** Sums over the pots of one or several scents. */
export function totalsOf(scents: readonly ScentRun[]): Totals {
  const pots = scents.flatMap((scent) => scent.pots);
  const lines = pots.flatMap((pot) => pot.lines);
  return {
    candles: sum(lines.map(({ count }) => count)),
    pots: pots.length,
    wax: sum(pots.map(({ wax }) => wax)),
    scent: sum(pots.map(({ scent }) => scent)),
    melted: sum(pots.map(({ melted }) => melted)),
    poured: sum(lines.map(({ poured }) => poured)),
  };
}

/** Without a recipe a pot holds wax, and scent at the row's load. */
function plainIngredients({ scent, load, basis }: PourRow): Ingredient[] {
  const wax: Ingredient = { name: "Wax", share: 1, basis: "part", isScent: false };
  if (load === 0) return [wax];
  return [wax, { name: scent === "" ? "Scent" : scent, share: load, basis, isScent: true }];
}

/** Rows that share a pot: the same scent at the same load, in the order they first appear. A recipe says the load. */
function groupsOf(rows: readonly PourRow[], known: Known): PourRow[][] {
  const groups = new Map<string, PourRow[]>();
  for (const row of rows) {
    const scent = sameName(row.scent);
    const key = JSON.stringify(known.recipe(scent) ? [scent] : [scent, row.load, row.load === 0 ? "" : row.basis]);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return [...groups.values()];
}

function lookTwice(rows: readonly PourRow[]): Problem[] {
  const seen = new Set<string>();
  const loads = new Map<string, PourRow>();
  const problems: Problem[] = [];
  for (const row of rows) {
    const key = JSON.stringify([sameName(row.vessel), sameName(row.scent), row.load, row.basis]);
    if (seen.has(key)) {
      problems.push({
        row: row.row,
        role: "vessel",
        text: `${row.vessel} stands twice with the same scent; both rows are poured`,
        stops: false,
      });
    }
    seen.add(key);
    const scent = sameName(row.scent);
    const other = loads.get(scent) ?? row;
    loads.set(scent, other);
    if (scent !== "" && (other.load !== row.load || other.basis !== row.basis)) {
      const loadOf = ({ load, basis }: PourRow) => `${plain(load * 100)} % ${basis}`;
      problems.push({
        row: row.row,
        role: "load",
        text: `${row.scent} is here at ${loadOf(row)} and elsewhere at ${loadOf(other)}; they are melted apart`,
        stops: false,
      });
    }
  }
  return problems;
}

/** A load over the wax's maximum or the scent's product limit, each in its own basis. */
function overLimits(group: readonly PourRow[], { load, basis, notes }: ScentRun): Problem[] {
  const [first] = group as [PourRow];
  const text = load > 0 ? loadCheck(load, notes?.waxMaximum, notes?.productLimit, basis) : "";
  return text === "" ? [] : [{ row: first.row, role: "load", text: `${nameOf(first)}: ${text}`, stops: true }];
}

/** Under twenty divisions half a division is more than 2.5 % of the weight. NIST Handbook 44, from memory. */
const FEWEST_DIVISIONS = 20;

function tooSmall(group: readonly PourRow[], { ingredients, pots }: ScentRun, settings: Settings): Problem[] {
  const [first] = group as [PourRow];
  return ingredients.flatMap(({ name, share }, i) => {
    const least = Math.min(...pots.map(({ weights }) => weights[i] as number));
    if (share === 0 || least >= FEWEST_DIVISIONS * settings.division) return [];
    return [
      {
        row: first.row,
        role: "load" as const,
        text: `${nameOf(first)}: ${plain(least)} ${settings.unit} of ${name} is under ${FEWEST_DIVISIONS} scale divisions; a finer scale weighs it truer`,
        stops: false,
      },
    ];
  });
}
