/** Conditional formats of a file as the plugin keeps them, and back. */

import type { IRange, IStyleBase } from "@univerjs/core";
import type { Condition } from "../../../file/book";
import { columnLetters } from "../../../sheet/columnLetters";
import { areaOf, type Extent, rangeOf } from "./areas";
import { withFormula } from "./conditionFormula";
import { colorOf, fontData, fontOf } from "./fonts";

export interface ConditionJson {
  readonly cfId: string;
  readonly ranges: readonly IRange[];
  readonly stopIfTrue: boolean;
  readonly rule: RuleJson;
}

export type ConditionsJson = Readonly<Record<string, readonly ConditionJson[]>>;

interface ValueJson {
  readonly type: string;
  readonly value?: number | string;
}

export type RuleJson =
  | {
      readonly type: "highlightCell";
      readonly subType: string;
      readonly style?: IStyleBase;
      readonly operator?: string;
      readonly value?: unknown;
      readonly isBottom?: boolean;
      readonly isPercent?: boolean;
    }
  | {
      readonly type: "dataBar";
      readonly isShowValue: boolean;
      readonly config: {
        readonly min: ValueJson;
        readonly max: ValueJson;
        readonly isGradient: boolean;
        readonly positiveColor: string;
        readonly nativeColor: string;
      };
    }
  | {
      readonly type: "colorScale";
      readonly config: readonly { readonly index: number; readonly color: string; readonly value: ValueJson }[];
    }
  | {
      readonly type: "iconSet";
      readonly isShowValue: boolean;
      readonly config: readonly {
        readonly operator: string;
        readonly value: ValueJson;
        readonly iconType: string;
        readonly iconId: string;
      }[];
    };

/** What makes a condition, which changes as one: a formula means something else under another kind. */
export const DEFINITION = [
  "kind",
  "operator",
  "formulas",
  "text",
  "stopsAt",
  "icons",
  "rank",
  "average",
  "period",
] as const;

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

/** The first is the one that wins. Those that the plugin has no words for are left out. */
export function conditionsJson(conditions: readonly Condition[], extent: Extent): ConditionJson[] {
  return [...conditions.entries()]
    .sort(([, a], [, b]) => a.priority - b.priority)
    .flatMap(([i, condition]) => {
      const rule = ruleJson(condition);
      const ranges = condition.areas.map((area) => rangeOf(area, extent));
      return rule ? [{ cfId: `c${i}`, ranges, stopIfTrue: condition.stops, rule }] : [];
    });
}

function ruleJson(condition: Condition): RuleJson | null {
  const { kind, formulas, text, rank, average, period } = condition;
  if (kind === "colorScale" || kind === "dataBar" || kind === "iconSet") return scaleJson(condition);
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

const LITERAL = /^=?(-?\d+(?:\.\d+)?(?:E[+-]?\d+)?)$/i;

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

function scaleJson({ kind, stopsAt = [], icons }: Condition): RuleJson | null {
  const values = stopsAt.map(({ kind: type, value }) => ({
    type: type.replace(/^auto/, "").toLowerCase(),
    ...(value !== undefined && { value: valueJson(type, value) }),
  }));
  const colors = stopsAt.map(({ color }) => color);
  const [min, max] = values;
  if (kind === "colorScale" && values.length > 1 && colors.every(Boolean)) {
    return {
      type: kind,
      config: values.map((value, index) => ({ index, color: `#${colors[index]}`, value })),
    };
  }
  if (kind === "dataBar" && min && max) {
    const color = `#${colors.find(Boolean) ?? "638EC6"}`;
    return {
      type: kind,
      isShowValue: true,
      config: { min, max, isGradient: true, positiveColor: color, nativeColor: "#FF0000" },
    };
  }
  if (kind !== "iconSet" || !icons || values.length === 0) return null;
  // The plugin begins with the highest values.
  const config = values.map((value, i) => ({
    operator: stopsAt[i]?.above ? "greaterThan" : "greaterThanOrEqual",
    value,
    iconType: icons.set,
    iconId: String(icons.reversed ? i : values.length - 1 - i),
  }));
  return { type: kind, isShowValue: !icons.hidesValue, config: config.reverse() };
}

/** A file writes a formula here without its `=`. */
const valueJson = (kind: string, value: string): number | string => {
  if (kind === "formula") return `=${value}`;
  return LITERAL.test(value) ? Number(value) : value;
};

function styleJson(look: Condition["look"]): IStyleBase {
  return { ...fontData(look?.font ?? {}), ...(look?.fill && { bg: { rgb: `#${look.fill}` } }) };
}

/** By the ids of the plugin, the one that wins first. Their priorities are left to who puts them into an order. */
export function conditionsOf(json: readonly ConditionJson[] | undefined, extent: Extent): Map<string, Condition> {
  return new Map(
    (json ?? []).map(({ cfId, ranges, stopIfTrue, rule }) => [
      cfId,
      withFormula({
        areas: ranges.map((range) => areaOf(range, extent)),
        priority: 0,
        stops: stopIfTrue,
        formulas: [],
        ...definitionOf(rule),
        ...lookOf(rule),
      }),
    ]),
  );
}

function lookOf(rule: RuleJson): Pick<Condition, "look"> {
  if (rule.type !== "highlightCell" || !rule.style) return {};
  const font = fontOf(rule.style);
  const fill = colorOf(rule.style.bg?.rgb);
  return { look: { ...(Object.keys(font).length > 0 && { font }), ...(fill && { fill }) } };
}

function definitionOf(rule: RuleJson): Partial<Condition> & Pick<Condition, "kind"> {
  if (rule.type === "highlightCell") return highlightOf(rule);
  if (rule.type === "colorScale") {
    const stops = [...rule.config].sort((a, b) => a.index - b.index);
    return { kind: rule.type, stopsAt: stops.map(({ color, value }) => stopOf(value, color)) };
  }
  if (rule.type === "dataBar") {
    const { min, max, positiveColor } = rule.config;
    return { kind: rule.type, stopsAt: [stopOf(min, positiveColor), stopOf(max)] };
  }
  const lowestFirst = [...rule.config].reverse();
  const set = lowestFirst[0]?.iconType ?? "3Arrows";
  const reversed = lowestFirst.length > 1 && Number(lowestFirst[0]?.iconId) === 0;
  return {
    kind: rule.type,
    stopsAt: lowestFirst.map(({ value, operator }, i) => ({
      // The lowest icon stands for all that is below the second: the plugin says that by a number above all.
      ...(i === 0 && operator.startsWith("lessThan") ? { kind: "percent", value: "0" } : stopOf(value)),
      ...(operator === "greaterThan" && { above: true as const }),
    })),
    icons: { set, reversed, hidesValue: !rule.isShowValue },
  };
}

function stopOf({ type, value }: ValueJson, color?: string) {
  const six = colorOf(color);
  const text = value === undefined ? undefined : String(value);
  const said = type === "formula" ? text?.replace(/^=/, "") : text;
  return { kind: type, ...(said !== undefined && { value: said }), ...(six && { color: six }) };
}

function highlightOf(rule: RuleJson & { type: "highlightCell" }): Partial<Condition> & Pick<Condition, "kind"> {
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
