/**
 * COUNTIF compares all cells of its range anew for each formula (version 0.25.1). Here it is counted once in a
 * calculation how often a value stands in a range: a column that counts its own names asks the same again and again, and
 * so do checks of the same cells.
 */

import {
  type ArrayValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  functionStatistical,
  NumberValueObject,
} from "@univerjs/engine-formula";

/** What is private in COUNTIF: one count. */
interface Counting {
  _handleSingleObject(range: BaseReferenceObject, criterion: BaseValueObject): BaseValueObject;
}
const [Countif] = functionStatistical.find(([, name]) => (name as unknown) === "COUNTIF") ?? [];
const counting = (Countif as unknown as { readonly prototype: Counting }).prototype;
const count = counting._handleSingleObject;

/** By the cells as they were read for this calculation: the engine reads a range once in it, and anew for the next. */
const counts = new WeakMap<ArrayValueObject, Map<string, number>>();

counting._handleSingleObject = function (range, criterion) {
  const cells = range.toArrayValueObject();
  const known = counts.get(cells) ?? new Map<string, number>();
  counts.set(cells, known);
  const value = criterion.getValue();
  const asked = `${criterion.isNull() ? "blank" : typeof value} ${value}`;
  const before = known.get(asked);
  if (before !== undefined) return NumberValueObject.create(before);
  const counted = count.call(this, range, criterion);
  if (counted.isNumber()) known.set(asked, counted.getValue() as number);
  return counted;
};
