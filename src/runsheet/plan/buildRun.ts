import type { Settings } from "../settings";
import { loadsAsScents, otherBases, unsureLimits } from "../tables/doubtfulColumns";
import { type KindName, missingRoles, roleName } from "../tables/kinds";
import { readRecipes } from "../tables/readRecipes";
import { readScents } from "../tables/readScents";
import { readPrices, readStock } from "../tables/readSupplies";
import { readVessels } from "../tables/readVessels";
import { rowsOutside } from "../tables/rowsOutside";
import { type Problem, sameName, type TableRows } from "../tables/tableReader";
import { unreadColumns } from "../tables/unreadColumns";
import { usableTables } from "../tables/usableTables";
import { type Costs, costs } from "./costs";
import { otherUnits, unlikelyFills, unlikelySizes } from "./mixedUnits";
import { oilsOf } from "./oils";
import { loadText, planRun, type RunPlan } from "./planRun";
import { type ReadRows, readRows, type UsualSetting } from "./readRows";
import { type Shelf, supplies } from "./supplies";

/** The tables a run is built from; only the one poured from must be there. */
export type Tables = { readonly pour: TableRows<"pour"> } & {
  readonly [K in Exclude<KindName, "pour">]?: TableRows<K> | undefined;
};

/** What comes of the tables as they are now: a plan of the rows that are right, and everything there is to say. */
export interface Run {
  readonly plan: RunPlan;
  /** Undefined without a stock table. */
  readonly shelf: Shelf | undefined;
  /** Undefined without a price table, or where it lacks a price. */
  readonly costs: Costs | undefined;
  /** The usual settings that served any row. */
  readonly usual: ReadonlySet<UsualSetting>;
  /** How many rows name a vessel and no quantity: they are not poured. */
  readonly leftOut: number;
  /** Safety first, then what stops, then the rest, each in the order of the rows. */
  readonly problems: readonly Problem[];
}

/** From tables to a plan. Where a column is missing, the plan is empty and the problem says which. */
export function buildRun(given: Tables, settings: Settings): Run {
  const { usable: tables, problems: unusable } = usableTables(given);
  const { pour } = tables;
  // Vessels that are known by name fill rows that give no weight.
  const missing = missingRoles("pour", pour.columns).filter((group) => !(tables.vessels && group.includes("fill")));
  const problems: Problem[] = missing.map((group) => ({
    role: group[0] as NonNullable<(typeof group)[0]>,
    text: `${group.map((role) => roleName("pour", role)).join(" or ")}: no column is chosen${group.includes("fill") ? ", and no table of Vessels under More tables" : ""}`,
    stops: true,
  }));
  problems.push(...unusable, ...rowsOutside(given));
  const scents = readScents(tables.scents);
  const recipes = readRecipes(tables.recipes);
  const vessels = readVessels(tables.vessels);
  const known = { scents, recipes, vessels: tables.vessels && vessels };
  // Nothing is planned from columns that are missing or in another unit: every figure would be wrong.
  problems.push(...otherUnits(pour, settings.unit));
  const read = problems.some(({ stops, below }) => stops && below === undefined)
    ? NO_ROWS
    : readRows(pour, known, settings);
  const { plan, problems: planned } = planRun(
    read.rows,
    { notes: (scent) => scents.get(scent)?.notes, recipe: (scent) => recipes.get(scent) },
    settings,
  );
  problems.push(...unlikelyFills(read.rows, vessels, settings.unit), ...unlikelySizes(read.rows, settings.unit));
  problems.push(...read.problems, ...planned);
  for (const table of Object.values(tables) as (TableRows<KindName> | undefined)[]) {
    if (table) problems.push(...unreadColumns(table, read.usual));
  }
  problems.push(...otherBases(pour, tables.scents, read.rows), ...loadsAsScents(pour));
  if (tables.scents) problems.push(...unsureLimits(tables.scents));
  // Of the other tables only what this run uses can stop it.
  for (const [scent, named] of read.scents) {
    const recipe = recipes.get(scent);
    const oils = oilsOf(recipe?.ingredients ?? [], (oil) => scents.get(oil)?.notes);
    const ofOils = oils.flatMap(({ name }) => scents.get(sameName(name))?.wrong ?? []).filter(({ safety }) => safety);
    problems.push(...(scents.get(scent)?.wrong ?? []), ...ofOils, ...(recipe?.wrong ?? []));
    if (tables.scents && scent !== "" && !scents.has(scent) && !oils.some(({ notes }) => notes)) {
      const first = read.rows.find((row) => sameName(row.scent) === scent);
      const load =
        !first || recipes.has(scent) || first.isLoadGiven ? "" : `; the default load, ${loadText(first)}, is taken`;
      const text = `${(first ?? named).scent} is not in the table of scents${load}`;
      problems.push({ row: (first ?? named).row, role: "scent", text, stops: false });
    }
  }
  for (const vessel of new Set(read.rows.map((row) => sameName(row.vessel)))) {
    const { wrong = [], looks = [] } = vessels.get(vessel) ?? {};
    const isSaid = wrong.some((one) => problems.includes(one));
    problems.push(...looks, ...(isSaid ? [] : wrong.map((one) => ({ ...one, stops: false }))));
  }
  if (plan.totals.candles === 0 && !problems.some(({ stops }) => stops)) {
    problems.push({ role: "quantity", text: "Quantity: no row has one; write how many candles to pour", stops: true });
  }
  const stocked = tables.stock && supplies(plan, readStock(tables.stock, settings.unit));
  const priced = tables.prices && costs(plan, readPrices(tables.prices, settings.unit), settings);
  problems.push(...(stocked?.problems ?? []), ...(priced?.problems ?? []));
  // A heading that is wrong is wrong for each item below it: once is enough.
  const said = [...new Map(problems.map((problem) => [JSON.stringify(problem), problem])).values()];
  said.sort((a, b) => rankOf(a) - rankOf(b) || (a.row ?? -1) - (b.row ?? -1));
  return {
    plan,
    shelf: stocked?.shelf,
    costs: priced?.costs,
    usual: read.usual,
    leftOut: read.leftOut,
    problems: said,
  };
}

/** Safety stands above all else, and of it what stops. */
const rankOf = ({ safety, stops }: Problem): number => (safety ? 0 : 2) + (stops ? 0 : 1);

const NO_ROWS: ReadRows = { rows: [], problems: [], scents: new Map(), usual: new Set(), leftOut: 0 };
