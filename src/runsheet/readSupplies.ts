import type { Pack } from "../core/buying/packPlan";
import { aboveZero } from "../core/check/aboveZero";
import { atLeastZero } from "../core/check/atLeastZero";
import { type Problem, readersOf, sameName, type TableRows } from "./tableReader";

/** What the shelf holds of an item, and the packs it is sold in. */
export interface StockItem {
  readonly onHand: number;
  readonly packs: readonly Pack[];
  readonly wrong: readonly Problem[];
}

/** The stock by item. An item may stand in several rows: what is on hand adds up, each row may name another pack. */
export function readStock(table: TableRows<"stock"> | undefined): Map<string, StockItem> {
  const found = new Map<string, { onHand: number; packs: Pack[]; wrong: Problem[] }>();
  for (const reader of table ? readersOf(table) : []) {
    const name = sameName(reader.text("item"));
    if (name === "") continue;
    const item = found.get(name) ?? { onHand: 0, packs: [], wrong: [] };
    found.set(name, item);
    const onHand = reader.number("onHand");
    item.onHand += (onHand === undefined ? 0 : reader.check(() => atLeastZero("onHand", onHand))) ?? 0;
    const [size, price] = [reader.number("packSize"), reader.number("packPrice")];
    if (size !== undefined && price !== undefined) {
      const pack = reader.check(() => ({
        size: aboveZero("packSize", size),
        price: atLeastZero("packPrice", price),
      }));
      if (pack) item.packs.push(pack);
    }
    item.wrong.push(...reader.wrong);
  }
  return found;
}

/** Prices by item: of one weight unit of an ingredient, or of one vessel. */
export function readPrices(
  table: TableRows<"prices"> | undefined,
): Map<string, { price: number | undefined; wrong: readonly Problem[] }> {
  const found = new Map<string, { price: number | undefined; wrong: readonly Problem[] }>();
  for (const reader of table ? readersOf(table) : []) {
    const name = sameName(reader.text("item"));
    if (name === "" || found.has(name) || reader.isBlank("price")) continue;
    const price = reader.number("price");
    const checked = price === undefined ? undefined : reader.check(() => atLeastZero("price", price));
    found.set(name, { price: checked, wrong: reader.wrong });
  }
  return found;
}
