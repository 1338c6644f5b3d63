import type { Injector } from "@univerjs/core";
import { ConditionalFormattingRuleModel } from "@univerjs/preset-sheets-conditional-formatting";

/**
 * Shows the conditional formats of the workbook that was open before they loaded: Univer reads its rules before what
 * works them out is there to hear of them, so they are told once more.
 */
export function showConditions(injector: Injector): void {
  const rules = injector.get(ConditionalFormattingRuleModel);
  for (const [unitId, sheets] of rules.getAll()) {
    for (const [sheetId, list] of sheets) for (const rule of list) rules.addRule(unitId, sheetId, rule);
  }
}
