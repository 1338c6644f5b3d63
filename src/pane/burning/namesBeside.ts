import { sameName } from "../../runsheet/sameName";
import type { AllTables } from "../../runsheet/series/seriesNeeds";
import type { TableTypeId } from "../../runsheet/tables/registry";

/** Names by how they are the same, each in the spelling that stands first. */
export type Names = ReadonlyMap<string, string>;

type Source = readonly [kind: TableTypeId, field: string];

const IN_TABLES: Readonly<Record<"vessel" | "wax" | "scent" | "wick", readonly Source[]>> = {
  vessel: [
    ["vessels", "vessel"],
    ["pour", "vessel"],
    ["burnTests", "vessel"],
  ],
  wax: [
    ["pour", "wax"],
    ["burnTests", "wax"],
  ],
  scent: [
    ["scents", "scent"],
    ["pour", "scent"],
    ["burnTests", "scent"],
  ],
  wick: [
    ["vessels", "wick"],
    ["burnTests", "wick"],
  ],
};
const OF_KIND = {
  vessel: /vessel|container|jar|tin\b|glass/i,
  wax: /wax/i,
  scent: /scent|fragrance|oil/i,
  wick: /wick/i,
} as const;

/** The vessels, waxes, scents and wicks that the tables name: items by their kind, before all others. */
export function namesBeside(tables: AllTables): Readonly<Record<keyof typeof IN_TABLES, Names>> {
  const items = textsOf(tables, "items", "item");
  const kinds = textsOf(tables, "items", "kind");
  const named = (what: keyof typeof IN_TABLES): Names => {
    const all = [
      ...items.filter((_, i) => OF_KIND[what].test(kinds[i] ?? "")),
      ...IN_TABLES[what].flatMap(([kind, field]) => textsOf(tables, kind, field)),
    ].filter((name) => name !== "");
    const spelt = new Map<string, string>();
    for (const name of all) if (!spelt.has(sameName(name))) spelt.set(sameName(name), name);
    return spelt;
  };
  return { vessel: named("vessel"), wax: named("wax"), scent: named("scent"), wick: named("wick") };
}

/** What a column holds, row by row; nothing where it is not there. */
function textsOf(tables: AllTables, kind: TableTypeId, field: string): string[] {
  const table = tables[kind];
  const column = (table?.columns as Readonly<Record<string, number>> | undefined)?.[field];
  if (!table || column === undefined) return [];
  return table.rows.map((row) => {
    const cell = row[column];
    return typeof cell === "string" || typeof cell === "number" ? String(cell).trim() : "";
  });
}
