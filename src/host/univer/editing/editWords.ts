/** What is said of an edit goes when that edit is taken back. */

import {
  ICommandService,
  type Injector,
  IUndoRedoService,
  IUniverInstanceService,
  UndoCommand,
  UniverInstanceType,
} from "@univerjs/core";
import type { Edit } from "./edits";

export class EditWords {
  /** Whether something was said since the last edit: it is said of the next one. */
  #isNew = false;
  #saidOf: Edit | null = null;

  constructor(
    private readonly injector: Injector,
    private readonly tell: (words: string) => void,
  ) {
    const steps = injector.get(IUndoRedoService);
    injector.get(ICommandService).onCommandExecuted(({ id }) => {
      const isTakenBack =
        id === UndoCommand.id && this.#saidOf !== null && steps.pitchTopRedoElement() === this.#saidOf;
      if (isTakenBack) this.say("");
    });
  }

  say(words: string): void {
    this.#isNew = words !== "";
    this.#saidOf = null;
    this.tell(words);
  }

  done(edit: Edit): void {
    // What stands in the formula field is a document, with edits of its own as another cell is shown there.
    if (!this.injector.get(IUniverInstanceService).getUnit(edit.unitID, UniverInstanceType.UNIVER_SHEET)) return;
    if (this.#isNew) this.#saidOf = edit;
    this.#isNew = false;
  }
}
