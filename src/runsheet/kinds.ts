import { bareHeading } from "./tidyHeading";

/** A table that the run sheet can read: what its columns can tell, and in which words headings say so. */
export interface Kind {
  /** What the table is called in front of a person. */
  readonly name: string;
  /** What each role is called in front of a person. */
  readonly roles: Readonly<Record<string, string>>;
  /** Words that name a role in a heading, in lower case; the earlier the better. */
  readonly words: Readonly<Record<string, readonly string[]>>;
  /** Groups of roles: of each group one must have a column. */
  readonly needs: readonly (readonly string[])[];
}

const kind = <R extends string>(
  name: string,
  roles: Readonly<Record<R, readonly [name: string, ...words: string[]]>>,
  needs: readonly (readonly NoInfer<R>[])[],
) => {
  const entries = Object.entries(roles) as [R, readonly [string, ...string[]]][];
  return {
    name,
    roles: Object.fromEntries(entries.map(([role, [called]]) => [role, called])) as Record<R, string>,
    words: Object.fromEntries(
      entries.map(([role, [called, ...words]]) => [role, [called.toLowerCase(), ...words]]),
    ) as unknown as Record<R, readonly string[]>,
    needs,
  } satisfies Kind;
};

/** The tables, each with its roles: the name in front of a person, and the words that mean it in a heading. */
export const KINDS = {
  pour: kind(
    "Pour from",
    {
      vessel: ["Vessel", "container", "jar", "candle", "product", "name", "item"],
      quantity: ["Quantity", "qty", "count", "how many", "candles", "number", "make", "pieces"],
      fill: ["Fill weight", "fill", "wax and scent"],
      water: ["Water weight", "water"],
      factor: ["Wax factor", "factor"],
      scent: ["Scent", "fragrance", "oil"],
      load: ["Load", "scent load", "scent %", "fragrance load", "fragrance %"],
      basis: ["Basis", "load basis", "of"],
    },
    [["vessel"], ["quantity"], ["fill", "water"]],
  ),
  vessels: kind(
    "Vessels",
    {
      vessel: ["Vessel", "container", "jar", "name"],
      water: ["Water weight", "water"],
      factor: ["Wax factor", "factor"],
    },
    [["vessel"], ["water"]],
  ),
  scents: kind(
    "Scents",
    {
      scent: ["Scent", "fragrance", "oil", "name"],
      load: ["Load", "scent load"],
      basis: ["Basis", "load basis"],
      waxMaximum: ["Wax maximum", "maximum load", "maximum"],
      productLimit: ["Product limit", "limit"],
      melt: ["Melt at", "melt to", "melting"],
      add: ["Add at", "add scent at", "adding"],
      pour: ["Pour at", "pouring"],
      stir: ["Stir minutes", "stir"],
      flash: ["Flash point", "flash"],
      cure: ["Cure days", "cure"],
    },
    [["scent"], ["load", "waxMaximum", "productLimit", "melt", "add", "pour", "stir", "flash", "cure"]],
  ),
  recipes: kind(
    "Recipes",
    {
      scent: ["Scent", "recipe", "fragrance", "candle", "product"],
      ingredient: ["Ingredient", "material"],
      share: ["Share", "parts", "part", "amount"],
      basis: ["Basis", "of"],
      sort: ["Kind", "type", "sort"],
    },
    [["scent"], ["ingredient"], ["share"], ["basis"]],
  ),
  stock: kind(
    "Stock",
    {
      item: ["Item", "material", "ingredient", "name", "what"],
      onHand: ["On hand", "in stock", "stock", "have"],
      packSize: ["Pack size", "pack", "pack holds"],
      packPrice: ["Pack price", "price of pack"],
    },
    [["item"], ["onHand"]],
  ),
  prices: kind(
    "Prices",
    {
      item: ["Item", "material", "ingredient", "name", "what"],
      price: [
        "Unit price",
        "price",
        "price each",
        "cost",
        ...["g", "kg", "oz", "lb"].map((unit) => `price per ${unit}`),
      ],
    },
    [["item"], ["price"]],
  ),
} as const;

export type KindName = keyof typeof KINDS;
export type Role<K extends KindName = KindName> = K extends KindName
  ? keyof (typeof KINDS)[K]["roles"] & string
  : never;

/** For each role the place of its column among the headings, from 0. A role without a column is left out. */
export type Columns<K extends KindName = KindName> = Readonly<Partial<Record<Role<K>, number>>>;

export const rolesOf = <K extends KindName>(name: K): Role<K>[] => Object.keys(KINDS[name].roles) as Role<K>[];

/** What a role is called in front of a person. */
export function roleName(name: KindName, role: string): string {
  return (KINDS[name] as Kind).roles[role] ?? role;
}

/** Words that make a heading something else, although a role's word stands in it: "Scent each" is a weight. */
const OTHER =
  /\b(each|total|cost|price|volume|height|width|diameter|check|maximum|limit|actual|note|notes|date|per|lot)\b/;

/**
 * Matches columns by their headings: a heading that is a role's word beats one that begins with it, which beats one
 * that holds it; among equals the earlier word, then the earlier column. No column serves two roles. What stands
 * in brackets (a unit, as a rule) is not read.
 */
export function matchColumns<K extends KindName>(name: K, headings: readonly string[]): Columns<K> {
  const { words } = KINDS[name] as Kind;
  const plainHeadings = headings.map((heading) => bareHeading(heading).toLowerCase());
  const found: { role: string; column: number; score: number }[] = [];
  for (const [role, list] of Object.entries(words)) {
    for (const [column, heading] of plainHeadings.entries()) {
      for (const [rank, word] of list.entries()) {
        const fit = heading === word ? 300 : OTHER.test(heading) ? 0 : fitOf(heading, word);
        if (fit > 0) found.push({ role, column, score: fit - rank });
      }
    }
  }
  found.sort((a, b) => b.score - a.score || a.column - b.column);
  const columns: Record<string, number> = {};
  const taken = new Set<number>();
  for (const { role, column } of found) {
    if (columns[role] !== undefined || taken.has(column)) continue;
    columns[role] = column;
    taken.add(column);
  }
  return columns as Columns<K>;
}

function fitOf(heading: string, word: string): number {
  if (heading.startsWith(`${word} `)) return 200;
  return ` ${heading} `.includes(` ${word} `) ? 100 : 0;
}

/** The groups of roles a table of this kind cannot do without that have no column. */
export function missingRoles<K extends KindName>(name: K, columns: Columns<K>): Role<K>[][] {
  const { needs } = KINDS[name] as Kind;
  const has = columns as Readonly<Record<string, number | undefined>>;
  return needs.filter((group) => group.every((role) => has[role] === undefined)) as Role<K>[][];
}
