import { headingUnit } from "./headings/headingUnit";
import { type HeadingWords, headingWords, VESSEL_WORDS } from "./headings/headingWords";

/** What stands in the cells of a field. A heading that says another measure is another field's. */
export type Reads =
  | "name"
  | "words"
  | "count"
  | "amount"
  | "weight"
  | "factor"
  | "share"
  | "parts"
  | "temperature"
  | "time"
  | "days"
  | "money";

/** One field of a table: what it is called, and in which words headings say it. */
export interface Field {
  /** In front of a person; a heading may say it so too. */
  readonly name: string;
  readonly reads: Reads;
  /** Words that name it in a heading, alone or among others; the earlier the better. */
  readonly words: readonly string[];
  /** Words that name it only where the heading says nothing else. */
  readonly alone?: readonly string[];
  /** Words that may name it: taken where nothing says it better, and asked about. */
  readonly unsure?: readonly string[];
  /** Words beside which its own mean something else. */
  readonly not?: readonly string[];
}

/** A table that the run sheet can read: what its columns can tell, and in which words headings say so. */
export interface Kind {
  /** What the table is called in front of a person. */
  readonly name: string;
  readonly fields: Readonly<Record<string, Field>>;
  /** What each role is called in front of a person. */
  readonly roles: Readonly<Record<string, string>>;
  /** All words that name a role in a heading, in lower case; the earlier the better. */
  readonly words: Readonly<Record<string, readonly string[]>>;
  /** Groups of roles: of each group one must have a column. */
  readonly needs: readonly (readonly string[])[];
}

const kind = <R extends string>(
  name: string,
  fields: Readonly<Record<R, Field>>,
  needs: readonly (readonly NoInfer<R>[])[],
) => {
  const each = <T>(of: (field: Field) => T) =>
    Object.fromEntries(Object.entries<Field>(fields).map(([role, field]) => [role, of(field)])) as Record<R, T>;
  return {
    name,
    fields,
    roles: each((field) => field.name),
    words: each((field) => wordsOf(field).map(([word]) => word)),
    needs,
  } satisfies Kind;
};

/** The words of a field with how well each fits at best. */
function wordsOf({ name, words, alone = [], unsure = [] }: Field): [word: string, best: keyof typeof FITS][] {
  return [
    ...[name.toLowerCase(), ...words].map((word) => [word, "same"] as [string, "same"]),
    ...alone.map((word) => [word, "alone"] as [string, "alone"]),
    ...unsure.map((word) => [word, "unsure"] as [string, "unsure"]),
  ];
}

/** How well a heading fits a word of a field: far enough apart for the places of the words between them. */
const FITS = { same: 900, otherOrder: 800, begins: 600, alone: 500, holds: 300, unsure: 100 } as const;

const VESSEL: Field = {
  name: "Vessel",
  reads: "name",
  words: [...VESSEL_WORDS.slice(1), "candle", "product", "item name", "holder"],
  alone: ["name", "item", "sku", "size", "vessels", "containers", "jars", "tins", "candles", "products"],
  not: ["scent", "wax"],
};
const WATER: Field = {
  name: "Water weight",
  reads: "weight",
  words: ["water", "water each", "water weight each"],
  not: ["wax", "scent"],
};
const FACTOR: Field = {
  name: "Wax factor",
  reads: "factor",
  words: ["factor", "fill factor", "water to wax", "wax to water", "wax for one of water"],
};
const SCENT: Field = { name: "Scent", reads: "name", words: ["scent name", "fragrance", "oil"] };
const LOAD: Field = {
  name: "Load",
  reads: "share",
  words: ["scent load", "scent %", "fragrance load", "fragrance %", "oil load", "oil %", "scent rate", "load %"],
  alone: ["%", "scent amount %", "scent added %"],
  not: ["wax"],
};
const BASIS: Field = {
  name: "Basis",
  reads: "words",
  words: ["load basis", "scent basis", "% basis"],
  alone: ["of", "load of", "% of", "based on"],
};
const ITEM: Field = {
  name: "Item",
  reads: "name",
  words: ["material", "ingredient", "item name", "supply"],
  alone: ["name", "what", "product", "description", "thing", "wax", "scent"],
};

/** The tables, each with its fields. */
export const KINDS = {
  pour: kind(
    "Pour from",
    {
      vessel: VESSEL,
      quantity: {
        name: "Quantity",
        reads: "count",
        words: ["how many", "to make", "to pour", "count", "pieces", "number of", "number to make", "batch quantity"],
        alone: [
          ...["make", "candles", "number", "pcs", "pc", "units", "total quantity", "total candles", "candles total"],
          ...["batch size", "batch", "jars", "tins", "containers", "vessels", "ordered", "planned", "batch count"],
          ...["jars needed", "candles needed"],
        ],
      },
      fill: {
        name: "Fill weight",
        reads: "weight",
        words: [
          "fill",
          "wax and scent",
          "wax scent",
          "net weight",
          "pour weight",
          "candle fill",
          "fill each",
          "pour each",
        ],
        alone: ["fill amount each", "fill weight each", "net", "total each", "wax and scent each"],
      },
      water: WATER,
      factor: FACTOR,
      scent: SCENT,
      load: LOAD,
      basis: BASIS,
    },
    [["vessel"], ["quantity"], ["fill", "water"]],
  ),
  vessels: kind(
    "Vessels",
    {
      vessel: VESSEL,
      water: WATER,
      factor: FACTOR,
    },
    [["vessel"], ["water"]],
  ),
  scents: kind(
    "Scents",
    {
      scent: { ...SCENT, alone: ["name", "blend", "product"] },
      load: LOAD,
      basis: BASIS,
      waxMaximum: {
        name: "Wax maximum",
        reads: "share",
        words: ["wax limit", "most the wax holds", "wax holds"],
        unsure: ["maximum load", "maximum scent", "maximum %", "maximum"],
      },
      productLimit: {
        name: "Product limit",
        reads: "share",
        words: ["candle limit", "safety limit", "safe limit", "legal limit"],
      },
      melt: {
        name: "Melt at",
        reads: "temperature",
        words: ["melt to", "melt", "heat to", "heat wax to"],
        not: ["point"],
      },
      add: {
        name: "Add at",
        reads: "temperature",
        words: [
          "add scent at",
          "add scent",
          "adding",
          "scent temperature",
          "scent in at",
          "scent at",
          "stir in at",
          "add",
        ],
      },
      pour: { name: "Pour at", reads: "temperature", words: ["pour temperature", "pour"] },
      stir: { name: "Stir minutes", reads: "time", words: ["stir for", "stir time", "stir", "stir min"] },
      flash: { name: "Flash point", reads: "temperature", words: ["flash", "flash temperature", "fp"], not: ["wax"] },
      cure: { name: "Cure days", reads: "days", words: ["cure time", "cure for", "cure"] },
    },
    [["scent"], ["load", "waxMaximum", "productLimit", "melt", "add", "pour", "stir", "flash", "cure"]],
  ),
  recipes: kind(
    "Recipes",
    {
      scent: { ...SCENT, words: [...SCENT.words, "recipe", "blend", "candle", "product"], not: ["ingredient"] },
      ingredient: {
        name: "Ingredient",
        reads: "name",
        words: ["material", "raw material", "component", "made of"],
        alone: ["item", "name", "what", "wax or scent"],
      },
      share: {
        name: "Share",
        reads: "parts",
        words: ["parts", "part", "amount", "proportion", "quantity"],
        alone: ["%", "load", "ratio", "weight", "share %", "scent %", "load %"],
        not: ["number"],
      },
      basis: { ...BASIS, words: [...BASIS.words, "share basis"] },
      sort: { name: "Kind", reads: "words", words: ["type", "sort", "category"], not: ["vessel", "scent"] },
    },
    [["scent"], ["ingredient"], ["share"], ["basis"]],
  ),
  stock: kind(
    "Stock",
    {
      item: ITEM,
      onHand: {
        name: "On hand",
        reads: "amount",
        words: [
          "in stock",
          "stock",
          "have",
          "quantity on hand",
          "stock level",
          "current stock",
          "in house",
          "available",
        ],
        alone: ["quantity", "amount", "count", "in hand", "weight", "inventory"],
        not: ["item", "code", "value"],
      },
      packSize: {
        name: "Pack size",
        reads: "amount",
        words: ["pack", "pack holds", "pack weight", "pack quantity", "size"],
      },
      packPrice: {
        name: "Pack price",
        reads: "money",
        words: ["price of pack", "pack cost", "price per pack", "cost per pack"],
      },
    },
    [["item"], ["onHand"]],
  ),
  prices: kind(
    "Prices",
    {
      item: ITEM,
      price: {
        name: "Unit price",
        reads: "money",
        words: ["price", "price each", "unit cost", "cost each", "price of one", "cost"],
        not: ["pack", "selling", "sale", "retail", "wholesale", "asking", "ask"],
      },
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

/** A role that a heading may name. */
export interface Fit {
  readonly role: string;
  readonly score: number;
  /** Whether the heading does not say it plainly: it is to be asked about. */
  readonly isUnsure: boolean;
}

/** The roles that a heading may name, each with how well its words fit. */
export function fitsOf(name: KindName, heading: string): Fit[] {
  const read = headingWords(heading);
  const found = Object.entries((KINDS[name] as Kind).fields).flatMap(([role, field]) => {
    const worth = isMeasureOf(field.reads, heading, read);
    if (worth === 0) return [];
    const fits = wordsOf(field).map(([word, best], rank) => {
      const fit = fitOf(read, headingWords(word).words, best, field);
      return { role, score: fit === 0 ? 0 : fit * worth - rank, isUnsure: best === "unsure" };
    });
    const [top] = fits.filter(({ score }) => score > 0).sort((a, b) => b.score - a.score);
    return top ? [top] : [];
  });
  return found.some(({ isUnsure }) => !isUnsure) ? found.filter(({ isUnsure }) => !isUnsure) : found;
}

/**
 * Matches columns by their headings: a heading that is a role's word beats one that begins with it, which beats one
 * that holds it; among equals the earlier word, then the earlier column. No column serves two roles.
 */
export function matchColumns<K extends KindName>(name: K, headings: readonly string[]): Columns<K> {
  const found = headings.flatMap((heading, column) => fitsOf(name, heading).map((fit) => ({ ...fit, column })));
  found.sort((a, b) => b.score - a.score || a.column - b.column);
  const columns = new Map<string, number>();
  for (const { role, column } of found) {
    if (!columns.has(role) && ![...columns.values()].includes(column)) columns.set(role, column);
  }
  return Object.fromEntries(columns) as Columns<K>;
}

/** Words that make a heading something else than what its other words say: a limit of it, its cost, one of a pair. */
export const OTHER: ReadonlySet<string> = new Set(
  [
    "maximum minimum range each per total totals sum subtotal cost costs price prices volume height width diameter",
    "depth length shape colour color check checked ok status actual real weighed measured made poured sold done used",
    "left note notes remark remarks comment comments date due until start end old last previous prior before then",
    "former change supplier brand url link photo picture image lot label labels sticker lid lids wick wicks box boxes",
    "warning tare empty gross shipping postage margin discount tax vat fee loss waste reject rejects yield pot pots dye",
    "dyes pigment mica additive additives uv dozen dozens case cases crate crates",
  ]
    .join(" ")
    .split(" "),
);

/** Words beside which a measure is another one. */
const CLASH: Readonly<Partial<Record<Reads, string>>> = {
  name: "weight % load quantity number count amount factor water fill temperature time minutes point melt cure day flash stir rate ratio share basis strength family",
  count: "% load wax scent water factor temperature time day fill",
  weight: "% load factor temperature time day ratio number count quantity batch",
  factor: "scent load weight",
  share: "weight factor temperature time day quantity number count water fill point ratio basis hand stock size",
  temperature: "% weight time minutes",
  time: "% weight temperature",
  days: "% weight temperature",
  money: "% quantity hand",
};

function fitOf(heading: HeadingWords, word: readonly string[], best: keyof typeof FITS, field: Field): number {
  const { words, aside, basis } = heading;
  // A limit of wax is the wax's, one of the total the product's.
  const of =
    basis === undefined || ![...words, ...aside].includes("maximum") ? [] : [basis === "of wax" ? "wax" : "product"];
  const clash = new Set([...(CLASH[field.reads]?.split(" ") ?? []), ...(field.not ?? [])]);
  const isOther = (one: string) => OTHER.has(one) || clash.has(one);
  const within = (all: readonly string[], isStopped: boolean): number => {
    const rest = [...all];
    for (const one of word) {
      if (!rest.includes(one)) return 0;
      rest.splice(rest.indexOf(one), 1);
    }
    if (field.reads === "share" && rest.includes("%")) rest.splice(rest.indexOf("%"), 1);
    if (isStopped || rest.some(isOther)) return 0;
    const isInOrder = ` ${all.join(" ")} `.startsWith(` ${word.join(" ")} `);
    if (rest.length === 0) return best === "same" && !isInOrder ? FITS.otherOrder : FITS[best];
    if (best !== "same") return best === "unsure" ? FITS.unsure - 10 : 0;
    return isInOrder ? FITS.begins : FITS.holds;
  };
  return Math.max(
    within(
      words,
      [...aside, ...of].some((one) => OTHER.has(one)),
    ),
    aside.length + of.length > 0 ? within([...words, ...aside, ...of], false) : 0,
  );
}

/** How far the unit of a heading lets it be such a measure: 1, less where it is to be asked about, 0 where it does not. */
function isMeasureOf(reads: Reads, heading: string, { words }: HeadingWords): number {
  const unit = headingUnit(heading);
  const isPercent = words.includes("%");
  const is = unit && ("weight" in unit ? "weight" : "other" in unit ? unit.other : undefined);
  if (reads === "parts" || reads === "money" || reads === "words") return 1;
  if (reads === "weight") return isPercent ? 0 : is === undefined || is === "weight" ? 1 : 0.25;
  if (reads === "amount") return isPercent || is === "a temperature" || is === "a time" ? 0 : 1;
  if (reads === "days" && unit && "other" in unit && !/^d(ays?)?\.?$/i.test(unit.words)) return 0;
  if (reads === "time" || reads === "days") return is === undefined || is === "a time" ? 1 : 0;
  if (reads === "temperature") return is === undefined || is === "a temperature" ? 1 : 0;
  if (reads === "factor") return is === "weight" ? 0 : 1;
  if (is === "a temperature" || is === "a time" || is === "a length") return 0;
  return is === "weight" || is === "a volume" || (reads === "count" && (isPercent || is !== undefined)) ? 0 : 1;
}

/** The groups of roles a table of this kind cannot do without that have no column. */
export function missingRoles<K extends KindName>(name: K, columns: Columns<K>): Role<K>[][] {
  const { needs } = KINDS[name] as Kind;
  const has = columns as Readonly<Record<string, number | undefined>>;
  return needs.filter((group) => group.every((role) => has[role] === undefined)) as Role<K>[][];
}
