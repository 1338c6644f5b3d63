import { MOST_STEPS } from "../../core/batch/steps";
import { Fault } from "../../core/fault";
import type { Problem } from "../problem";
import { isError } from "../problem";
import { sameName } from "../sameName";
import type { Settings } from "../settings";
import type { Ingredient, Recipes } from "../tables/recipes";
import type { Scents } from "../tables/scents";
import { unknownFlashes } from "./checks/flashPoint";
import { lookTwice, otherLoads } from "./checks/loads";
import { safetyProblems } from "./checks/safety";
import { smallWeights } from "./checks/smallWeights";
import { oilsOf } from "./oils";
import { emptyRun, planScent } from "./planScent";
import type { PourRow } from "./pourRows";
import { nameOf, type RunPlan, type ScentRun, totalsOf } from "./runPlan";

/** What other tables know of scents. */
export interface Known {
  readonly scents: Scents;
  readonly recipes: Recipes;
}

/**
 * Groups the rows by scent, wax, load and basis, packs each group into the fewest pots and weighs every pot out.
 * Problems: candles that no pot holds and loads over a limit (errors), and what deserves a look.
 */
export function planRun(
  rows: readonly PourRow[],
  known: Known,
  settings: Settings,
): { plan: RunPlan; problems: Problem[] } {
  const groups = groupsOf(rows, known.recipes);
  // All scents together search no longer than one alone may. A power of two, so that one scent more seldom means that
  // the plans of the others no longer hold.
  const limit = { steps: MOST_STEPS / 2 ** Math.ceil(Math.log2(Math.max(1, groups.length))) };
  const planned = groups.map((group) => {
    const [first] = group as [PourRow];
    try {
      const { run, refused } = planScent(group, known, settings, limit);
      const problems = [
        ...refused,
        ...otherLoads(group, run, known.recipes),
        ...safetyProblems(first, run, known.scents, settings),
        ...smallWeights(first, run, settings),
        ...unproven(run),
      ];
      return { run, problems };
    } catch (fault) {
      if (!(fault instanceof Fault)) throw fault;
      return { run: emptyRun(first), problems: impossible(first, fault, known.recipes) };
    }
  });
  const scents = planned.map(({ run }) => run);
  return {
    plan: { scents, totals: totalsOf(scents) },
    problems: [
      ...lookTwice(rows, known.recipes),
      ...planned.flatMap(({ problems }) => problems),
      ...unknownFlashes(scents.map((run) => flashOf(run, known.scents))),
    ],
  };
}

function flashOf(run: ScentRun, scents: Scents) {
  const oils = oilsOf(run.ingredients, (name) => scents.get(name)?.notes).filter(({ isUsed }) => isUsed);
  return { scent: nameOf(run), own: run.notes, oils };
}

/** What makes a whole scent impossible, such as a recipe without wax, stands beside its first row. */
function impossible(first: PourRow, { sentence }: Fault, recipes: Recipes): Problem[] {
  const [own, blend] = [recipes.get(sameName(first.scent)), recipes.get(sameName(first.wax))];
  // Where rows of its recipes are wrong, those are to be fixed first; a recipe without wax is spoken of beside the wax.
  const isSaid = [own, blend].some((one) => one?.wrong.some(isError)) || blend?.ingredients.some(isWax) === false;
  return isSaid ? [] : [{ row: first.row, field: "scent", severity: "error", text: `${nameOf(first)}: ${sentence}` }];
}

const isWax = ({ basis }: Ingredient): boolean => basis === "part";

/** Rows that share a pot: one scent in one wax at one load, in the order they first appear. A recipe says the load. */
function groupsOf(rows: readonly PourRow[], recipes: Recipes): PourRow[][] {
  const groups = new Map<string, PourRow[]>();
  for (const row of rows) {
    const scent = sameName(row.scent);
    const load = recipes.has(scent) ? [] : [row.load, row.load === 0 ? "" : row.basis];
    const key = JSON.stringify([scent, sameName(row.wax), ...load]);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return [...groups.values()];
}

function unproven(run: ScentRun): Problem[] {
  const pots = run.pots.length;
  if (pots <= run.bound) return [];
  const text = `${nameOf(run)}: ${pots} pots; as few as ${run.bound} could not be ruled out`;
  return [{ severity: "warning", text }];
}
