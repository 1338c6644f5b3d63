/** Notes by keys, none that stays blank, and the note of the selected cell in sight, however it was selected. */

import { ICommandService, type Injector } from "@univerjs/core";
import { KeyCode, MetaKeys, SheetsSelectionsService } from "@univerjs/preset-sheets-core";
import { RemoveNoteMutation, SheetsNoteModel, SheetsNotePopupService } from "@univerjs/preset-sheets-note";
import { keyAdder } from "./keys";

const ADD = "sheet.operation.add-note-popup";

export function addNoteKeys(injector: Injector): void {
  const commands = injector.get(ICommandService);
  const popUps = injector.get(SheetsNotePopupService);
  keyAdder(injector)("open-note", [KeyCode.F2 | MetaKeys.SHIFT], () => {
    // One that shows already would not take the keyboard.
    popUps.hidePopup(true);
    return commands.executeCommand(ADD);
  });
  removeBlankNotes(injector);
  // Univer looks at selections made with the pointer and the arrows only.
  injector.get(SheetsSelectionsService).selectionChanged$.subscribe((selections) => {
    const at = selections?.at(-1)?.primary;
    const shown = popUps.activePopup;
    if (shown && at && (shown.row !== at.actualRow || shown.col !== at.actualColumn)) popUps.hidePopup(true);
  });
}

/** Univer keeps a note from the moment when its box opens, if nothing is written into it, and writes late. */
function removeBlankNotes(injector: Injector): void {
  const model = injector.get(SheetsNoteModel);
  const popUps = injector.get(SheetsNotePopupService);
  const removeIfLeft = (unitId: string, subUnitId: string, row: number, col: number) => {
    const shown = popUps.activePopup;
    if (shown?.subUnitId === subUnitId && shown.row === row && shown.col === col) return;
    const note = model.getNote(unitId, subUnitId, { row, col });
    if (note?.note.trim() !== "") return;
    const ids = { unitId, sheetId: subUnitId, noteId: note.id };
    injector.get(ICommandService).syncExecuteCommand(RemoveNoteMutation.id, ids);
  };
  let left = popUps.activePopup;
  popUps.activePopup$.subscribe((shown) => {
    if (left) removeIfLeft(left.unitId, left.subUnitId, left.row, left.col);
    left = shown;
  });
  model.change$.subscribe(({ unitId, subUnitId, newNote }) => {
    if (newNote) queueMicrotask(() => removeIfLeft(unitId, subUnitId, newNote.row, newNote.col));
  });
}
