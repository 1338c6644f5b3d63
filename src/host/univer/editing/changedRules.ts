/** The formulas in checks and conditional formats, changed wherever they stand. */

import type { IMutationInfo, Injector } from "@univerjs/core";
import { CHECKS_RESOURCE } from "./choices";
import type { Consequence } from "./edits";
import { FORMATS_RESOURCE, SET_CHECK, SET_FORMAT, SETTING } from "./extendRules";
import { heldBy } from "./lateParts";

type Change = (formula: string) => string;

export function changedRules(injector: Injector, unitId: string, change: Change): Consequence {
  const redos: IMutationInfo[] = [];
  const undos: IMutationInfo[] = [];
  const changeAll = (resource: string, mutation: (sheet: string, rule: object) => IMutationInfo) => {
    for (const [sheet, rules] of Object.entries(heldBy<object[]>(injector, resource, unitId))) {
      for (const rule of rules) {
        const now = changed(rule, change);
        if (JSON.stringify(now) === JSON.stringify(rule)) continue;
        redos.push(mutation(sheet, now));
        undos.unshift(mutation(sheet, rule));
      }
    }
  };
  changeAll(CHECKS_RESOURCE, (sheet, rule) => ({
    id: SET_CHECK,
    params: {
      ...{ unitId, subUnitId: sheet, ruleId: (rule as { uid: string }).uid },
      payload: { type: SETTING, payload: rule },
    },
  }));
  changeAll(FORMATS_RESOURCE, (sheet, rule) => ({
    id: SET_FORMAT,
    params: { unitId, subUnitId: sheet, cfId: (rule as { cfId: string }).cfId, rule },
  }));
  return { redos, undos };
}

/** A rule with the formulas changed that stand anywhere in it. */
function changed<T>(part: T, change: Change): T {
  if (typeof part === "string") return (part.startsWith("=") ? change(part) : part) as T;
  if (Array.isArray(part)) return part.map((one) => changed(one, change)) as T;
  if (typeof part !== "object" || part === null) return part;
  return Object.fromEntries(Object.entries(part).map(([key, one]) => [key, changed(one, change)])) as T;
}
