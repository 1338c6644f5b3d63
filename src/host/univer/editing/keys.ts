/** Keys that users of spreadsheets know and the embedded one lacks. */

import {
  CommandType,
  EDITOR_ACTIVATED,
  FOCUSING_SHEET,
  FOCUSING_UNIVER_EDITOR,
  ICommandService,
  type IContextService,
  type Injector,
  type Worksheet,
} from "@univerjs/core";
import {
  IShortcutService,
  MetaKeys,
  SetRangeValuesCommand,
  SetWorksheetActivateCommand,
} from "@univerjs/preset-sheets-core";
import { reader } from "../../../engine/cells";
import type { Place } from "../../host";
import { type Selected, selectedCell } from "./selected";

/** Codes of keys that Univer has no names for. A semicolon has two, by browser. */
const KEYS = { pageUp: 33, pageDown: 34, end: 35, home: 36, semicolon: [186, 59] };

/** Rows that a page key goes on by: about a small screen of them. */
const PAGE = 20;

/** The serial number of a day, counted as spreadsheets do, and how it is shown. */
const DAY = 86_400_000;
const EPOCH = Date.UTC(1899, 11, 30);
const DATE = "yyyy-mm-dd";

const inCells = (context: IContextService): boolean =>
  context.getContextValue(FOCUSING_SHEET) &&
  context.getContextValue(FOCUSING_UNIVER_EDITOR) &&
  !context.getContextValue(EDITOR_ACTIVATED);

export const serialOf = (date: Date): number =>
  (Date.UTC(date.getFullYear(), date.getMonth(), date.getDate()) - EPOCH) / DAY;

/** Teaches the keys; `select` is how a cell is gone to. */
export function addKeys(injector: Injector, select: (place: Place) => Promise<void>): void {
  const add = keyAdder(injector);
  const { CTRL_COMMAND: CTRL, ALT } = MetaKeys;
  // In a browser's ordinary window Ctrl with a page key turns the browser's own tabs, so Alt does it as well.
  add("sheet-before", [KEYS.pageUp | CTRL, KEYS.pageUp | ALT], (at) => turn(injector, at, -1));
  add("sheet-after", [KEYS.pageDown | CTRL, KEYS.pageDown | ALT], (at) => turn(injector, at, 1));
  const today = KEYS.semicolon.map((key) => key | CTRL);
  add("today", today, (at) => writeDay(injector, at, new Date()));

  const addMove = (name: string, binding: number, to: (at: Selected) => { row: number; column: number }) =>
    add(name, [binding], (at) => select({ sheet: at.sheet.getName(), ...to(at), rows: 1, columns: 1 }));
  addMove("page-up", KEYS.pageUp, ({ row, column }) => ({ row: Math.max(0, row - PAGE), column }));
  addMove("page-down", KEYS.pageDown, ({ sheet, row, column }) => ({
    row: Math.min(sheet.getRowCount() - 1, row + PAGE),
    column,
  }));
  addMove("row-start", KEYS.home, ({ row }) => ({ row, column: 0 }));
  addMove("row-end", KEYS.end, ({ sheet, row }) => ({ row, column: lastInRow(injector, sheet, row) }));
  addMove("sheet-start", KEYS.home | CTRL, () => ({ row: 0, column: 0 }));
  addMove("sheet-end", KEYS.end | CTRL, ({ sheet }) => {
    const { endRow, endColumn } = sheet.getDataRealRange();
    return { row: endRow, column: endColumn };
  });
}

type Deed = (at: Selected) => Promise<unknown> | undefined;

/** Makes a command with keys of its own, which does something at the selected cell. */
export const keyAdder =
  (injector: Injector) =>
  (name: string, bindings: readonly number[], run: Deed): void => {
    const id = `pourwright.command.${name}`;
    injector.get(ICommandService).registerCommand({
      id,
      type: CommandType.COMMAND,
      handler: async () => {
        const at = selectedCell(injector);
        if (at) await run(at);
        return true;
      },
    });
    const shortcuts = injector.get(IShortcutService);
    for (const binding of bindings) shortcuts.registerShortcut({ id, binding, preconditions: inCells, priority: 200 });
  };

function turn(injector: Injector, { book, sheet, ids }: Selected, by: number): Promise<boolean> | undefined {
  const shown = book.getSheets().filter((one) => !one.isSheetHidden());
  const next = shown[shown.indexOf(sheet) + by];
  if (!next) return undefined;
  const to = { ...ids, subUnitId: next.getSheetId() };
  return injector.get(ICommandService).executeCommand(SetWorksheetActivateCommand.id, to);
}

function writeDay(injector: Injector, { ids, row, column }: Selected, day: Date): Promise<boolean> {
  const value = { v: serialOf(day), t: 2, f: null, si: null, p: null, s: { n: { pattern: DATE } } };
  const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
  return injector.get(ICommandService).executeCommand(SetRangeValuesCommand.id, { ...ids, range, value });
}

function lastInRow(injector: Injector, sheet: Worksheet, row: number): number {
  const read = reader(injector, sheet);
  let column = sheet.getDataRealRange().endColumn;
  while (column > 0 && read(row, column) === null) column--;
  return Math.max(0, column);
}
