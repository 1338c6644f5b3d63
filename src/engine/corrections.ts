/** Corrections of the formula engine, version 0.25.1, where it computes something else than Excel. */

import {
  BaseReferenceObject,
  CELL_INVERTED_INDEX_CACHE,
  FORMULA_REF_TO_ARRAY_CACHE,
  LexerNode,
  LexerTreeBuilder,
} from "@univerjs/engine-formula";

// INDEX and OFFSET make a new reference from a part of the one they are given, and forget its sheet when that one
// was a table column: they would read the formula's own sheet. So a reference that was given a sheet but no sheet
// name keeps the sheet.
const sheetByName = BaseReferenceObject.prototype.setForcedSheetId;
BaseReferenceObject.prototype.setForcedSheetId = function (names) {
  if (this.getForcedSheetName()) sheetByName.call(this, names);
};

// The engine remembers comparisons of a column, and in what it remembers 0 and a blank are the same: the second
// formula that asks whether a cell with 0 is "" would be told that it is. So it looks at the cells each time, and
// remembers nothing: to note a result it would walk through all values of the column.
CELL_INVERTED_INDEX_CACHE.canUseCache = () => ({ rowsInCache: [], rowsNotInCache: [] });
CELL_INVERTED_INDEX_CACHE.set = () => {};
CELL_INVERTED_INDEX_CACHE.setContinueBuildingCache = () => {};

// What the engine remembers of long formulas and texts it would find by a number of 32 bits, which others may have too.
// Nor would the formulas of a table that has changed be found by their text, and those of over 64 letters stay as parsed.
interface Remembered {
  readonly _cache: { limit: number };
  _hash(text: string): string;
  set(text: string, value: unknown): void;
}
const remembered = Object.getPrototypeOf(FORMULA_REF_TO_ARRAY_CACHE) as Remembered;
remembered._hash = (text) => text;

// Of parsed formulas it keeps the last 5,000, and goes through all formulas in order at each edit: with one more than
// that each would be parsed anew, twice. What it keeps is found by the formula's text, however many there are.
const PARSED = { limit: 5000, enough: 50_000 };
const remember = remembered.set;
remembered.set = function (text, value) {
  if (this._cache.limit === PARSED.limit) this._cache.limit = PARSED.enough;
  remember.call(this, text, value);
};

// Before a formula is parsed the parser forgets what the last one left open, but not its square brackets: after a
// half-typed `Vessels[` the next new formula would be an error.
interface Names {
  getValueByName(unitId: string, name: string): unknown;
}
/** A formula with the contents of names in their place. */
interface PutIn {
  readonly sequenceString: string;
  readonly definedNames: readonly string[];
}
interface Parser {
  _handleDefinedName(pieces: unknown, names: Names): PutIn;
  _handleNestedDefinedName(content: string, names: Names): PutIn | string;
  _resetTemp(): void;
  /** Forgets all that it has taken apart. */
  dispose(): void;
  _currentLexerNode: LexerNode;
  treeBuilder(formula: string, ...more: unknown[]): unknown;
  _squareBracketState: number;
  _tableBracketState: boolean;
}
const parser = LexerTreeBuilder.prototype as unknown as Parser;
const forget = parser._resetTemp;
parser._resetTemp = function () {
  forget.call(this);
  this._squareBracketState = 0;
  this._tableBracketState = false;
};

// A name that stands in its own content would be put in its place for ever, and nothing in the workbook be worked out.
// A name for 4+6 would make 4+6*2 of its double.
const putIn = parser._handleNestedDefinedName;
const within = new Set<string>();
const CALCULATES = /[-+*/^&<>=]/;
parser._handleNestedDefinedName = function (content, names) {
  if (within.has(content)) return "#NAME?";
  within.add(content);
  try {
    const put = putIn.call(this, content, names);
    const isMore = typeof put === "object" && CALCULATES.test(content.replace(/^=|'[^']*'|"[^"]*"/g, ""));
    return isMore ? { ...put, sequenceString: `(${put.sequenceString})` } : put;
  } finally {
    within.delete(content);
  }
};

// Of the names in a formula it would know only those whose contents are an error, and a formula not be worked out anew
// when a name has come to mean something else.
const replaceNames = parser._handleDefinedName;
parser._handleDefinedName = function (pieces, names) {
  const used = new Set<string>();
  const put = replaceNames.call(this, pieces, {
    ...names,
    getValueByName: (unitId, name) => {
      const found = names.getValueByName(unitId, name);
      if (found) used.add((found as { readonly name: string }).name);
      return found;
    },
  });
  return { ...put, definedNames: [...new Set([...put.definedNames, ...used])] };
};

// The parser keeps what it has taken a formula apart into. Where a formula gives names to values, putting it together
// changes that: parsed anew, as all that read a table are when it has grown, the formula would be an error. Names of
// the workbook may mean something else by then, or in the workbook that is opened next.
const NAMES_VALUES = /\b(LET|LAMBDA)\s*\(/i;
const takeApart = parser.treeBuilder;
parser.treeBuilder = function (formula, ...more) {
  const forgetAll = () => {
    // What it took apart last is still worked with.
    this._currentLexerNode = new LexerNode();
    this.dispose();
  };
  if (NAMES_VALUES.test(formula)) forgetAll();
  const taken = takeApart.call(this, formula, ...more);
  if (taken instanceof LexerNode && taken.hasDefinedNames()) forgetAll();
  return taken;
};
