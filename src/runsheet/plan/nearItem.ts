import { sameName } from "../sameName";
import type { Supplies } from "../stock/supplies";
import type { Use } from "./beside";
import { isItWords } from "./nearName";

/**
 * `. Is it Soft wax?` of an item that no table knows, among those that the run does not use by themselves; empty where
 * a table knows it, or none of them is near.
 */
export function isItItem(
  { item, isCounted }: Omit<Use, "amount">,
  used: readonly Pick<Use, "item">[],
  { all }: Pick<Supplies, "all">,
): string {
  const own = new Set(used.map((one) => sameName(one.item)));
  if (all.some((one) => sameName(one.item) === sameName(item))) return "";
  const kind = isCounted ? "count" : "weight";
  const others = all.filter((one) => (one.use ?? kind) === kind && !own.has(sameName(one.item)));
  return isItWords(
    item,
    others.map((one) => one.item),
  );
}
