/**
 * Corrections of references to parts of a table, version 0.25.1. The engine takes a table's last row for its row of
 * totals, as it knows nothing of one below, `@` outside the table's rows for a blank cell, and a column that the table
 * does not have for the one before its first.
 */

import type { Injector, IRange } from "@univerjs/core";
import { ErrorType, ErrorValueObject, ISuperTableService, ReferenceNodeFactory } from "@univerjs/engine-formula";

/** Whether a row of totals stands right below a table as the engine knows it; undefined for one that never had any. */
export type HasTotals = (unitId: string, tableName: string) => boolean | undefined;

const known = new WeakMap<ISuperTableService, HasTotals>();

/** Lets the engine know of rows of totals. */
export function knowTotals(injector: Injector, hasTotals: HasTotals): void {
  known.set(injector.get(ISuperTableService), hasTotals);
}

/** What is private in the engine: a reference to a part of a table, in a parsed formula. */
interface Part {
  readonly _tableData: { readonly sheetId: string; readonly range: IRange; readonly titleMap: Map<string, number> };
  readonly _columnDataString: string;
  _parseStructuredRef(
    part: string,
    titles: Map<string, number>,
  ): Pick<IRange, "startColumn" | "endColumn"> & {
    readonly type: string;
  };
  getRangeData(): IRange;
  toUnitRange(): object;
}
interface Node {
  readonly _tableReferenceObject?: Part;
  readonly _runtimeService: { readonly currentSubUnitId: string; readonly currentRow: number };
  execute(): void;
  setValue(value: ErrorValueObject): void;
}
interface Factory {
  readonly _superTableService: ISuperTableService;
  readonly _currentConfigService: { getExecuteUnitId(): string | null | undefined };
  _checkTokenIsTableReference(token: string): boolean;
  _getTableReferenceNode(token: string, ...more: unknown[]): Node | undefined;
}

const factory = ReferenceNodeFactory.prototype as unknown as Factory;

// It takes a table's name with an underscore or a point in it for none.
const ITS_NAME = /^[\p{L}_\\][\p{L}\p{N}_.]*\[.*\]$/u;
const isReference = factory._checkTokenIsTableReference;
factory._checkTokenIsTableReference = function (token) {
  return ITS_NAME.test(token) || isReference.call(this, token);
};

const nodeOf = factory._getTableReferenceNode;
factory._getTableReferenceNode = function (token, ...more) {
  const node = nodeOf.call(this, token, ...more);
  const part = node?._tableReferenceObject;
  if (!part) return node;
  const unitId = this._currentConfigService.getExecuteUnitId() ?? "";
  const [name = ""] = token.split("[");
  const hasTotals = () => known.get(this._superTableService)?.(unitId, name);
  const { sheetId, range, titleMap } = part._tableData;
  const { type, startColumn, endColumn } = part._parseStructuredRef(part._columnDataString, titleMap);

  if (type === "#All" || type === "#Totals") {
    const { getRangeData, toUnitRange } = part;
    const below = range.endRow + 1;
    const withTotals = (are: boolean): IRange => {
      const data = getRangeData.call(part);
      if (type === "#Totals") return { ...data, startRow: below, endRow: below };
      return are ? { ...data, endRow: below } : data;
    };
    part.getRangeData = () => withTotals(hasTotals() === true);
    // The formula is worked out anew also when the row of totals goes, and when it comes back.
    part.toUnitRange = () => ({ ...toUnitRange.call(part), range: withTotals(hasTotals() !== undefined) });
  }

  const isLost = Math.min(startColumn, endColumn) < range.startColumn;
  const errorIn = (sheet: string, row: number) => {
    if (isLost) return ErrorType.NAME;
    if (type === "#Totals" && !hasTotals()) return ErrorType.REF;
    const isInRows = sheet === sheetId && row > range.startRow && row <= range.endRow;
    return type === "#This Row" && !isInRows ? ErrorType.VALUE : null;
  };
  const { execute } = node;
  node.execute = function () {
    execute.call(this);
    const { currentSubUnitId, currentRow } = this._runtimeService;
    const error = errorIn(currentSubUnitId, currentRow);
    // It still says which cells it looks at, so that the formula is worked out anew when there is something.
    if (error) this.setValue(Object.assign(new ErrorValueObject(error), { toUnitRange: () => part.toUnitRange() }));
  };
  return node;
};
