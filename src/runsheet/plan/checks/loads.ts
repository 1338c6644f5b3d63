import { list } from "../../../core/check/list";
import type { Problem } from "../../problem";
import { sameName } from "../../sameName";
import type { Recipes } from "../../tables/recipes";
import type { Scents } from "../../tables/scents";
import { loadText } from "../loadText";
import type { PourRow } from "../pourRows";
import type { ScentRun } from "../runPlan";

/** Rows that say the same, and scents that are melted apart because their loads differ. */
export function lookTwice(rows: readonly PourRow[], recipes: Recipes): Problem[] {
  const seen = new Set<string>();
  const loads = new Map<string, PourRow>();
  return rows.flatMap((row) => {
    const problems: Problem[] = [];
    const key = JSON.stringify([sameName(row.vessel), sameName(row.scent), sameName(row.wax), row.load, row.basis]);
    if (seen.has(key)) {
      const text = `${row.vessel} stands twice with the same scent; both rows are poured`;
      problems.push({ row: row.row, field: "vessel", severity: "warning", text });
    }
    seen.add(key);
    const scent = sameName(row.scent);
    const other = loads.get(scent) ?? row;
    loads.set(scent, other);
    if (scent !== "" && !recipes.has(scent) && (other.load !== row.load || other.basis !== row.basis)) {
      const text = `${row.scent} is here at ${loadText(row)} and elsewhere at ${loadText(other)}; they are melted apart`;
      problems.push({ row: row.row, field: "load", severity: "warning", text });
    }
    return problems;
  });
}

/** Loads that stand in a table although the scent's recipe makes another one: the recipe is poured. */
export function otherLoads(group: readonly PourRow[], { loads, load, basis }: ScentRun, recipes: Recipes): Problem[] {
  return group.flatMap((row): Problem[] => {
    if (!recipes.has(sameName(row.scent)) || !row.loadFrom) return [];
    if (Math.abs(row.load - loads[row.basis]) < 1e-9) return [];
    const text = `${row.scent}: its recipe makes ${loadText({ load, basis })}; the load of ${loadText(row)} is not used`;
    return [{ row: row.row, field: "load", severity: "warning", text }];
  });
}

/** The scents for which the default load is taken, each load once. One that no table of scents knows is said there. */
export function defaultLoads(rows: readonly PourRow[], { scents, recipes }: LoadTables): Problem[] {
  const byLoad = new Map<string, PourRow[]>();
  for (const row of rows) {
    const scent = sameName(row.scent);
    const isSaid = scents !== undefined && scent !== "" && !scents.has(scent);
    if (row.loadFrom || row.load === 0 || recipes.has(scent) || isSaid) continue;
    byLoad.set(loadText(row), [...(byLoad.get(loadText(row)) ?? []), row]);
  }
  return [...byLoad].map(([load, all]): Problem => {
    const names = [
      ...new Map(all.map(({ scent }) => [sameName(scent), scent || "candles whose scent is not named"])).values(),
    ];
    const text = `The default load, ${load}, is taken for ${list(names, "and")}: nothing else says what it is`;
    return { row: all[0]?.row ?? 0, field: "load", severity: "warning", text };
  });
}

interface LoadTables {
  /** Undefined without a table of them. */
  readonly scents: Scents | undefined;
  readonly recipes: Recipes;
}

/** Loads that are taken on another basis than their heading names: said of the first of each table. */
export function otherBases(rows: readonly PourRow[]): Problem[] {
  return (["pour", "scents"] as const).flatMap((table): Problem[] => {
    const row = rows.find(
      ({ loadFrom, saidBasis, basis }) => loadFrom === table && saidBasis && saidBasis.basis !== basis,
    );
    if (!row?.saidBasis) return [];
    const { says, basis } = row.saidBasis;
    const write = basis === "unclear" ? "one of the two there, or" : "the basis";
    const settings = basis === "unclear" ? "" : ", or set it under Settings";
    const text = `${says}, and ${row.scent || row.vessel} is taken ${row.basis}; write ${write} in a column Basis${settings}`;
    return [{ table, field: "load", severity: "error", text }];
  });
}
