/** Conditional formats of a file as the plugin keeps them, and back. */

import type { Condition } from "../../../file/book";
import { areaOf, type Extent, rangesOf } from "./areas";
import { withFormula } from "./conditionFormula";
import type { ConditionJson, RuleJson } from "./conditionJson";
import { highlightJson, highlightOf, lookOf } from "./highlights";
import { isScale, scaleJson, scaleOf } from "./scales";

/** What makes a condition, which changes as one: a formula means something else under another kind. */
export const DEFINITION = [
  "kind",
  "operator",
  "formulas",
  "text",
  "stopsAt",
  "bar",
  "icons",
  "rank",
  "average",
  "period",
] as const;

/** The first is the one that wins. Those that only reach cells which the sheet does not have here are left out. */
export function conditionsJson(conditions: readonly Condition[], extent: Extent): ConditionJson[] {
  return [...conditions.entries()]
    .sort(([, a], [, b]) => a.priority - b.priority)
    .flatMap(([i, condition]) => {
      const ranges = rangesOf(condition.areas, extent);
      return ranges.length > 0
        ? [{ cfId: `c${i}`, ranges, stopIfTrue: condition.stops, rule: ruleJson(condition) }]
        : [];
    });
}

const ruleJson = (condition: Condition): RuleJson =>
  (isScale(condition) ? scaleJson(condition) : highlightJson(condition)) ?? {
    ...{ type: "highlightCell", subType: "formula", value: "=FALSE", style: {} },
    kept: condition,
  };

/** By the ids of the plugin, the one that wins first. Their priorities are left to who puts them into an order. */
export function conditionsOf(json: readonly ConditionJson[] | undefined, extent: Extent): Map<string, Condition> {
  return new Map(
    (json ?? []).map(({ cfId, ranges, stopIfTrue, rule }) => {
      const common = { areas: ranges.map((range) => areaOf(range, extent)), priority: 0, stops: stopIfTrue };
      if (rule.type !== "highlightCell") return [cfId, { formulas: [], ...common, ...scaleOf(rule) }];
      if (rule.kept) return [cfId, { ...rule.kept, ...common }];
      return [cfId, withFormula({ formulas: [], ...common, ...highlightOf(rule), ...lookOf(rule) })];
    }),
  );
}
