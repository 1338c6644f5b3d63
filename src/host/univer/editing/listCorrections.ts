/** Corrections of lists to choose from, data validation plugin, version 0.25.1. */

import { DataValidationListCacheService, ListValidator } from "@univerjs/preset-sheets-data-validation";
import { EXAMPLE_NAME } from "./choices";

const folded = (value: unknown): string => String(value).trim().toLowerCase();

// Functions and pane find `Tin` where `tin` was typed, so a list of cells knows it too. What a list spells out itself is
// meant as it is written.
const isAsWritten = ListValidator.prototype.isValidType;
ListValidator.prototype.isValidType = async function (cell, formula, rule) {
  if (await isAsWritten.call(this, cell, formula, rule)) return true;
  if (!rule.formula1?.startsWith("=")) return false;
  const typed = folded(cell.value);
  return this.getList(rule, cell.unitId, cell.subUnitId).some((one) => folded(one) === typed);
};

// An example to write over is nothing to choose.
const compute = DataValidationListCacheService.prototype.computeAndCache;
DataValidationListCacheService.prototype.computeAndCache = function (unitId, subUnitId, rule, results) {
  const { colorMap, ...all } = compute.call(this, unitId, subUnitId, rule, results);
  const list = all.list.filter((label) => label !== EXAMPLE_NAME);
  const listWithColor = all.listWithColor.filter(({ label }) => label !== EXAMPLE_NAME);
  const item = { colorMap, list, listWithColor, set: new Set(list) };
  this.setCache(unitId, subUnitId, rule.uid, item);
  return item;
};
