/** Conditional formats that give cells another look, as the plugin keeps them, and back. */

import type { IStyleBase } from "@univerjs/core";
import type { Condition } from "../../../file/book";
import { columnLetters } from "../../../sheet/columnLetters";
import type { HighlightJson, RuleJson } from "./conditionJson";
import { colorOf, fontData, fontOf } from "./fonts";
import { LITERAL } from "./literal";

const TEXTS: Readonly<Record<string, string>> = {
  containsText: "containsText",
  notContainsText: "notContainsText",
  beginsWith: "beginsWith",
  endsWith: "endsWith",
  containsBlanks: "containsBlanks",
  notContainsBlanks: "notContainsBlanks",
  containsErrors: "containsErrors",
  notContainsErrors: "notContainsErrors",
};

/** Those of them that look for a text. */
const SOUGHT: ReadonlySet<string> = new Set(["containsText", "notContainsText", "beginsWith", "endsWith"]);

/** Null for what the plugin has no words for. */
export function highlightJson(condition: Condition): HighlightJson | null {
  const { kind, formulas, text, rank, average, period } = condition;
  const rule = { type: "highlightCell" as const, style: styleJson(condition.look) };
  if (kind === "cellIs") return { ...rule, ...comparedJson(condition) };
  if (kind === "expression") return { ...rule, subType: "formula", value: formulas[0] ?? "" };
  // Some programs write only the formula, by which Excel goes: without its text the plugin would find every cell.
  if (SOUGHT.has(kind) && !text && formulas[0]) return { ...rule, subType: "formula", value: formulas[0] };
  if (kind in TEXTS) return { ...rule, subType: "text", operator: TEXTS[kind] as string, value: text ?? "" };
  if (kind === "duplicateValues" || kind === "uniqueValues") return { ...rule, subType: kind };
  if (kind === "timePeriod") return { ...rule, subType: "timePeriod", operator: period ?? "today" };
  if (kind === "top10" && rank) {
    return { ...rule, subType: "rank", isBottom: rank.bottom, isPercent: rank.percent, value: rank.count };
  }
  if (kind === "aboveAverage" && average && !average.deviations) {
    const operator = `${average.above ? "greater" : "less"}Than${average.orEqual ? "OrEqual" : ""}`;
    return { ...rule, subType: "average", operator };
  }
  return null;
}

/** Numbers are compared by the plugin; for anything else it needs a formula for the first cell. */
function comparedJson({ operator = "equal", formulas, areas }: Condition) {
  const numbers = formulas.map((formula) => LITERAL.exec(formula)?.[1]);
  if (numbers.every((one) => one !== undefined)) {
    const values = numbers.map(Number);
    return { subType: "number", operator, value: values.length > 1 ? values : values[0] };
  }
  const cell = areas[0] ? `${columnLetters(areas[0].column)}${areas[0].row + 1}` : "A1";
  const [first, second] = formulas.map((formula) => formula.replace(/^=/, ""));
  const signs: Record<string, string> = {
    equal: "=",
    notEqual: "<>",
    greaterThan: ">",
    greaterThanOrEqual: ">=",
    lessThan: "<",
    lessThanOrEqual: "<=",
  };
  const both = `AND(${cell}>=${first},${cell}<=${second})`;
  if (operator === "between") return { subType: "formula", value: `=${both}` };
  if (operator === "notBetween") return { subType: "formula", value: `=NOT(${both})` };
  return { subType: "formula", value: `=${cell}${signs[operator] ?? "="}${first}` };
}

function styleJson(look: Condition["look"]): IStyleBase {
  return { ...fontData(look?.font ?? {}), ...(look?.fill && { bg: { rgb: `#${look.fill}` } }) };
}

export function lookOf(rule: RuleJson): Pick<Condition, "look"> {
  if (rule.type !== "highlightCell" || !rule.style) return {};
  const font = fontOf(rule.style);
  const fill = colorOf(rule.style.bg?.rgb);
  return { look: { ...(Object.keys(font).length > 0 && { font }), ...(fill && { fill }) } };
}

export function highlightOf(rule: HighlightJson): Partial<Condition> & Pick<Condition, "kind"> {
  const { subType, operator = "", value } = rule;
  if (subType === "number") {
    const values = Array.isArray(value) ? value : [value];
    return { kind: "cellIs", operator, formulas: values.map((one) => `=${one}`) };
  }
  if (subType === "formula") return { kind: "expression", formulas: [String(value)] };
  if (subType === "text") {
    if (operator in TEXTS) return { kind: operator, ...(value ? { text: String(value) } : {}) };
    return { kind: "cellIs", operator, formulas: [`="${String(value ?? "").replaceAll('"', '""')}"`] };
  }
  if (subType === "timePeriod") return { kind: subType, period: operator };
  if (subType === "rank") {
    const rank = { count: Number(value), percent: rule.isPercent === true, bottom: rule.isBottom === true };
    return { kind: "top10", rank };
  }
  if (subType === "average") {
    const average = { above: operator.startsWith("greater"), orEqual: operator.endsWith("OrEqual"), deviations: 0 };
    return { kind: "aboveAverage", average };
  }
  return { kind: subType };
}
