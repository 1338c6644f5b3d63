import { type Costs, costs } from "./costs";
import { type KindName, missingRoles, roleName } from "./kinds";
import { mixedUnits } from "./mixedUnits";
import { planRun, type RunPlan } from "./planRun";
import { readRecipes } from "./readRecipes";
import { readRows } from "./readRows";
import { readScents } from "./readScents";
import { readPrices, readStock } from "./readSupplies";
import type { Settings } from "./settings";
import { type Lack, supplies } from "./supplies";
import { type Problem, sameName, type TableRows } from "./tableReader";

/** The tables a run is built from; only the one poured from must be there. */
export type Tables = { readonly pour: TableRows<"pour"> } & {
  readonly [K in Exclude<KindName, "pour">]?: TableRows<K> | undefined;
};

/** What comes of the tables as they are now: a plan of the rows that are right, and everything there is to say. */
export interface Run {
  readonly plan: RunPlan;
  /** Undefined without a stock table. */
  readonly lacks: readonly Lack[] | undefined;
  /** Undefined without a price table, or where it lacks a price. */
  readonly costs: Costs | undefined;
  /** What stops comes first, each kind in the order of the rows. */
  readonly problems: readonly Problem[];
}

/** From tables to a plan. Where a column is missing, the plan is empty and the problem says which. */
export function buildRun(tables: Tables, settings: Settings): Run {
  const { pour } = tables;
  const problems: Problem[] = missingRoles("pour", pour.columns).map((group) => ({
    role: group[0] as NonNullable<(typeof group)[0]>,
    text: `${group.map((role) => roleName("pour", role)).join(" or ")}: no column is chosen`,
    stops: true,
  }));
  const scents = readScents(tables.scents);
  const recipes = readRecipes(tables.recipes);
  const known = {
    notes: (scent: string) => scents.get(scent)?.notes,
    recipe: (scent: string) => recipes.get(scent),
  };
  const read = problems.length > 0 ? { rows: [], problems: [] } : readRows(pour, known.notes, settings);
  const { plan, problems: planned } = planRun(read.rows, known, settings);
  problems.push(...mixedUnits(pour, read.rows, settings), ...read.problems, ...planned);
  // Of the other tables only what this run uses can stop it.
  for (const scent of new Set(read.rows.map((row) => sameName(row.scent)))) {
    problems.push(...(scents.get(scent)?.wrong ?? []), ...(recipes.get(scent)?.wrong ?? []));
    const first = read.rows.find((row) => sameName(row.scent) === scent);
    if (tables.scents && first && scent !== "" && !scents.has(scent)) {
      const text = `${first.scent} is not in the table of scents: its limits are not checked`;
      problems.push({ row: first.row, role: "scent", text, stops: false });
    }
  }
  if (problems.length === 0 && plan.totals.candles === 0) {
    problems.push({ role: "quantity", text: "Quantity: no row has one; write how many candles to pour", stops: true });
  }
  const stocked = tables.stock && supplies(plan, readStock(tables.stock));
  const priced = tables.prices && costs(plan, readPrices(tables.prices), settings);
  problems.push(...(stocked?.problems ?? []), ...(priced?.problems ?? []));
  problems.sort((a, b) => Number(b.stops) - Number(a.stops) || (a.row ?? -1) - (b.row ?? -1));
  return { plan, lacks: stocked?.lacks, costs: priced?.costs, problems };
}
