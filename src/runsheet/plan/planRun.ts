import { potPlan } from "../../core/batch/potPlan";
import type { Limit } from "../../core/batch/steps";
import { plain } from "../../core/check/plain";
import { Fault } from "../../core/fault";
import type { Basis } from "../../core/scent/basis";
import { loadFrom } from "../../core/scent/loadFrom";
import { recipeSplit } from "../../core/scent/recipeSplit";
import { sum } from "../../core/statistics/sum";
import { percent } from "../percent";
import type { Settings } from "../settings";
import type { Ingredient, Recipe } from "../tables/readRecipes";
import type { ScentNotes } from "../tables/readScents";
import { type Problem, sameName } from "../tables/tableReader";
import { flashRemarks, flashWords } from "./flashPoint";
import { highLoad, type LoadLimit, limitsOf, overLimits, type Remark, uncounted, unknownLimits } from "./limits";
import { oilsOf } from "./oils";
import type { PourRow } from "./readRows";

/** Candles of one kind in one pot: the same vessel with the same fill. */
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
  /** The load after rounding. */
  readonly loads: Loads;
}

/** A load on both bases: of the wax, and of everything in the pot, dye and additives too. */
export type Loads = Readonly<Record<Basis, number>>;

/** All pots of one scent at one load. */
export interface ScentRun {
  /** Empty when the candles have no scent. */
  readonly scent: string;
  /** Before rounding; `load` is the one on the basis of the scent. */
  readonly loads: Loads;
  readonly load: number;
  readonly basis: Basis;
  readonly ingredients: readonly Ingredient[];
  readonly notes: ScentNotes | undefined;
  /** All that hold for each of its pots. */
  readonly limits: readonly LoadLimit[];
  /** The words of the lowest flash point of its oils; empty when none is known. */
  readonly flash: string;
  /** Limits that are not known, and flash points that are reached or not compared. */
  readonly remarks: readonly Remark[];
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
  const problems: Problem[] = [...lookTwice(rows, known)];
  const groups = groupsOf(rows, known);
  // The pane plans anew at every change: all scents together search no longer than about half a second.
  const limit = { steps: Math.floor(MOST_STEPS / Math.max(1, groups.length)) };
  const scents = groups.map((group): ScentRun => {
    try {
      const run = planScent(group, known, settings, limit, problems);
      problems.push(
        ...otherLoads(group, run, known),
        ...safetyOf(group, run, known, settings),
        ...tooSmall(group, run, settings),
        ...unproven(run),
      );
      return run;
    } catch (fault) {
      if (!(fault instanceof Fault)) throw fault;
      // What makes the whole scent impossible, such as a recipe without wax, stands beside its first row.
      const [first] = group as [PourRow];
      // Where rows of its recipe are wrong, those are to be fixed first.
      const isRead = !known.recipe(sameName(first.scent))?.wrong.some(({ stops }) => stops);
      const text = `${nameOf(first)}: ${fault.message.replace(/^\w+: /, "")}`;
      if (isRead) problems.push({ row: first.row, role: "scent", text, stops: true });
      return { ...first, ...NO_RUN };
    }
  });
  return { plan: { scents, totals: totalsOf(scents) }, problems };
}

const MOST_STEPS = 1e7;
const NO_LOADS: Loads = { "of wax": 0, "of total": 0 };
const NO_RUN = {
  ...{ loads: NO_LOADS, ingredients: [], notes: undefined, limits: [], flash: "", remarks: [] },
  ...{ pots: [], bound: 0 },
};

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
    const scent = part(weights, ({ isScent }) => isScent);
    return { weights, wax, scent, melted: sum(weights), loads: loadsOf(wax, scent, sum(weights)) };
  };
  // Before rounding: a recipe's load is what its shares make of one unit.
  const { loads } = partsOf(1);
  const load = recipe ? loads[basis] : first.load;

  const orders = group.map(({ vessel, fill, quantity }) => ({ vessel, fill, quantity }));
  const { pots, refused, bound } = potPlan(orders, settings.potCapacity, settings.loss, limit);
  for (const { order, fault } of refused) {
    problems.push({ row: (group[order] as PourRow).row, role: "fill", text: fault.message, stops: true });
  }
  const weighed = pots.map((pot): PlannedPot => {
    const lines = new Map<string, PotLine>();
    for (const { order, vessel, count } of pot.rows) {
      const { fill } = group[order] as PourRow;
      const key = JSON.stringify([sameName(vessel), fill]);
      const all = (lines.get(key)?.count ?? 0) + count;
      lines.set(key, { vessel, fill, count: all, poured: all * fill });
    }
    return { lines: [...lines.values()], ...partsOf(pot.weight, settings.division) };
  });
  const notes = known.notes(sameName(scent));
  const oils = oilsOf(ingredients, known.notes);
  const used = oils.filter(({ isUsed }) => isUsed);
  const remarks = [...unknownLimits(notes, used), ...flashRemarks(notes, used)];
  const safety = { limits: limitsOf(notes, oils), flash: flashWords(notes, used), remarks };
  return { scent, loads, load, basis, ingredients, notes, ...safety, pots: weighed, bound };
}

function loadsOf(wax: number, scent: number, whole: number): Loads {
  if (wax === 0) return NO_LOADS;
  return { "of wax": loadFrom(wax, scent), "of total": loadFrom(whole - scent, scent, "of total") };
}

/** The scent's name in front of a person. */
export function nameOf({ scent, load }: { readonly scent: string; readonly load: number }): string {
  return scent || (load > 0 ? "Scent not named" : "Unscented");
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

/** What of the melted is neither wax nor scent: dye and additives. */
export const othersOf = ({ melted, wax, scent }: Pick<Totals, "melted" | "wax" | "scent">): number =>
  Number((melted - wax - scent).toFixed(9));

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

function lookTwice(rows: readonly PourRow[], known: Known): Problem[] {
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
    if (scent !== "" && !known.recipe(scent) && (other.load !== row.load || other.basis !== row.basis)) {
      problems.push({
        row: row.row,
        role: "load",
        text: `${row.scent} is here at ${loadText(row)} and elsewhere at ${loadText(other)}; they are melted apart`,
        stops: false,
      });
    }
  }
  return problems;
}

/** A load with its basis. */
export const loadText = ({ load, basis }: Pick<PourRow, "load" | "basis">): string => `${percent(load, 8)} % ${basis}`;

/** Loads that stand in a table although the scent's recipe makes another one: the recipe is poured. */
function otherLoads(group: readonly PourRow[], { loads, load, basis }: ScentRun, known: Known): Problem[] {
  return group.flatMap((row): Problem[] => {
    if (!known.recipe(sameName(row.scent)) || !row.isLoadGiven) return [];
    if (Math.abs(row.load - loads[row.basis]) < 1e-9) return [];
    const text = `${row.scent}: its recipe makes ${loadText({ load, basis })}; the load of ${loadText(row)} is not used`;
    return [{ row: row.row, role: "load", text, stops: false }];
  });
}

/** Loads over their limits, limits that are not known, and flash points. */
function safetyOf(group: readonly PourRow[], run: ScentRun, known: Known, settings: Settings): Problem[] {
  const [first] = group as [PourRow];
  const { row } = first;
  const found = [
    ...overLimits(run, settings),
    ...highLoad(run.loads["of wax"], run.limits).map((one) => ({ role: "load" as const, ...one })),
    ...uncounted(run.ingredients, known.notes).map((one) => ({ role: "scent" as const, ...one })),
    ...run.remarks.map((one) => ({ ...one, stops: false })),
  ];
  return found.map((one) => ({ row, ...one, text: `${nameOf(first)}: ${one.text}`, safety: true as const }));
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
      const text = `${nameOf(first)}: ${name} comes to less than half a step of the scale; weigh it on a finer scale`;
      return [{ row: first.row, role: "load", text, stops: true }];
    }
    return [
      {
        row: first.row,
        role: "load",
        text: `${nameOf(first)}: ${plain(least)} ${settings.unit} of ${name} is under ${FEWEST_DIVISIONS} steps of the scale; a finer scale weighs it truer`,
        stops: false,
      },
    ];
  });
}
