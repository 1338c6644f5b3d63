/** What filters let through, in the words of the file, of the table plugin and of the filter plugin. */

import type { FilterColumn } from "../../../file/book";
import { YES } from "./codes";

/** How the table plugin says that blanks are let through. */
const BLANK = "__UNIVER_TABLE_FILTER_EMPTY__";

type Rules = NonNullable<FilterColumn["custom"]>["rules"];

/** A column's filter in the words of the table plugin. */
export type TableCriterion =
  | { readonly filterType: "manual"; readonly values: readonly string[]; readonly isAllSelected?: boolean }
  | {
      readonly filterType: "condition";
      readonly filterInfo: {
        readonly conditionType: string;
        readonly compareType: string;
        readonly expectedValue?: unknown;
      };
    };

/** A column's filter in the words of the filter plugin, which counts columns from that of the sheet. */
export interface SheetCriterion {
  readonly colId: number;
  readonly filters?: { readonly blank?: true; readonly filters?: readonly string[] };
  readonly colorFilters?: unknown;
  readonly customFilters?: {
    readonly and?: typeof YES;
    readonly customFilters: readonly { readonly val: string | number; readonly operator?: string }[];
  };
}

const isNumber = (text: string) => text.trim() !== "" && Number.isFinite(Number(text));

/** Null for what the plugin has no words for. */
export function tableCriterion({ values, custom }: FilterColumn): TableCriterion | null {
  if (values) return { filterType: "manual", values: values.map((one) => (one === "" ? BLANK : one)) };
  if (!custom) return null;
  const [first, second] = custom.rules;
  if (!first) return null;
  if (second) return betweenCriterion(custom);
  if (isNumber(first.value)) {
    return condition("number", first.operator, Number(first.value));
  }
  const { value, operator } = first;
  if (operator !== "equal" && operator !== "notEqual") return null;
  const not = operator === "notEqual";
  const inside = value.replace(/^\*|\*$/g, "");
  if (inside.length > 0 && value === `*${inside}*`)
    return condition("string", not ? "notContains" : "contains", inside);
  if (!not && inside.length > 0 && value === `${inside}*`) return condition("string", "startsWith", inside);
  if (!not && inside.length > 0 && value === `*${inside}`) return condition("string", "endsWith", inside);
  return condition("string", operator, value);
}

function condition(conditionType: string, compareType: string, expectedValue: unknown): TableCriterion {
  return { filterType: "condition", filterInfo: { conditionType, compareType, expectedValue } };
}

/** Two rules are one of the plugin's only where they enclose numbers or leave them out. */
function betweenCriterion({ and, rules }: NonNullable<FilterColumn["custom"]>): TableCriterion | null {
  const [first, second] = rules;
  if (!first || !second || !isNumber(first.value) || !isNumber(second.value)) return null;
  const range = [Number(first.value), Number(second.value)];
  const operators = `${first.operator} ${second.operator}`;
  if (and && operators === "greaterThanOrEqual lessThanOrEqual") return condition("number", "between", range);
  if (!and && operators === "lessThan greaterThan") return condition("number", "notBetween", range);
  return null;
}

/** A column's filter as the file says it; `other` for what the file format has no words for, or we do not know them. */
export function criterionOf(criterion: TableCriterion, column: number): FilterColumn {
  if (criterion.filterType === "manual") {
    return { column, values: criterion.values.map((one) => (one === BLANK ? "" : String(one))) };
  }
  const { conditionType, compareType, expectedValue } = criterion.filterInfo;
  const rules = conditionType === "number" ? numberRules(compareType, expectedValue) : null;
  const custom = rules ?? (conditionType === "string" ? textRules(compareType, String(expectedValue)) : null);
  return custom ? { column, custom } : { column, other: true };
}

const COMPARED = new Set(["equal", "notEqual", "greaterThan", "greaterThanOrEqual", "lessThan", "lessThanOrEqual"]);

function numberRules(operator: string, expected: unknown): FilterColumn["custom"] | null {
  if (COMPARED.has(operator)) return one(operator, String(expected));
  if (!Array.isArray(expected) || expected.length !== 2) return null;
  const [least, most] = expected.map(Number).sort((a, b) => a - b);
  const rules = (first: string, second: string): Rules => [
    { operator: first, value: String(least) },
    { operator: second, value: String(most) },
  ];
  if (operator === "between") return { and: true, rules: rules("greaterThanOrEqual", "lessThanOrEqual") };
  if (operator === "notBetween") return { and: false, rules: rules("lessThan", "greaterThan") };
  return null;
}

function textRules(operator: string, text: string): FilterColumn["custom"] | null {
  if (operator === "equal" || operator === "notEqual") return one(operator, text);
  if (operator === "contains") return one("equal", `*${text}*`);
  if (operator === "notContains") return one("notEqual", `*${text}*`);
  if (operator === "startsWith") return one("equal", `${text}*`);
  if (operator === "endsWith") return one("equal", `*${text}`);
  return null;
}

const one = (operator: string, value: string): FilterColumn["custom"] => ({ and: false, rules: [{ operator, value }] });

/** Null for what the plugin has no words for. */
export function sheetCriterion({ column, values, custom }: FilterColumn, firstColumn: number): SheetCriterion | null {
  const colId = firstColumn + column;
  if (values) {
    const filters = values.filter((one) => one !== "");
    return { colId, filters: { ...(filters.length < values.length && { blank: true }), filters } };
  }
  if (!custom || custom.rules.length === 0) return null;
  return {
    colId,
    customFilters: {
      ...(custom.and && { and: YES }),
      // An equal text is one that matches, and said without a word for it.
      customFilters: custom.rules.map(({ operator, value }) => {
        if (isNumber(value)) return { val: Number(value), operator };
        return operator === "equal" ? { val: value } : { val: value, operator };
      }),
    },
  };
}

export function sheetCriterionOf({ colId, filters, customFilters }: SheetCriterion, firstColumn: number): FilterColumn {
  const column = colId - firstColumn;
  if (filters) return { column, values: [...(filters.filters ?? []), ...(filters.blank ? [""] : [])] };
  if (!customFilters) return { column, other: true };
  const rules = customFilters.customFilters.map(({ val, operator }) => ({
    operator: operator ?? "equal",
    value: String(val),
  }));
  return { column, custom: { and: customFilters.and === YES, rules } };
}
