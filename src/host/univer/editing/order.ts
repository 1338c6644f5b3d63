import type { ICellData, Injector, Nullable } from "@univerjs/core";
import { SheetsSortService, type SortType } from "@univerjs/preset-sheets-sort";
import { readCell } from "../../../engine/cells";

const TEXTS = new Intl.Collator("en", { sensitivity: "accent" });

/**
 * Sorts cells by what they hold: numbers, texts, true and false, errors; blanks always last. Univer's own order takes
 * texts that were forced to be such for numbers that are none, and leaves them where they happen to be.
 */
export function addOrder(injector: Injector): void {
  injector
    .get(SheetsSortService)
    .registerCompareFn((type: SortType, a: Nullable<ICellData>, b: Nullable<ICellData>) => {
      const [left, right] = [readCell(a), readCell(b)];
      if (left === null || right === null) return Number(left === null) - Number(right === null);
      const order = rank(left) - rank(right) || within(left, right);
      return type === "desc" ? -order : order;
    });
}

type Value = NonNullable<ReturnType<typeof readCell>>;

const rank = (value: Value): number => ["number", "string", "boolean", "object"].indexOf(typeof value);

function within(a: Value, b: Value): number {
  if (typeof a === "string" && typeof b === "string") return TEXTS.compare(a, b);
  return typeof a === "object" || typeof b === "object" ? 0 : Number(a) - Number(b);
}
