/** Says what undo would take back: "typing in B6", "sorting Vessels". */

import {
  CommandType,
  ICommandService,
  type IMutationInfo,
  type Injector,
  IUniverInstanceService,
  type Workbook,
} from "@univerjs/core";
import { TableManager } from "@univerjs/preset-sheets-table";
import { columnLetters } from "../../../sheet/columnLetters";
import { BY_PANE, cellsOf, type Edit, sheetsOf } from "./edits";

interface Box {
  readonly startRow: number;
  readonly endRow: number;
  readonly startColumn: number;
  readonly endColumn: number;
}

/** What was done, and on which sheet where it was done on one. */
export interface Words {
  readonly text: string;
  readonly sheetId?: string;
  /** The other sheets that the pane wrote on in the same step. */
  readonly others?: readonly string[];
}

/**
 * By the name of the command that did it: the first that fits. `@` stands for the cells, `#` for rows or columns, `~` for
 * the sheet.
 */
const DEEDS: readonly (readonly [RegExp, string])[] = [
  [/replace/, "replacing in @"],
  [/paste/, "pasting into @"],
  [/command\.cut/, "cutting @"],
  [/clear-selection-(content|all)|auto-clear/, "clearing @"],
  [/clear-selection-format/, "clearing formats"],
  [/auto-fill|refill|copy-(down|right)/, "filling @"],
  [/quick-sum/, "a sum in @"],
  [/text-to-number/, "turning text into numbers"],
  [/split-text/, "splitting text into columns"],
  [/insert-row|insert-multi-rows|append-row|table-insert-row/, "inserting #"],
  [/remove-row|table-remove-row/, "removing #"],
  [/insert-col|insert-multi-cols|table-insert-col/, "inserting #"],
  [/remove-col|table-remove-col/, "removing #"],
  [/insert-range|delete-range-move/, "moving cells"],
  [/move-(range|rows|cols)/, "moving cells"],
  [/reorder|sort-range/, "sorting @"],
  [/filter/, "a filter"],
  [/data-?validation/i, "a list of choices or a check"],
  [/conditional-rule/, "a conditional format"],
  [/note/, "a note"],
  [/hyper-link/, "a link"],
  [/merge/, "merging cells"],
  [/frozen/, "freezing rows or columns"],
  [/hidden|visible|hide/, "hiding or showing"],
  [/col-width|auto-width|row-height|auto-height/, "a width or height"],
  [/(insert|copy)-sheet/, "adding a sheet"],
  [/remove-sheet/, "removing a sheet"],
  [/worksheet-name/, "renaming ~"],
  [/worksheet-order/, "moving a sheet"],
  [/defined-name/, "a name"],
  [/add-table|delete-table|table-config|table-theme/, "a change of a table"],
  [/numfmt/, "a number format"],
  [
    /set-(range-)?(bold|italic|underline|overline|stroke|strike|font|text|background|border|style|horizontal|vertical)|format-painter|reset-/,
    "formatting",
  ],
];

/** What is done to sheets or names, not on a sheet, though cells follow it on any. */
const OF_NO_SHEET = /(insert|copy|remove)-sheet|worksheet-(name|order)|defined-name/;
/** What is done to rows, columns and cells of a sheet, before the cells of others follow. */
const ON_A_SHEET = /\.mutation\.(insert|remove|move|reorder)-/;

/** Commands that work on cells, and those of them that run others: the others do not say what was meant. */
const CELLS = /^(sheets?|sheets-formula|ui)\.(?!command\.scroll)/;
const AROUND = /^(ui\.command\.replace-|sheet\.command\.(replace$|paste|optional-paste))/;

/** Notes which command is being run, and says of a step what it was. */
export function undoWords(injector: Injector): (edit: Edit) => Words {
  let latest = "";
  const around = new Set<string>();
  const commands = injector.get(ICommandService);
  commands.beforeCommandExecuted(({ id, type }) => {
    if ((type !== undefined && type !== CommandType.COMMAND) || !CELLS.test(id)) return;
    latest = id;
    if (AROUND.test(id)) around.add(id);
  });
  commands.onCommandExecuted(({ id }) => void around.delete(id));
  return (edit) => {
    const isPane = edit.id === BY_PANE;
    const [sheetId, ...others] = sheetsOf(edit);
    const ids = { unitId: edit.unitID, sheetId: (isPane ? null : placeOf(edit)) ?? sheetId ?? subUnitOf(edit) };
    const text = isPane ? "what the pane wrote" : deed(injector, [...around, latest], edit, ids);
    const isOnSheet = isPane || around.size > 0 || !OF_NO_SHEET.test(latest);
    return {
      text,
      ...(isOnSheet && ids.sheetId && { sheetId: ids.sheetId }),
      ...(edit.id === BY_PANE && others.length > 0 && { others }),
    };
  };
}

function deed(
  injector: Injector,
  ran: readonly string[],
  edit: Edit,
  ids: { unitId: string; sheetId?: string | undefined },
): string {
  const written = ids.sheetId
    ? (boxOf(cellsOf(edit.redoMutations.slice(0, 1), ids.sheetId)) ?? boxOf(cellsOf(edit.redoMutations, ids.sheetId)))
    : null;
  const cells = reordered(injector, edit, ids) ?? (written && rangeName(written)) ?? "cells";
  const words = ran.map((id) => DEEDS.find(([name]) => name.test(id))?.[1]).find((one) => one !== undefined);
  if (words) {
    const parts = { "@": cells, "#": rowsOrColumns(edit) ?? "rows or columns", "~": renamed(edit) ?? "a sheet" };
    return words.replace(/[@#~]/, (part) => parts[part as keyof typeof parts]);
  }
  if (!written) return "the last change";
  const one = written.startRow === written.endRow && written.startColumn === written.endColumn;
  return one ? `typing in ${cells}` : `a change of ${cells}`;
}

/** The table that was sorted, or else the cells that were. */
function reordered(
  injector: Injector,
  edit: Edit,
  { unitId, sheetId }: { unitId: string; sheetId?: string | undefined },
): string | null {
  const range = params(edit, /reorder/)?.range as Box | undefined;
  if (!range || !sheetId) return null;
  const table = injector
    .get(TableManager)
    .getTablesBySubunitId(unitId, sheetId)
    .find((one) => one.getRange().startColumn === range.startColumn && one.getRange().endRow === range.endRow);
  return table?.getDisplayName() ?? rangeName(range);
}

function rowsOrColumns(edit: Edit): string | null {
  const rows = params(edit, /(insert|remove)-rows?$/)?.range as Box | undefined;
  if (rows) return span("row", String(rows.startRow + 1), String(rows.endRow + 1));
  const columns = params(edit, /(insert|remove)-cols?$/)?.range as Box | undefined;
  return columns ? span("column", columnLetters(columns.startColumn), columnLetters(columns.endColumn)) : null;
}

/** A sheet by the names that it had and has. */
function renamed({ undoMutations, redoMutations }: Edit): string | null {
  const [before, after] = [undoMutations, redoMutations].map(
    (all) => all.find(({ id }) => id === "sheet.mutation.set-worksheet-name")?.params as { name: string } | undefined,
  );
  return before && after ? `${before.name} to ${after.name}` : null;
}

const placeOf = ({ redoMutations }: Edit): string | undefined =>
  (redoMutations.find(({ id }) => ON_A_SHEET.test(id))?.params as { subUnitId?: string } | undefined)?.subUnitId;

const span = (noun: string, first: string, last: string) =>
  first === last ? `${noun} ${first}` : `${noun}s ${first} to ${last}`;

const params = (edit: Edit, name: RegExp): Record<string, unknown> | undefined =>
  edit.redoMutations.find(({ id }: IMutationInfo) => id.startsWith("sheet.mutation.") && name.test(id))?.params as
    | Record<string, unknown>
    | undefined;

const subUnitOf = (edit: Edit): string | undefined =>
  edit.redoMutations.map(({ params: given }) => (given as { subUnitId?: string } | undefined)?.subUnitId).find(Boolean);

function boxOf(cells: ReturnType<typeof cellsOf>): Box | null {
  const rows = [...cells.keys()];
  const columns = [...cells.values()].flatMap((line) => [...line.keys()]);
  if (columns.length === 0) return null;
  return {
    startRow: rows.reduce((a, b) => Math.min(a, b)),
    endRow: rows.reduce((a, b) => Math.max(a, b)),
    startColumn: columns.reduce((a, b) => Math.min(a, b)),
    endColumn: columns.reduce((a, b) => Math.max(a, b)),
  };
}

function rangeName({ startRow, endRow, startColumn, endColumn }: Box): string {
  const first = `${columnLetters(startColumn)}${startRow + 1}`;
  const last = `${columnLetters(endColumn)}${endRow + 1}`;
  return first === last ? first : `${first}:${last}`;
}

/** The words as they are shown: with the sheet where that is not the one in sight, or with all where there are more. */
export function shown(injector: Injector, unitId: string, words: Words | undefined): string {
  if (!words) return "";
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId);
  const { sheetId, others = [] } = words;
  const sheets = [sheetId, ...others].flatMap((id) => (id && workbook?.getSheetBySheetId(id)) || []);
  const isInSight = sheets.length === 1 && sheets[0] === workbook?.getActiveSheet();
  if (sheets.length === 0 || isInSight) return words.text;
  return `${words.text} on ${sheets.map((sheet) => sheet.getName()).join(" and ")}`;
}
