/**
 * SUMIF compares all cells of its range anew for each formula (version 0.25.1), so that the time of a column of sums
 * grows with the square of its length. Here it is found once in a calculation in which rows of a column each text
 * stands.
 */

import {
  ArrayValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  functionMath,
  ValueObjectFactory,
} from "@univerjs/engine-formula";

/** What is private in SUMIF: one sum. */
interface Summing {
  _handleSingleObject(
    range: BaseReferenceObject,
    criterion: BaseValueObject,
    sumRange?: BaseReferenceObject,
  ): BaseValueObject;
}
const [Sumif] = functionMath.find(([, name]) => (name as unknown) === "SUMIF") ?? [];
const summing = (Sumif as unknown as { readonly prototype: Summing }).prototype;
const sum = summing._handleSingleObject;

/** By the cells as they were read for this calculation, for texts in small letters. */
const rowsByText = new WeakMap<ArrayValueObject, ReadonlyMap<string, readonly number[]>>();

function rowsOf(cells: ArrayValueObject): ReadonlyMap<string, readonly number[]> {
  const known = rowsByText.get(cells);
  if (known) return known;
  const found = new Map<string, number[]>();
  for (let row = 0; row < cells.getRowCount(); row++) {
    const cell = cells.get(row, 0);
    if (!cell?.isString()) continue;
    const text = String(cell.getValue()).toLocaleLowerCase();
    const rows = found.get(text);
    if (rows) rows.push(row);
    else found.set(text, [row]);
  }
  rowsByText.set(cells, found);
  return found;
}

/** Whether a criterion asks for a text as it is: not for a number or a date, not by wildcards, not for what is greater. */
const isPlain = (criterion: BaseValueObject): boolean => {
  const text = criterion.isString() ? String(criterion.getValue()) : "";
  return text !== "" && !/^[=<>]|[*?~]/.test(text) && ValueObjectFactory.create(text).isString();
};

summing._handleSingleObject = function (range, criterion, sumRange) {
  const cells = range.toArrayValueObject();
  const summed = sumRange?.toArrayValueObject() ?? cells;
  const isColumn = (array: ArrayValueObject) =>
    array.getColumnCount() === 1 && array.getRowCount() === cells.getRowCount();
  if (!isPlain(criterion) || !isColumn(cells) || !isColumn(summed)) return sum.call(this, range, criterion, sumRange);
  const rows = rowsOf(cells).get(String(criterion.getValue()).toLocaleLowerCase()) ?? [];
  return ArrayValueObject.create({
    calculateValueList: rows.map((row) => [summed.get(row, 0)]),
    ...{ rowCount: rows.length, columnCount: 1, unitId: "", sheetId: "", row: -1, column: -1 },
  }).sum();
};
