/**
 * Corrections of what SUBTOTAL and AGGREGATE make of hidden rows, version 0.25.1. Which rows are hidden no cell says, so
 * both are worked out at each calculation.
 */

import type { Injector } from "@univerjs/core";
import {
  type BaseReferenceObject,
  type BaseValueObject,
  FormulaCurrentConfigService,
  FormulaDependencyGenerator,
  functionMath,
  ISheetRowFilteredService,
} from "@univerjs/engine-formula";

const LOOKING = new Set(["SUBTOTAL", "AGGREGATE"]);

/** What is private in the engine: a part of a parsed formula, and what asks whether it is worked out each time. */
interface Part {
  readonly nodeType: number;
  getToken(): string;
}
interface Finder {
  _detectForcedRecalculationNodeRecursion(part: Part): boolean;
}
const FUNCTION = 4;

const finder = FormulaDependencyGenerator.prototype as unknown as Finder;
const isEachTime = finder._detectForcedRecalculationNodeRecursion;
finder._detectForcedRecalculationNodeRecursion = function (part) {
  return (part.nodeType === FUNCTION && LOOKING.has(part.getToken().toUpperCase())) || isEachTime.call(this, part);
};

// AGGREGATE leaves out no hidden rows unless it is told to, and then all of them, also those that a filter hides.
interface Aggregating {
  calculate(...values: (BaseValueObject | BaseReferenceObject)[]): BaseValueObject;
}
const [Aggregate] = functionMath.find(([, name]) => (name as unknown) === "AGGREGATE") ?? [];
const aggregating = (Aggregate as unknown as { readonly prototype: Aggregating }).prototype;
const aggregate = aggregating.calculate;
aggregating.calculate = function (...values) {
  for (const value of values) if (value.isReferenceObject()) (value as BaseReferenceObject).setFilteredOutRows([]);
  return aggregate.apply(this, values);
};

// Of each cell it is asked whether its row is among them.
const filteredRows = FormulaCurrentConfigService.prototype.getFilteredOutRows;
FormulaCurrentConfigService.prototype.getFilteredOutRows = function (...of) {
  const rows = filteredRows.apply(this, of);
  const all = new Set(rows);
  return Object.assign(rows, { includes: (row: number) => all.has(row) });
};

/** Lets the engine know by any filter which rows are hidden: of itself it asks only those of sheets. */
export function filteredBy(injector: Injector, isFiltered: ISheetRowFilteredService["getRowFiltered"]): void {
  injector.get(ISheetRowFilteredService).getRowFiltered = isFiltered;
}
