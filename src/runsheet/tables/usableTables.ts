import type { Tables } from "../plan/buildRun";
import { KINDS, type KindName, missingRoles, roleName } from "./kinds";
import type { Problem, TableRows } from "./tableReader";

/**
 * The tables without those that lack a column they need: of these it is said what is missing, and they are not read.
 * Recipes and scents hold what goes into a pot and its limits: without them nothing is poured until that is decided.
 */
export function usableTables(tables: Tables): { usable: Tables; problems: Problem[] } {
  const problems: Problem[] = [];
  const usable = Object.entries(tables).filter(([name, table]) => {
    const kind = name as KindName;
    if (kind === "pour" || table === undefined) return table !== undefined;
    const missing = missingRoles(kind, (table as TableRows<KindName>).columns);
    if (missing.length === 0) return true;
    const columns = missing.map((group) => group.map((role) => roleName(kind, role)).join(" or ")).join(", ");
    problems.push({
      kind,
      text: `${KINDS[kind].name} is not read: no column for ${columns}. Fix the heading, or choose the column or no table under More tables`,
      stops: kind === "recipes" || kind === "scents",
    });
    return false;
  });
  return { usable: Object.fromEntries(usable) as Tables, problems };
}
