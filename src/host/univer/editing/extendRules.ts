/** Checks and conditional formats that cover a table's columns go on in the rows it takes in. */

import type { IMutationInfo, Injector, IRange, Worksheet } from "@univerjs/core";
import { CHECKS_RESOURCE, columnReference } from "./choices";
import type { Consequence } from "./edits";
import { heldBy } from "./lateParts";

export const FORMATS_RESOURCE = "SHEET_CONDITIONAL_FORMATTING_PLUGIN";
export const SET_CHECK = "data-validation.mutation.updateRule";
export const SET_FORMAT = "sheet.mutation.set-conditional-rule";

/** How Univer tells what of a check is changed. */
export const SETTING = 0;
const RANGES = 1;

interface Rule {
  readonly uid?: string;
  readonly cfId?: string;
  readonly ranges: readonly IRange[];
  readonly type?: string;
  readonly formula1?: string;
}

/** For a table that grows over rows below it; nothing where no rule covers its columns to the last row. */
export function extendRules(injector: Injector, sheet: Worksheet, table: IRange, endRow: number): Consequence {
  const redos: IMutationInfo[] = [];
  const undos: IMutationInfo[] = [];
  const change = (id: string, params: object, to: object, from: object) => {
    redos.push({ id, params: { ...params, ...to } });
    undos.unshift({ id, params: { ...params, ...from } });
  };
  const unitId = sheet.getUnitId();
  const rulesOf = (resource: string) => Object.entries(heldBy<Rule[]>(injector, resource, unitId));
  for (const [subUnitId, rules] of rulesOf(CHECKS_RESOURCE)) {
    for (const rule of rules) {
      const params = { unitId, subUnitId, ruleId: rule.uid };
      const ranges = subUnitId === sheet.getSheetId() ? extended(rule.ranges, table, endRow) : null;
      const payload = (type: number, given: object) => ({ payload: { type, payload: given } });
      if (ranges) change(SET_CHECK, params, payload(RANGES, ranges), payload(RANGES, [...rule.ranges]));
      const formula1 = extendedList(rule, sheet.getName(), table, endRow);
      if (formula1) change(SET_CHECK, params, payload(SETTING, { ...rule, formula1 }), payload(SETTING, { ...rule }));
    }
  }
  for (const [subUnitId, rules] of rulesOf(FORMATS_RESOURCE)) {
    if (subUnitId !== sheet.getSheetId()) continue;
    for (const rule of rules) {
      const ranges = extended(rule.ranges, table, endRow);
      const params = { unitId, subUnitId, cfId: rule.cfId };
      if (ranges) change(SET_FORMAT, params, { rule: { ...rule, ranges } }, { rule });
    }
  }
  return { redos, undos };
}

/** Ranges with those made longer that cover columns of the table down to its last row; null where none does. */
function extended(ranges: readonly IRange[], table: IRange, endRow: number): IRange[] | null {
  const covers = (range: IRange) =>
    range.endRow === table.endRow &&
    range.startRow > table.startRow &&
    range.startColumn >= table.startColumn &&
    range.endColumn <= table.endColumn;
  return ranges.some(covers) ? ranges.map((range) => (covers(range) ? { ...range, endRow } : range)) : null;
}

/** The source of a list that is a whole column of the table, over its new rows too. */
function extendedList({ type, formula1 }: Rule, sheet: string, table: IRange, endRow: number): string | null {
  if (!type?.startsWith("list") || !formula1) return null;
  for (let column = table.startColumn; column <= table.endColumn; column++) {
    const place = { sheet, row: table.startRow, column };
    const to = (last: number) => columnReference({ ...place, rows: last - table.startRow });
    const plain = (text: string) => text.replaceAll("'", "");
    if (plain(formula1) === plain(`=${to(table.endRow)}`)) return `=${to(endRow)}`;
  }
  return null;
}
