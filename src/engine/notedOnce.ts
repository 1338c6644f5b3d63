/**
 * At each edit the engine (version 0.25.1) notes for each formula of the workbook which cells it looks at, beside what
 * it noted before, so that this grows with each edit. Here it does so only where that has changed.
 */

import type { IUnitRange } from "@univerjs/core";
import { DependencyManagerService } from "@univerjs/engine-formula";

/** What is private in the engine: where it notes, by each formula's number. */
interface Notes {
  readonly _dependencyRTreeCache: {
    remove(noted: IUnitRange & { readonly id: number }): void;
    /** The same of ranges only, which it does not look for among the single cells. */
    _removeRTreeItem(noted: IUnitRange & { readonly id: number }): void;
  };
  addDependencyRTreeCache(formula: { readonly treeId: number; readonly rangeList: readonly IUnitRange[] }): void;
  reset(): void;
  _removeDependencyRTreeCache(formula: number): void;
  _removeAllTreeMap(formula: number): void;
  _removeDependencyRTreeCacheById(unitId: string, sheetId?: string): void;
}
const notes = DependencyManagerService.prototype as unknown as Notes;
const {
  addDependencyRTreeCache: add,
  reset,
  _removeDependencyRTreeCache: takeOut,
  _removeAllTreeMap: forget,
  _removeDependencyRTreeCacheById: dropSheet,
} = notes;

/** What is noted already. */
const noted = new WeakMap<Notes, Map<number, readonly IUnitRange[]>>();

const same = (one: IUnitRange, other: IUnitRange | undefined) =>
  one === other ||
  (one.unitId === other?.unitId &&
    one.sheetId === other.sheetId &&
    one.range.startRow === other.range.startRow &&
    one.range.endRow === other.range.endRow &&
    one.range.startColumn === other.range.startColumn &&
    one.range.endColumn === other.range.endColumn);

notes.addDependencyRTreeCache = function (formula) {
  const { treeId, rangeList } = formula;
  const all = noted.get(this) ?? new Map<number, readonly IUnitRange[]>();
  noted.set(this, all);
  const before = all.get(treeId);
  if (before?.length === rangeList.length && before.every((range, i) => same(range, rangeList[i]))) return;
  if (before) this._removeDependencyRTreeCache(treeId);
  add.call(this, formula);
  all.set(treeId, [...rangeList]);
};

// The engine goes through all cells of the smallest rectangle around what the formula looks at: for a column of formulas
// that each look at their own row and at the first one, that is half of the column for each.
notes._removeDependencyRTreeCache = function (formula) {
  const ranges = noted.get(this)?.get(formula);
  if (!ranges) return takeOut.call(this, formula);
  for (const one of ranges) {
    const { startRow, endRow, startColumn, endColumn } = one.range;
    if (startRow === endRow && startColumn === endColumn) this._dependencyRTreeCache.remove({ ...one, id: formula });
    else this._dependencyRTreeCache._removeRTreeItem({ ...one, id: formula });
  }
};

notes._removeAllTreeMap = function (formula) {
  noted.get(this)?.delete(formula);
  forget.call(this, formula);
};
notes.reset = function () {
  noted.delete(this);
  reset.call(this);
};
// What formulas of other sheets look at there goes as well.
notes._removeDependencyRTreeCacheById = function (unitId, sheetId) {
  for (const [formula, ranges] of noted.get(this) ?? []) {
    const isThere = ranges.some((one) => one.unitId === unitId && (!sheetId || one.sheetId === sheetId));
    if (isThere) noted.get(this)?.delete(formula);
  }
  dropSheet.call(this, unitId, sheetId);
};
