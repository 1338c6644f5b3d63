import type { Pack } from "../../core/buying/packPlan";
import { aboveZero } from "../../core/check/aboveZero";
import { atLeastZero } from "../../core/check/atLeastZero";
import type { WeightUnit } from "../settings";
import { type Problem, readersOf, sameName, type TableRows } from "./tableReader";
import { scaleOf } from "./weightUnits";

/** What the shelf holds of an item, and the packs it is sold in. */
export interface StockItem {
  readonly onHand: number;
  readonly packs: readonly Pack[];
  /** Why it cannot be checked. */
  readonly wrong: readonly Problem[];
  readonly looks: readonly Problem[];
}

/** An item by number, as vessels are, or by weight: in the unit of the run, whatever unit the headings name. */
export interface ByUse<T> {
  readonly count: T;
  readonly weight: T;
}

/** The stock by item. An item may stand in several rows: what is on hand adds up, each row may name another pack. */
export function readStock(table: TableRows<"stock">, unit: WeightUnit): Map<string, ByUse<StockItem>> {
  const found = new Map<string, { onHand: number; packs: Pack[]; wrong: Problem[] }>();
  for (const reader of readersOf(table)) {
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
  const [onHand, size] = [scaleOf(table, "onHand", unit), scaleOf(table, "packSize", unit)];
  const wrong = [onHand, size].flatMap(({ ratio, problem }) => (problem && ratio === undefined ? [problem] : []));
  const looks = [onHand, size].flatMap(({ ratio, problem }) => (problem && ratio !== undefined ? [problem] : []));
  return new Map(
    [...found].map(([name, item]) => {
      const packs = item.packs.map((pack) => ({ ...pack, size: pack.size * (size.ratio ?? 1) }));
      const weight = { onHand: item.onHand * (onHand.ratio ?? 1), packs, wrong: [...item.wrong, ...wrong], looks };
      return [name, { count: { ...item, looks: [] }, weight }];
    }),
  );
}

export interface Price {
  readonly price: number | undefined;
  readonly wrong: readonly Problem[];
}

/** Prices by item: of one weight unit of an ingredient, or of one vessel. */
export function readPrices(table: TableRows<"prices">, unit: WeightUnit): Map<string, ByUse<Price>> {
  const found = new Map<string, ByUse<Price>>();
  const { ratio, problem } = scaleOf(table, "price", unit);
  // What stands in brackets beside a price is as often its money: words that are no unit are no problem.
  const wrong = problem && ratio === undefined ? [problem] : [];
  for (const reader of readersOf(table)) {
    const name = sameName(reader.text("item"));
    if (name === "" || found.has(name) || reader.isBlank("price")) continue;
    const price = reader.number("price");
    const checked = price === undefined ? undefined : reader.check(() => atLeastZero("price", price));
    const perUnit = checked === undefined || ratio === undefined ? undefined : checked / ratio;
    found.set(name, {
      count: { price: checked, wrong: reader.wrong },
      weight: { price: perUnit, wrong: [...reader.wrong, ...wrong] },
    });
  }
  return found;
}
