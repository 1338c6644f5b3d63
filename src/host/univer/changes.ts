/** What each mutation of Univer's changes of a workbook's data, and whether it is the user's doing. */

import { CommandType, type ICommandInfo, ICommandService, type IExecutionOptions, type Injector } from "@univerjs/core";
import { RemoveDefinedNameMutation, SetDefinedNameMutation } from "@univerjs/engine-formula";
import { SetRangeValuesMutation } from "@univerjs/preset-sheets-core";

export interface Change {
  /** The ids of the sheets whose data may differ now; of the workbook itself always something may. */
  readonly sheets: readonly string[];
  /** The rows of these sheets whose cells may differ. */
  readonly rows: readonly number[] | "all" | "none";
  /** False for what the page does by itself while it draws. */
  readonly isEdit: boolean;
}

/** Mutations that leave what stands in cells as it is, and how cells look each by itself. */
const BESIDE_CELLS =
  /height|width|hidden|visible|(row|col)-data$|gridlines|frozen|protection|permission|merge|tab-color|(workbook|worksheet)-(name|order)|-count$|default-style|range-theme|filter|table|conditional-rule|note|rule$|defined-name|set-settings/i;

/** Mutations by which the page says something to itself. */
const BY_ITSELF =
  /auto-height|mutation\.empty|mark-dirty|note-popup|re-calc-filter|permission-points|right-to-left|^formula\./;

/** Calls back after each change of the data of any open workbook. */
export function onDataChange(injector: Injector, callback: (unitId: string, change: Change) => void): () => void {
  const listening = injector.get(ICommandService).onCommandExecuted((command, options) => {
    const change = changeBy(command, options);
    if (change) callback((command.params as { unitId: string }).unitId, change);
  });
  return () => listening.dispose();
}

/** What a command changes of a workbook's data; null for one that changes none, or only what formulas give. */
export function changeBy(command: Readonly<ICommandInfo>, options?: IExecutionOptions): Change | null {
  const { id, type, params } = command;
  if (type !== CommandType.MUTATION || !params || !("unitId" in params) || id.startsWith("doc.")) return null;
  const isName = id === SetDefinedNameMutation.id || id === RemoveDefinedNameMutation.id;
  if ((id.startsWith("formula.") && !isName) || options?.applyFormulaCalculationResult) return null;
  return { sheets: sheetsOf(params), rows: rowsOf(command), isEdit: isName || !BY_ITSELF.test(id) };
}

function rowsOf({ id, params }: Readonly<ICommandInfo>): Change["rows"] {
  if (id === SetRangeValuesMutation.id) {
    return Object.keys((params as { cellValue?: object }).cellValue ?? {}).map(Number);
  }
  return BESIDE_CELLS.test(id) ? "none" : "all";
}

/** Some mutations concern two sheets, and one that adds a sheet brings it along. */
function sheetsOf(params: object): string[] {
  const { subUnitId, sheet, from, to, fromSubUnitId, toSubUnitId } = params as Record<string, unknown>;
  const within = (part: unknown, key: string) =>
    typeof part === "object" && part !== null ? (part as Record<string, unknown>)[key] : undefined;
  const all = [
    subUnitId,
    fromSubUnitId,
    toSubUnitId,
    within(sheet, "id"),
    within(from, "subUnitId"),
    within(to, "subUnitId"),
  ];
  return [...new Set(all.filter((one) => typeof one === "string"))];
}
