/**
 * At each edit the engine (version 0.25.1) finds out anew which cells each formula of the workbook looks at, and whether
 * it calls a function that is worked out each time or finds cells by itself. Here it does so only for formulas for which
 * that may have changed.
 */

import type { IUnitRange } from "@univerjs/core";
import { FormulaDependencyGenerator } from "@univerjs/engine-formula";

/** What is private in the engine: a part of a parsed formula, and what finds the ranges that it refers to. */
interface Part {
  readonly nodeType: number;
  /** The table, where the reference names one. */
  readonly _tableReferenceObject?: unknown;
  getChildren(): readonly Part[];
}
interface Finder {
  readonly _runtimeService: { readonly currentSubUnitId: string };
  readonly _currentConfigService: {
    getSheetNameMap(): unknown;
    getUnitData(): Record<
      string,
      Record<string, { readonly rowCount: number; readonly columnCount: number } | null> | null
    >;
  };
  _generateTreeList(...data: unknown[]): Promise<unknown>;
  _detectForcedRecalculationNodeRecursion(formula: Part): boolean;
  _getAddressFunctionNodeList(formula: Part | null): Part[];
  _nodeTraversalRef(formula: Part, found: Part[]): void;
  _getRangeListByNode(of: {
    readonly node: Part | null;
    readonly refOffsetX: number;
    readonly refOffsetY: number;
  }): Promise<IUnitRange[]>;
}

const REFERENCE = 1;
const UNION = 10;

/** Whether it refers to the same cells as long as the sheets are the same: not so a table, nor what a function finds. */
const isFixed = (part: Part): boolean =>
  part.nodeType === REFERENCE
    ? !part._tableReferenceObject
    : part.nodeType === UNION && part.getChildren().every(isFixed);

const finder = FormulaDependencyGenerator.prototype as unknown as Finder;
const {
  _generateTreeList: lookThrough,
  _getRangeListByNode: find,
  _detectForcedRecalculationNodeRecursion: isEachTime,
  _getAddressFunctionNodeList: findersIn,
} = finder;

/** What formulas refer to, by the formula as parsed; another formula is parsed anew. */
let known = new WeakMap<Part, { readonly from: string; readonly ranges: IUnitRange[] }>();
/** The names and sizes of the sheets for which that holds: a reference beyond the last row is none. */
let knownFor = "";

finder._generateTreeList = function (...data) {
  const sizes = Object.values(this._currentConfigService.getUnitData()).map((sheets) =>
    Object.entries(sheets ?? {}).map(([id, sheet]) => [id, sheet?.rowCount, sheet?.columnCount]),
  );
  const sheets = JSON.stringify([this._currentConfigService.getSheetNameMap(), sizes]);
  if (sheets !== knownFor) known = new WeakMap();
  knownFor = sheets;
  return lookThrough.apply(this, data);
};

finder._getRangeListByNode = async function (of) {
  const { node, refOffsetX, refOffsetY } = of;
  if (!node) return [];
  const from = `${this._runtimeService.currentSubUnitId},${refOffsetX},${refOffsetY}`;
  const before = known.get(node);
  if (before?.from === from) return before.ranges;
  const ranges = await find.call(this, of);
  const parts: Part[] = [];
  this._nodeTraversalRef(node, parts);
  if (parts.every(isFixed)) known.set(node, { from, ranges });
  return ranges;
};

// Which functions a formula calls is so as long as it is not parsed anew. The engine asks about each part by itself too.
const eachTime = new WeakMap<Part, boolean>();
finder._detectForcedRecalculationNodeRecursion = function (formula) {
  const known = eachTime.get(formula);
  if (known !== undefined) return known;
  const is = isEachTime.call(this, formula);
  eachTime.set(formula, is);
  return is;
};
const finders = new WeakMap<Part, Part[]>();
finder._getAddressFunctionNodeList = function (formula) {
  const known = formula && finders.get(formula);
  if (known) return known;
  const found = findersIn.call(this, formula);
  if (formula) finders.set(formula, found);
  return found;
};
