/** What makes the embedded spreadsheet one to work in, beyond showing and computing. */

import type { Injector } from "@univerjs/core";
import type { Place } from "../../host";
import { addCellMenuKeys } from "./cellMenu";
import { keepLineBreaks } from "./copying";
import { dateDoubt } from "./dateCells";
import { followEdits, joined } from "./edits";
import { EditWords } from "./editWords";
import { moveFilteredRows } from "./filteredRowMoves";
import { followResize } from "./followGrowth";
import { growTables, growToTotals } from "./growTables";
import { addKeys } from "./keys";
import { loseReferences } from "./lostReferences";
import { fillInserted } from "./newRows";
import { Pasting } from "./paste";
import { readPercent } from "./percent";
import { addPopUpKeys } from "./popUps";
import { refuseLinks } from "./refuseLinks";
import { followRemoved } from "./removedRows";
import { removeSheetWhole } from "./removedSheet";
import { keepReplacedTexts } from "./replacing";
import { refuseSorting, sortWhole } from "./sorting";
import { TextToNumber } from "./textToNumber";
import { readTyped } from "./typedNumbers";
import { UndoButtons } from "./undoButton";
import { undoWords } from "./undoWords";
import { removeWholeLines } from "./wholeLines";
import "./filterCorrections";
import "./filterUndo";
import "./narrowNumbers";
import "./removedNames";
import "./tableCorrections";
import "./tableRemovals";
import "./typedFormulas";

/**
 * @param select goes to a cell
 * @param tell tells the user something; an empty text takes it back
 */
export function prepareEditing(
  injector: Injector,
  select: (place: Place) => Promise<void>,
  tell: (words: string) => void,
): void {
  const words = new EditWords(injector, tell);
  const say = (text: string) => words.say(text);
  const wordsOf = undoWords(injector);
  const buttons = new UndoButtons(injector);
  const pasting = new Pasting(injector, say);
  const textToNumber = new TextToNumber(injector, say);
  followEdits(
    injector,
    (edit) => {
      const doubt = dateDoubt(injector, edit);
      if (doubt) say(doubt);
      return joined(
        pasting.read(edit),
        textToNumber.follow(),
        growTables(injector, edit) ??
          growToTotals(injector, edit) ??
          fillInserted(injector, edit) ??
          followResize(injector, edit),
        loseReferences(injector, edit),
      );
    },
    (edit) => {
      buttons.note(edit, wordsOf(edit));
      words.done(edit);
    },
    () => say("Your edit is done, but not all that should follow from it. Look it over, or take it back with Undo."),
  );
  readPercent(injector, say);
  readTyped(injector, say);
  keepLineBreaks(injector);
  addKeys(injector, select);
  addPopUpKeys(injector);
  addCellMenuKeys(injector);
  sortWhole(injector);
  refuseSorting(injector, say);
  refuseLinks(injector, say);
  keepReplacedTexts(injector);
  moveFilteredRows(injector);
  followRemoved(injector);
  removeSheetWhole(injector);
  removeWholeLines(injector);
}
