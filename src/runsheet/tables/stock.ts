import type { Pack } from "../../core/buying/packPlan";
import { aboveZero } from "../../core/check/aboveZero";
import { atLeastZero } from "../../core/check/atLeastZero";
import { isError, type Problem } from "../problem";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import { ITEM } from "./commonFields";
import type { Field } from "./headings/field";
import type { RowReader } from "./rowReader";
import { MONEY } from "./starterLooks";
import type { TableReader } from "./tableReader";
import { type Starter, tableType } from "./tableType";

const FIELDS = {
  item: ITEM,
  onHand: {
    name: "On hand",
    reads: "amount",
    aliases: [
      ...["in stock", "stock", "have", "quantity on hand", "stock level", "current stock", "in house", "available"],
    ],
    alone: ["quantity", "amount", "count", "in hand", "weight", "inventory"],
    not: ["item", "code", "value"],
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
} satisfies Readonly<Record<string, Field>>;
type StockField = keyof typeof FIELDS;

export const STOCK = tableType({
  name: "Stock",
  purpose:
    "What is on hand, by the names of the ingredients, weighed, and of the vessels and components, counted. A row for each pack that an item is sold in.",
  gives: "Stock: what is missing and the packs to buy.",
  fields: FIELDS,
  needs: [["item"], ["onHand"]],
  unusable: "warning",
  asks: [],
  starter,
  read: readStock,
});

/** What the shelf holds of an item, and the packs it is sold in. */
export interface StockItem {
  readonly onHand: number;
  readonly packs: readonly Pack[];
  /** Why it cannot be checked. */
  readonly wrong: readonly Problem[];
  readonly looks: readonly Problem[];
}

/** An item by number, as vessels are, or by weight. */
export interface ByUse<T> {
  readonly count: T;
  readonly weight: T;
}

export type Stock = ReadonlyMap<string, ByUse<StockItem>>;

/** The stock by item. An item may stand in several rows: what is on hand adds up, each row may name another pack. */
function readStock(table: TableReader<StockField>): Stock {
  const found = new Map<string, { onHand: number; packs: Pack[]; wrong: Problem[] }>();
  for (const reader of table.rows) {
    const name = sameName(reader.text("item"));
    if (name === "") continue;
    const item = found.get(name) ?? { onHand: 0, packs: [], wrong: [] };
    found.set(name, item);
    const onHand = reader.number("onHand");
    item.onHand += (onHand === undefined ? 0 : reader.check("onHand", () => atLeastZero("onHand", onHand))) ?? 0;
    item.packs.push(...packOf(reader));
    item.wrong.push(...reader.problems);
  }
  const [onHand, size] = [table.scale("onHand"), table.scale("packSize")];
  const said = [onHand, size].flatMap(({ problem }) => problem ?? []);
  return new Map(
    [...found].map(([name, item]) => {
      const packs = item.packs.map((pack) => ({ ...pack, size: pack.size * (size.ratio ?? 1) }));
      const wrong = [...item.wrong, ...said.filter(isError)];
      const looks = said.filter((one) => !isError(one));
      return [
        name,
        { count: { ...item, looks: [] }, weight: { onHand: item.onHand * (onHand.ratio ?? 1), packs, wrong, looks } },
      ];
    }),
  );
}

function packOf(reader: RowReader<StockField>): Pack[] {
  const [size, price] = [reader.number("packSize"), reader.number("packPrice")];
  if (size === undefined || price === undefined) return [];
  const checked = reader.check("packSize", () => aboveZero("packSize", size));
  if (checked === undefined) return [];
  const paid = reader.check("packPrice", () => atLeastZero("packPrice", price));
  return paid === undefined ? [] : [{ size: checked, price: paid }];
}

function starter(unit: WeightUnit): Starter {
  return {
    note: `What is on hand, by the names that the run sheet uses: Wax or the ingredient, the scent, the vessel, the component. Weights in ${unit}, vessels and components by number. An item with several packs may have several rows.`,
    columns: [
      { heading: "Item", width: 24 },
      { heading: `On hand (${unit})`, width: 14 },
      { heading: `Pack size (${unit})`, width: 14 },
      { heading: "Pack price", ...MONEY },
    ],
  };
}
