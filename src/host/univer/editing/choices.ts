/** Lists to choose from in the cells of a table: what another table knows. Anything else may be typed too. */

import { ICommandService, type Injector, type Workbook } from "@univerjs/core";
import type { PlacedTable } from "../../../engine/references";
import { columnLetters } from "../../../sheet/columnLetters";
import type { Choices, Table } from "../../../sheet/sheet";
import { quotedName } from "../../../sheet/sheetName";

/** The name under which Univer keeps checks of cells in a workbook, and the mutation that adds one. */
export const CHECKS_RESOURCE = "SHEET_DATA_VALIDATION_PLUGIN";
const ADD = "data-validation.mutation.addRule";

/** The name of an example in a table to fill in. */
export const EXAMPLE_NAME = "Example: write over it";

/** Univer's numbers for: mark what is not in the list, refuse nothing; an arrow in the cell, no coloured labels. */
const WARNING = 2;
const ARROW = 1;

/** The checks that the choices of a table make; those of tables that are not there are left out. */
export function choiceRules(table: Table, tables: readonly PlacedTable[]) {
  return (table.choices ?? []).flatMap((choices) => {
    const offered = offeredBy(choices, tables);
    const own = table.headings.indexOf(choices.heading);
    if (!offered || own < 0) return [];
    const range = {
      startRow: table.row + 1,
      endRow: table.row + table.rows,
      startColumn: table.column + own,
      endColumn: table.column + own,
    };
    return {
      uid: `${table.name}.${own}.${offered.id}`,
      type: "list",
      ranges: [range],
      formula1: offered.formula,
      allowBlank: true,
      errorStyle: WARNING,
      showErrorMessage: true,
      error: offered.error,
      showDropDown: true,
      renderMode: ARROW,
    };
  });
}

/** What a list offers, as Univer writes it; undefined where the other table is not there. */
function offeredBy(choices: Choices, tables: readonly PlacedTable[]) {
  if ("among" in choices) {
    const { among } = choices;
    return { id: "words", formula: among.join(","), error: `Not known here. Write ${among.join(" or ")}.` };
  }
  const { from, column } = choices;
  const known = tables.find(({ name }) => name === from);
  const source = known?.headings.indexOf(column) ?? -1;
  if (!known || source < 0) return undefined;
  const error = `Not among the names in ${from}. Add it there, or check how it is spelt.`;
  return { id: from, formula: `=${columnReference(known, source)}`, error };
}

/** A column of a table as a plain reference: a list may not refer to a table by its name. */
export function columnReference(
  { sheet, row, column, rows }: Omit<PlacedTable, "name" | "headings">,
  index = 0,
): string {
  const letters = columnLetters(column + index);
  return `${quotedName(sheet)}!$${letters}$${row + 2}:$${letters}$${row + 1 + rows}`;
}

/** Adds checks to an open workbook: to the part that knows them, or where that one will find them when it has loaded. */
export function addRules(injector: Injector, workbook: Workbook, sheetId: string, rules: readonly object[]): void {
  if (rules.length === 0) return;
  const commands = injector.get(ICommandService);
  if (commands.hasCommand(ADD)) {
    commands.syncExecuteCommand(ADD, { unitId: workbook.getUnitId(), subUnitId: sheetId, rule: rules });
    return;
  }
  const snapshot = workbook.getSnapshot();
  snapshot.resources ??= [];
  const waiting = snapshot.resources.find(({ name }) => name === CHECKS_RESOURCE);
  const all = waiting?.data ? JSON.parse(waiting.data) : {};
  const data = JSON.stringify({ ...all, [sheetId]: [...(all[sheetId] ?? []), ...rules] });
  if (waiting) waiting.data = data;
  else snapshot.resources.push({ name: CHECKS_RESOURCE, data });
}
