import { potPlan } from "../core/batch/potPlan";
import type { Limit } from "../core/batch/steps";
import { plain } from "../core/check/plain";
import { Fault } from "../core/fault";
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
  const groups = groupsOf(rows, known);
  // The pane plans anew at every change: all scents together search no longer than about a second.
  const limit = { steps: Math.floor(MOST_STEPS / Math.max(1, groups.length)) };
  const scents = groups.map((group): ScentRun => {
    try {
      const run = planScent(group, known, settings, limit, problems);
      problems.push(...overLimits(group, run), ...tooSmall(group, run, settings), ...unproven(run));
      return run;
    } catch (fault) {
      if (!(fault instanceof Fault)) throw fault;
      // What makes the whole scent impossible, such as a recipe without wax, stands beside its first row.
      const [first] = group as [PourRow];
      problems.push({ row: first.row, role: "scent", text: `${nameOf(first)}: ${fault.message}`, stops: true });
      return { ...first, ingredients: [], notes: undefined, pots: [], bound: 0 };
    }
  });
  return { plan: { scents, totals: totalsOf(scents) }, problems };
}

const MOST_STEPS = 3e7;

function planScent(
  group: readonly PourRow[],
  known: Known,
  settings: Settings,
  limit: Limit,
  problems: Problem[],
): ScentRun {
  const [first] = group as [PourRow];
  const { scent, basis } = first;
  const recipe = known.recipe(sameName(scent));
  const ingredients = recipe ? recipe.ingredients : plainIngredients(first);
  const part = (weights: readonly number[], which: (one: Ingredient) => boolean) =>
    sum(weights.filter((_, i) => which(ingredients[i] as Ingredient)));
  const partsOf = (whole: number, division?: number) => {
    const weights = recipeSplit(whole, ingredients, division);
    const wax = part(weights, (one) => one.basis === "part");
    return { weights, wax, scent: part(weights, ({ isScent }) => isScent) };
  };
  // Before rounding: a recipe's load is what its shares make of one unit.
  const exact = partsOf(1);
  const load = recipe ? loadFrom(exact.wax, exact.scent, basis) : first.load;

  const orders = group.map(({ vessel, fill, quantity }) => ({ vessel, fill, quantity }));
  const { pots, refused, bound } = potPlan(orders, settings.potCapacity, settings.loss, limit);
  for (const { order, fault } of refused) {
    problems.push({ row: (group[order] as PourRow).row, role: "fill", text: fault.message, stops: true });
  }
  const weighed = pots.map((pot): PlannedPot => {
    const lines = pot.rows.map(({ order, vessel, count }) => {
      const { fill } = group[order] as PourRow;
      return { vessel, count, fill, poured: count * fill };
    });
    const parts = partsOf(pot.weight, settings.division);
    const trueLoad = parts.wax > 0 ? loadFrom(parts.wax, parts.scent, basis) : 0;
    return { lines, melted: sum(parts.weights), ...parts, trueLoad };
  });
  return { scent, load, basis, ingredients, notes: known.notes(sameName(scent)), pots: weighed, bound };
}

/** The scent's name in front of a person. */
export function nameOf({ scent }: { readonly scent: string }): string {
  return scent === "" ? "Unscented" : scent;
}

/** A share as a percentage of so many digits. */
export const percent = (share: number, digits = 4): string => plain(Number((share * 100).toPrecision(digits)));

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
      const loadOf = ({ load, basis }: PourRow) => `${percent(load, 8)} % ${basis}`;
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
  if (load >= 1) {
    return [
      {
        row: first.row,
        role: "load",
        text: `${nameOf(first)}: its scent comes to ${percent(load)} % ${basis}; keep it below 100 %`,
        stops: true,
      },
    ];
  }
  const text = load > 0 ? loadCheck(load, notes?.waxMaximum, notes?.productLimit, basis) : "";
  return text === "" ? [] : [{ row: first.row, role: "load", text: `${nameOf(first)}: ${text}`, stops: true }];
}

function unproven(run: ScentRun): Problem[] {
  const pots = run.pots.length;
  if (pots <= run.bound) return [];
  return [{ text: `${nameOf(run)}: ${pots} pots; as few as ${run.bound} could not be ruled out`, stops: false }];
}

/** Under twenty divisions half a division is more than 2.5 % of the weight. NIST Handbook 44, from memory. */
const FEWEST_DIVISIONS = 20;

function tooSmall(group: readonly PourRow[], { ingredients, pots }: ScentRun, settings: Settings): Problem[] {
  const [first] = group as [PourRow];
  return ingredients.flatMap(({ name, share }, i): Problem[] => {
    const least = Math.min(...pots.map(({ weights }) => weights[i] as number));
    if (share === 0 || least >= FEWEST_DIVISIONS * settings.division) return [];
    if (least === 0) {
      const text = `${nameOf(first)}: ${name} comes to less than half a scale division; weigh it on a finer scale`;
      return [{ row: first.row, role: "load", text, stops: true }];
    }
    return [
      {
        row: first.row,
        role: "load",
        text: `${nameOf(first)}: ${plain(least)} ${settings.unit} of ${name} is under ${FEWEST_DIVISIONS} scale divisions; a finer scale weighs it truer`,
        stops: false,
      },
    ];
  });
}
