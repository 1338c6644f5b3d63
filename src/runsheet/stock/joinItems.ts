import type { Problem } from "../problem";
import type { ByUse } from "../tables/byUse";
import type { Item, Items } from "../tables/items";

/** Several tables of items as one. What an earlier one says of an item counts, the later ones add what it leaves open. */
export function joinItems(tables: readonly Items[]): Items {
  const joined = new Map<string, ByUse<Item>>();
  for (const items of tables) {
    for (const [name, item] of items) {
      const before = joined.get(name);
      joined.set(
        name,
        before ? { count: join(before.count, item.count), weight: join(before.weight, item.weight) } : item,
      );
    }
  }
  return joined;
}

function join(one: Item, other: Item): Item {
  const twice = one.onHand !== undefined && other.onHand !== undefined;
  const text = `${one.item}: two tables say what is on hand; that of the first is taken. Keep it in one of them`;
  const looks: Problem[] = twice ? [{ table: "items", field: "onHand", severity: "warning", text }] : [];
  return {
    item: one.item,
    use: one.use ?? other.use,
    onHand: one.onHand ?? other.onHand,
    offers: one.offers.length > 0 ? one.offers : other.offers,
    unitPrice: one.unitPrice ?? other.unitPrice,
    reorderBelow: one.reorderBelow ?? other.reorderBelow,
    wrong: [...one.wrong, ...other.wrong],
    looks: [...one.looks, ...other.looks, ...looks],
  };
}
