/** Corrections of finding and replacing, version 0.25.1. */

import {
  IConfirmService,
  type Injector,
  type IRange,
  IUniverInstanceService,
  UniverInstanceType,
  type Worksheet,
} from "@univerjs/core";
import { FindReplaceController, IFindReplaceService } from "@univerjs/preset-sheets-find-replace";

interface Match {
  readonly range: { readonly range: IRange };
}
interface Query {
  readonly findDirection: string;
}
type Selections = readonly { readonly range: IRange }[];

/** A search in a workbook: Univer does not give out its kind. */
interface Search {
  readonly _query: Query;
  readonly _matches: readonly Match[];
  _findInSelections(sheet: Worksheet, selections: Selections, query: Query, unitId: string): unknown;
  _findInWorksheet(sheet: Worksheet, query: Query, unitId: string): unknown;
  _findNextMatchByRange(matches: readonly Match[], range: IRange, stayIfOnMatch?: boolean): [Match, number];
}
interface Maker {
  createInstance(kind: unknown, ...given: unknown[]): unknown;
}

const CONFIRM_REPLACE_ALL = "CONFIRM_REPLACE_ALL";

/** Univer's dialog does not open before what searches the sheets is there. */
export const canFind = (injector: Injector): boolean =>
  injector.has(IFindReplaceService) && injector.get(IFindReplaceService).getProviders().size > 0;

/** To be called once finding is there. */
export function correctFinding(injector: Injector): void {
  for (const provider of injector.get(IFindReplaceService).getProviders()) {
    const inside = provider as unknown as { _injector: Maker };
    const maker = inside._injector;
    inside._injector = { createInstance: (...given) => corrected(maker.createInstance(...given) as Search) };
  }
  countBeforeReplacing(injector);
  // The dialog would go on showing what it found in a workbook that was left.
  injector
    .get(IUniverInstanceService)
    .getTypeOfUnitDisposed$(UniverInstanceType.UNIVER_SHEET)
    .subscribe(() => injector.get(FindReplaceController).closePanel());
}

function corrected(search: Search): Search {
  const inSelections = search._findInSelections.bind(search);
  // Univer searches the selection where it is more than one cell, and takes a part of a merged one for more.
  search._findInSelections = (sheet, selections, query, unitId) =>
    selections.every(({ range }) => isOneCell(sheet, range))
      ? search._findInWorksheet(sheet, query, unitId)
      : inSelections(sheet, selections, query, unitId);
  // It would begin with the last match, and go there again from below the last.
  search._findNextMatchByRange = (matches, range, stayIfOnMatch = false) => {
    const next = matches.findIndex((match) => {
      const order = comparePlaces(match.range.range, range, search._query.findDirection === "row");
      return order > 0 || (order === 0 && stayIfOnMatch);
    });
    const match = matches[Math.max(0, next)] as Match;
    return [match, search._matches.indexOf(match)];
  };
  return search;
}

function isOneCell(sheet: Worksheet, { startRow, startColumn, endRow, endColumn }: IRange): boolean {
  const whole = sheet.getMergedCell(startRow, startColumn) ?? { endRow: startRow, endColumn: startColumn };
  return endRow <= whole.endRow && endColumn <= whole.endColumn;
}

function comparePlaces(one: IRange, other: IRange, byRow: boolean): number {
  const [rows, columns] = [one.startRow - other.startRow, one.startColumn - other.startColumn];
  return byRow ? rows || columns : columns || rows;
}

/** Says before all is replaced in how many cells, and what stays as it is: Univer counts them together. */
function countBeforeReplacing(injector: Injector): void {
  const service = injector.get(IFindReplaceService);
  let [found, replaced] = [0, 0];
  service.state$.subscribe(({ matchesCount }) => {
    found = matchesCount;
  });
  service.replaceables$.subscribe((matches) => {
    replaced = matches.length;
  });
  const dialogs = injector.get(IConfirmService);
  const confirm = dialogs.confirm.bind(dialogs);
  // Univer hands the service out behind a proxy that keeps a method as it was first read: assigning would not reach it.
  Object.defineProperty(dialogs, "confirm", {
    value: (asked: { readonly id: string }) =>
      confirm(asked.id === CONFIRM_REPLACE_ALL ? { ...asked, title: { title: question(replaced, found) } } : asked),
  });
}

/** How replacing everything is asked about. */
function question(replaced: number, found: number): string {
  const cells = (count: number) => `${count} ${count === 1 ? "cell" : "cells"}`;
  const others = found - replaced;
  const stay = others === 1 ? "shows it by a formula and stays" : "show it by formulas and stay";
  return `Replace in ${cells(replaced)}?${others > 0 ? ` ${cells(others)} ${stay}.` : ""}`;
}
