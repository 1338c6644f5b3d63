/** Keys that users of spreadsheets know and the embedded one lacks. */

import {
  CommandType,
  EDITOR_ACTIVATED,
  FOCUSING_SHEET,
  FOCUSING_UNIVER_EDITOR,
  ICommandService,
  type IContextService,
  type Injector,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import {
  IShortcutService,
  MetaKeys,
  SetRangeValuesCommand,
  SetWorksheetActivateCommand,
  SheetsSelectionsService,
} from "@univerjs/preset-sheets-core";
import { reader } from "../../../engine/cells";
import type { Place } from "../../host";

/** Codes of keys that Univer has no names for. A semicolon has two, by browser. */
const KEYS = { pageUp: 33, pageDown: 34, end: 35, home: 36, semicolon: [186, 59] };

/** Rows that a page key goes on by: about a small screen of them. */
const PAGE = 20;

/** The serial number of a day, counted as spreadsheets do, and how it is shown. */
const DAY = 86_400_000;
const EPOCH = Date.UTC(1899, 11, 30);
const DATE = "yyyy-mm-dd";

export const inCells = (context: IContextService): boolean =>
  context.getContextValue(FOCUSING_SHEET) &&
  context.getContextValue(FOCUSING_UNIVER_EDITOR) &&
  !context.getContextValue(EDITOR_ACTIVATED);

export const serialOf = (date: Date): number =>
  (Date.UTC(date.getFullYear(), date.getMonth(), date.getDate()) - EPOCH) / DAY;

/** Teaches the keys; `select` is how a cell is gone to. */
export function addKeys(injector: Injector, select: (place: Place) => Promise<void>): void {
  const commands = injector.get(ICommandService);
  const shortcuts = injector.get(IShortcutService);
  const add = (name: string, bindings: readonly number[], run: (book: Workbook) => Promise<unknown> | undefined) => {
    const id = `pourwright.command.${name}`;
    commands.registerCommand({
      id,
      type: CommandType.COMMAND,
      handler: async () => {
        const book = injector
          .get(IUniverInstanceService)
          .getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
        if (book) await run(book);
        return true;
      },
    });
    for (const binding of bindings) shortcuts.registerShortcut({ id, binding, preconditions: inCells, priority: 200 });
  };

  const here = () => {
    const at = injector.get(SheetsSelectionsService).getCurrentLastSelection()?.primary;
    return { row: at?.actualRow ?? 0, column: at?.actualColumn ?? 0 };
  };
  const go = (book: Workbook, row: number, column: number) =>
    select({ sheet: book.getActiveSheet().getName(), row, column, rows: 1, columns: 1 });
  const turn = (by: number) => (book: Workbook) => {
    const shown = book.getSheets().filter((sheet) => !sheet.isSheetHidden());
    const next = shown[shown.indexOf(book.getActiveSheet()) + by];
    return (
      next &&
      commands.executeCommand(SetWorksheetActivateCommand.id, {
        unitId: book.getUnitId(),
        subUnitId: next.getSheetId(),
      })
    );
  };
  const { CTRL_COMMAND: CTRL, ALT } = MetaKeys;
  // In a browser's ordinary window Ctrl with a page key turns the browser's own tabs, so Alt does it as well.
  add("sheet-before", [KEYS.pageUp | CTRL, KEYS.pageUp | ALT], turn(-1));
  add("sheet-after", [KEYS.pageDown | CTRL, KEYS.pageDown | ALT], turn(1));
  add("page-up", [KEYS.pageUp], (book) => go(book, Math.max(0, here().row - PAGE), here().column));
  add("page-down", [KEYS.pageDown], (book) =>
    go(book, Math.min(book.getActiveSheet().getRowCount() - 1, here().row + PAGE), here().column),
  );
  add("row-start", [KEYS.home], (book) => go(book, here().row, 0));
  add("row-end", [KEYS.end], (book) => go(book, here().row, lastInRow(injector, book, here().row)));
  add("sheet-start", [KEYS.home | CTRL], (book) => go(book, 0, 0));
  add("sheet-end", [KEYS.end | CTRL], (book) => {
    const { endRow, endColumn } = book.getActiveSheet().getDataRealRange();
    return go(book, endRow, endColumn);
  });
  add(
    "today",
    KEYS.semicolon.map((key) => key | CTRL),
    (book) => {
      const { row, column } = here();
      const sheet = book.getActiveSheet();
      const cell = { v: serialOf(new Date()), t: 2, f: null, si: null, p: null, s: { n: { pattern: DATE } } };
      const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
      const ids = { unitId: book.getUnitId(), subUnitId: sheet.getSheetId() };
      return commands.executeCommand(SetRangeValuesCommand.id, { ...ids, range, value: cell });
    },
  );
}

function lastInRow(injector: Injector, book: Workbook, row: number): number {
  const sheet = book.getActiveSheet();
  const read = reader(injector, sheet);
  let column = sheet.getDataRealRange().endColumn;
  while (column > 0 && read(row, column) === null) column--;
  return Math.max(0, column);
}
