import type { Pack } from "../../core/buying/packPlan";
import { aboveZero } from "../../core/check/aboveZero";
import { atLeastZero } from "../../core/check/atLeastZero";
import { sum } from "../../core/statistics/sum";
import { isError, type Problem } from "../problem";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import type { ByUse, Use } from "./byUse";
import { ITEM } from "./commonFields";
import type { Field } from "./headings/field";
import { headingWords } from "./headings/headingWords";
import { ITEM_QUESTIONS } from "./itemQuestions";
import type { RowReader } from "./rowReader";
import { MONEY } from "./starterLooks";
import type { TableReader } from "./tableReader";
import { type KnownItem, type Starter, type TableType, tableType } from "./tableType";
import { isWick } from "./wick";

const FIELDS = {
  item: ITEM,
  kind: {
    name: "Kind",
    reads: "words",
    aliases: ["type", "category", "sort", "item type", "kind of item"],
    not: ["vessel", "wax", "pack", "unit"],
  },
  onHand: {
    name: "On hand",
    reads: "amount",
    aliases: [
      ...["in stock", "stock", "have", "quantity on hand", "stock level", "current stock", "in house", "available"],
    ],
    alone: ["quantity", "amount", "count", "in hand", "weight", "inventory"],
    not: ["item", "code", "value", "reorder"],
  },
  packSize: {
    name: "Pack size",
    reads: "amount",
    aliases: ["pack", "pack holds", "pack weight", "pack quantity", "size"],
  },
  packPrice: {
    name: "Pack price",
    reads: "money",
    aliases: ["price of pack", "pack cost", "price per pack", "cost per pack"],
  },
  price: {
    name: "Unit price",
    reads: "money",
    aliases: ["price", "price each", "unit cost", "cost each", "price of one", "cost"],
    not: ["pack", "selling", "sale", "retail", "wholesale", "asking", "ask"],
  },
  reorderBelow: {
    name: "Reorder below",
    reads: "amount",
    aliases: [
      ...["reorder at", "reorder level", "reorder point", "reorder when below", "order below", "minimum stock"],
      ...["minimum on hand", "reorder quantity below", "low stock at"],
    ],
    alone: ["reorder", "minimum", "minimum quantity"],
    not: ["pack", "price"],
  },
  supplier: { name: "Supplier", reads: "words", aliases: ["vendor", "bought from", "seller", "source"] },
  delivery: {
    name: "Delivery",
    reads: "money",
    aliases: ["delivery cost", "delivery charge", "shipping", "shipping cost", "postage", "carriage", "freight"],
    not: ["date", "time", "days", "address", "note", "weeks"],
  },
} satisfies Readonly<Record<string, Field>>;
type ItemField = keyof typeof FIELDS;

export const ITEMS = tableType({
  name: "Items",
  purpose:
    'All that is bought and used, by the names of the ingredients, weighed, and of the vessels and components, counted: what is on hand, the packs it is sold in, what it costs and when to buy more. A row for each pack that an item is sold in. A unit price that is not given is that of its first pack. Of what is in the table of moves, those say what is on hand and what it cost. Delivery is what one order from that supplier costs on top. Kind: wax, scent, dye, vessel, component. A unit price is for the unit of weight that its heading names, or for one vessel or component. Tables named "Stock" and "Prices" are read in the same way.',
  gives: "Items: what is on hand, packs, prices: what is missing, what to buy, the cost.",
  fields: FIELDS,
  needs: [["item"], ["onHand", "packSize", "price", "reorderBelow", "kind"]],
  unusable: "warning",
  asks: ITEM_QUESTIONS,
  starter,
  read: readItems,
});

/** A table of items under a name of before: kept in workbooks, and not offered to new ones. */
export const formerItems = (name: string, gives: string, needs: TableType<ItemField>["needs"]) =>
  tableType({
    ...ITEMS,
    name,
    purpose: `Read as a table of items: one that was made under this name goes on working. A new workbook has one table, called "Items".`,
    gives,
    needs,
    isFormer: true,
  });

/** A pack that an item is sold in, and what an order from its supplier costs on top. */
export interface Offer extends Pack {
  /** Empty where none is named. */
  readonly supplier: string;
  readonly delivery: number;
}

/** What the table says of an item. */
export interface Item {
  /** As it is written first. */
  readonly item: string;
  /** Whether its kind says that it is counted or weighed; undefined where it does not. */
  readonly use: Use | undefined;
  /** Whether its kind says that it is a wick; each table says it for itself. */
  readonly isWick?: boolean;
  /** Undefined where nobody wrote it. */
  readonly onHand: number | undefined;
  readonly offers: readonly Offer[];
  /** Of one, as it is written. */
  readonly unitPrice: number | undefined;
  readonly reorderBelow: number | undefined;
  /** What cannot be read of it, by field. */
  readonly wrong: readonly Problem[];
  readonly looks: readonly Problem[];
}

export type Items = ReadonlyMap<string, ByUse<Item>>;

interface Rows {
  readonly item: string;
  readonly kinds: string[];
  readonly onHand: number[];
  readonly offers: Offer[];
  readonly prices: number[];
  readonly reorderBelow: number[];
  readonly problems: Problem[];
}

/** The items by name. One may stand in several rows: what is on hand adds up, each row may name another pack. */
function readItems(table: TableReader<ItemField>): Items {
  const found = new Map<string, Rows>();
  for (const reader of table.rows) {
    const item = reader.text("item");
    const name = sameName(item);
    if (name === "") continue;
    const rows = found.get(name) ?? {
      ...{ item, kinds: [], onHand: [], offers: [], prices: [], reorderBelow: [], problems: [] },
    };
    found.set(name, rows);
    const amount = (field: "onHand" | "reorderBelow" | "price" | "delivery") => amountIn(reader, field);
    rows.kinds.push(reader.text("kind"));
    rows.onHand.push(...amount("onHand"));
    rows.offers.push(...packOf(reader, amount("delivery")[0] ?? 0));
    rows.prices.push(...amount("price"));
    rows.reorderBelow.push(...amount("reorderBelow"));
    rows.problems.push(...reader.problems);
  }
  const { weighed, said } = columnsOf(table);
  const unclear = unclearPrice(table);
  return new Map(
    [...found].map(([name, rows]) => {
      const ofPrice = (use: Use) => (rows.prices.length > 0 ? unclear[use] : []);
      const weight = itemOf(rows, weighed, [...said, ...ofPrice("weight")]);
      return [name, { count: itemOf(rows, COUNTED, ofPrice("count")), weight }];
    }),
  );
}

function amountIn(reader: RowReader<ItemField>, field: ItemField): number[] {
  const typed = reader.number(field);
  const checked = typed === undefined ? undefined : reader.check(field, () => atLeastZero(field, typed));
  return checked === undefined ? [] : [checked];
}

function packOf(reader: RowReader<ItemField>, delivery: number): Offer[] {
  const [size, price] = [reader.number("packSize"), reader.number("packPrice")];
  if (size === undefined || price === undefined) return [];
  const checked = reader.check("packSize", () => aboveZero("packSize", size));
  if (checked === undefined) return [];
  const paid = reader.check("packPrice", () => atLeastZero("packPrice", price));
  return paid === undefined ? [] : [{ size: checked, price: paid, supplier: reader.text("supplier"), delivery }];
}

/** The columns that hold amounts, for each how many of the wanted unit one of its own is; 1 for what is counted. */
const AMOUNTS = ["onHand", "packSize", "reorderBelow", "price"] as const;
type Ratios = Readonly<Record<(typeof AMOUNTS)[number], number>>;
const COUNTED: Ratios = { onHand: 1, packSize: 1, reorderBelow: 1, price: 1 };

/** The ratios of what is weighed, and what is to say of the columns themselves. */
function columnsOf(table: TableReader<ItemField>) {
  const scales = AMOUNTS.map((field) => ({ field, ...table.scale(field) }));
  const said = scales.flatMap(({ field, problem }) =>
    // What stands in brackets beside a price is as often its money: words that are no unit are no problem.
    problem && (field !== "price" || isError(problem)) ? [problem] : [],
  );
  const weighed = Object.fromEntries(scales.map(({ field, ratio = 1 }) => [field, ratio])) as unknown as Ratios;
  return { weighed, said };
}

/** Why it is not known what a price is for, where its heading does not say it: of what is counted, and of what is weighed. */
function unclearPrice(table: TableReader<ItemField>): ByUse<readonly Problem[]> {
  const unit = table.unitOf("price");
  if (unit && !("unknown" in unit)) return { count: [], weight: [] };
  const { words, aside } = headingWords(table.heading("price"));
  const isOfOne = [...words, ...aside].some((word) => word === "each" || word === "unit");
  const isOfPack = !isOfOne && table.has("packSize") && !table.has("packPrice");
  const sample = `"Unit price (per ${table.unit === "g" || table.unit === "kg" ? "kg" : "lb"})"`;
  const says = isOfPack
    ? `may be the price of a pack or of one unit; write "Pack price", or the unit that it is for, such as ${sample}`
    : `does not say for how much of what is weighed; write the unit that it is for, such as ${sample}`;
  const said = [table.problem("error", "price", `The heading ${table.heading("price")} ${says}`)];
  return { count: isOfPack ? said : [], weight: said };
}

function itemOf(rows: Rows, ratios: Ratios, said: readonly Problem[]): Item {
  const [[price], [reorderBelow]] = [rows.prices, rows.reorderBelow];
  return {
    item: rows.item,
    use: kindUse(rows.kinds),
    isWick: rows.kinds.some(isWick),
    onHand: rows.onHand.length > 0 ? sum(rows.onHand) * ratios.onHand : undefined,
    offers: rows.offers.map((offer) => ({ ...offer, size: offer.size * ratios.packSize })),
    unitPrice: price === undefined ? undefined : price / ratios.price,
    reorderBelow: reorderBelow === undefined ? undefined : reorderBelow * ratios.reorderBelow,
    wrong: [...rows.problems, ...said.filter(isError)],
    looks: said.filter((one) => !isError(one)),
  };
}

const COUNTS = /vessel|container|jar|tin|glass|component|wick|lid|label|box|bag|pack|tag|card|sticker/i;
const WEIGHS = /wax|scent|fragrance|oil|dye|colou?r|pigment|mica|additive/i;

/** How an item of these kinds is used: the first that says it. */
function kindUse(kinds: readonly string[]): Use | undefined {
  const kind = kinds.find((one) => COUNTS.test(one) || WEIGHS.test(one));
  return kind === undefined ? undefined : COUNTS.test(kind) ? "count" : "weight";
}

function starter(unit: WeightUnit, _: unknown, known: readonly KnownItem[]): Starter {
  return {
    note: `All that is bought and used, by the names that the run sheet uses: Wax or the ingredient, the scent, the vessel, the component. Weights in ${unit}, vessels and components by number. An item with several packs may have several rows. A unit price is only needed where there is no pack.`,
    columns: [
      { heading: "Item", width: 24 },
      { heading: "Kind", width: 12 },
      { heading: `On hand (${unit})`, width: 14 },
      { heading: `Pack size (${unit})`, width: 14 },
      { heading: "Pack price", ...MONEY },
      { heading: `Unit price (per ${unit})`, width: 18, format: "#,##0.00##" },
      { heading: `Reorder below (${unit})`, width: 18 },
      { heading: "Supplier", width: 18 },
      { heading: "Delivery", ...MONEY },
    ],
    rows: known.map(({ item, kind }) => [item, kind]),
  };
}
