import { asWarning, type Problem } from "../../problem";
import { sameName } from "../../sameName";
import type { Recipes } from "../../tables/recipes";
import type { Scents } from "../../tables/scents";
import type { Vessels } from "../../tables/vessels";
import { loadText } from "../loadText";
import { isItWords } from "../nearName";
import { oilsOf } from "../oils";
import type { PourRow, PourRows } from "../pourRows";

/** Of the other tables only the rows that a run uses can stop it. */

/** What is wrong with the scents that are poured and with their recipes, and scents that no table knows. */
export function scentProblems(
  { rows, scents: poured }: PourRows,
  { scents, recipes }: { readonly scents: Scents | undefined; readonly recipes: Recipes },
): Problem[] {
  return [...poured].flatMap(([scent, named]): Problem[] => {
    const recipe = recipes.get(scent);
    const oils = oilsOf(recipe?.ingredients ?? [], (oil) => scents?.get(oil)?.notes);
    const ofOils = oils.flatMap(({ name }) => scents?.get(sameName(name))?.wrong ?? []).filter(({ safety }) => safety);
    const wrong = [...(scents?.get(scent)?.wrong ?? []), ...ofOils, ...(recipe?.wrong ?? [])];
    if (!scents || scent === "" || scents.has(scent) || oils.some(({ notes }) => notes)) return wrong;
    const first = rows.find((row) => sameName(row.scent) === scent);
    const load =
      !first || recipes.has(scent) || first.loadFrom ? "" : `; the default load, ${loadText(first)}, is taken`;
    const { scent: name } = first ?? named;
    const names = [...scents.values()].map((one) => one.name);
    const text = `${name} is not in the table of scents${load}${isItWords(name, names)}`;
    return [...wrong, { row: (first ?? named).row, field: "scent", severity: "warning", text }];
  });
}

/** What is doubtful of the vessels that are filled; what is wrong there is only to be looked at, unless said already. */
export function vesselProblems(rows: readonly PourRow[], vessels: Vessels, said: readonly Problem[]): Problem[] {
  const names = [...vessels.values()].map(({ vessel }) => vessel);
  const first = new Map<string, PourRow>();
  for (const row of rows) if (!first.has(sameName(row.vessel))) first.set(sameName(row.vessel), row);
  return [...first].flatMap(([key, { row, vessel }]): Problem[] => {
    const { wrong = [], looks = [] } = vessels.get(key) ?? {};
    // A vessel with a fill of its own needs no row there; one whose name is a slip goes without its wick and its water.
    const near = vessels.has(key) ? "" : isItWords(vessel, names);
    const text = `${vessel} is not in the table of vessels${near}`;
    if (near !== "") return [{ row, field: "vessel", severity: "warning", text }];
    return [...looks, ...(wrong.some((one) => said.includes(one)) ? [] : wrong.map(asWarning))];
  });
}
