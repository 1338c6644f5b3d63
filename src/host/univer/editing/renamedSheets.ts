/** What checks and conditional formats read of a sheet goes on when that is called another way, as cells' formulas do. */

import { type IMutationInfo, type Injector, IUniverInstanceService, type Workbook } from "@univerjs/core";
import { SetWorksheetNameCommand, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { inAnyCase, type Renames, renamedIn } from "../../../file/write/renames";
import { CHECKS_RESOURCE } from "./choices";
import { FORMATS_RESOURCE, SET_CHECK, SET_FORMAT, SETTING } from "./extendRules";
import { heldBy } from "./lateParts";

interface Rename {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly name: string;
}

export function followRenames(injector: Injector): void {
  injector.get(SheetInterceptorService).interceptCommand({
    getMutations: ({ id, params }) =>
      id === SetWorksheetNameCommand.id ? rewritten(injector, params as Rename) : { redos: [], undos: [] },
  });
}

function rewritten(
  injector: Injector,
  { unitId, subUnitId, name }: Rename,
): { redos: IMutationInfo[]; undos: IMutationInfo[] } {
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId);
  const old = workbook?.getSheetBySheetId(subUnitId)?.getName();
  if (old === undefined) return { redos: [], undos: [] };
  const names = inAnyCase([[old, name]]);
  const redos: IMutationInfo[] = [];
  const undos: IMutationInfo[] = [];
  const change = (resource: string, mutation: (sheet: string, rule: object) => IMutationInfo) => {
    for (const [sheet, rules] of Object.entries(heldBy<object[]>(injector, resource, unitId))) {
      for (const rule of rules) {
        const now = withNames(rule, names);
        if (JSON.stringify(now) === JSON.stringify(rule)) continue;
        redos.push(mutation(sheet, now));
        undos.unshift(mutation(sheet, rule));
      }
    }
  };
  change(CHECKS_RESOURCE, (sheet, rule) => ({
    id: SET_CHECK,
    params: {
      ...{ unitId, subUnitId: sheet, ruleId: (rule as { uid: string }).uid },
      payload: { type: SETTING, payload: rule },
    },
  }));
  change(FORMATS_RESOURCE, (sheet, rule) => ({
    id: SET_FORMAT,
    params: { unitId, subUnitId: sheet, cfId: (rule as { cfId: string }).cfId, rule },
  }));
  return { redos, undos };
}

/** A rule with the formulas that stand anywhere in it by the sheets' new names. */
function withNames<T>(part: T, names: Renames): T {
  if (typeof part === "string") return (part.startsWith("=") ? renamedIn(part, names) : part) as T;
  if (Array.isArray(part)) return part.map((one) => withNames(one, names)) as T;
  if (typeof part !== "object" || part === null) return part;
  return Object.fromEntries(Object.entries(part).map(([key, one]) => [key, withNames(one, names)])) as T;
}
