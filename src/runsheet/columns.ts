/** What a column of the table can tell the run sheet. */
export const ROLES = ["vessel", "quantity", "fill", "water", "factor", "scent", "load", "basis"] as const;
export type Role = (typeof ROLES)[number];

/** What each role is called in front of a person. */
export const ROLE_NAMES: Readonly<Record<Role, string>> = {
  vessel: "Vessel",
  quantity: "Quantity",
  fill: "Fill weight",
  water: "Water weight",
  factor: "Wax factor",
  scent: "Scent",
  load: "Load",
  basis: "Basis",
};

/** For each role the place of its column among the headings, from 0. A role without a column is left out. */
export type Columns = Readonly<Partial<Record<Role, number>>>;

/** Words that name a role in a heading, in lower case; the earlier the better. */
const WORDS: Readonly<Record<Role, readonly string[]>> = {
  vessel: ["vessel", "container", "jar", "candle", "product", "name", "item"],
  quantity: ["quantity", "qty", "count", "how many", "candles", "number", "make", "pieces"],
  fill: ["fill weight", "fill", "wax and scent"],
  water: ["water weight", "water"],
  factor: ["wax factor", "factor"],
  scent: ["scent", "fragrance", "oil"],
  load: ["load", "scent load", "scent %", "fragrance load", "fragrance %"],
  basis: ["basis", "load basis", "of"],
};

/** Words that make a heading something else, although a role's word stands in it: "Scent each" is a weight. */
const OTHER = /\b(each|total|cost|price|volume|check|maximum|limit|actual|note|notes|date|per|lot)\b/;

/**
 * Matches columns by their headings: a heading that is a role's word beats one that begins with it, which beats one
 * that holds it; among equals the earlier word, then the earlier column. No column serves two roles.
 */
export function matchColumns(headings: readonly string[]): Columns {
  const plainHeadings = headings.map((heading) =>
    heading
      .toLowerCase()
      .replace(/\(.*?\)|[_*:]/g, " ")
      .replace(/\s+/g, " ")
      .trim(),
  );
  const found: { role: Role; column: number; score: number }[] = [];
  for (const role of ROLES) {
    for (const [column, heading] of plainHeadings.entries()) {
      for (const [rank, word] of WORDS[role].entries()) {
        const fit = heading === word ? 300 : OTHER.test(heading) ? 0 : fitOf(heading, word);
        if (fit > 0) found.push({ role, column, score: fit - rank });
      }
    }
  }
  found.sort((a, b) => b.score - a.score || a.column - b.column);
  const columns: Partial<Record<Role, number>> = {};
  const taken = new Set<number>();
  for (const { role, column } of found) {
    if (columns[role] !== undefined || taken.has(column)) continue;
    columns[role] = column;
    taken.add(column);
  }
  return columns;
}

function fitOf(heading: string, word: string): number {
  if (heading.startsWith(`${word} `)) return 200;
  return ` ${heading} `.includes(` ${word} `) ? 100 : 0;
}

/** The roles a run sheet cannot do without that have no column. Water with a factor does in place of a fill. */
export function missingRoles(columns: Columns): Role[] {
  const missing: Role[] = [];
  if (columns.vessel === undefined) missing.push("vessel");
  if (columns.quantity === undefined) missing.push("quantity");
  if (columns.fill === undefined && columns.water === undefined) missing.push("fill");
  return missing;
}
