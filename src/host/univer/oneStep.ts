/** Several changes as one step of what can be taken back. */

import { ICommandService, type Injector, IUndoRedoService } from "@univerjs/core";
import { BY_PANE, type Consequence } from "./editing/edits";

/** Does changes, in one turn of the page, all or none: what was done is taken back when one fails. */
export function asOneStep(
  injector: Injector,
  unitID: string,
  work: (change: (one: Consequence) => void) => void,
): void {
  const done: Consequence[] = [];
  const commands = injector.get(ICommandService);
  try {
    work((change) => doOrTakeBack(commands, change, done));
  } catch (fault) {
    for (const { undos } of [...done].reverse()) takeBack(commands, undos);
    throw fault;
  }
  injector.get(IUndoRedoService).pushUndoRedo({
    unitID,
    redoMutations: done.flatMap(({ redos }) => redos),
    undoMutations: [...done].reverse().flatMap(({ undos }) => undos),
    id: BY_PANE,
  });
}

function doOrTakeBack(commands: ICommandService, change: Consequence, done: Consequence[]): void {
  for (const [i, { id, params }] of change.redos.entries()) {
    // What has begun is taken back with the rest.
    if (i === 1) done.push(change);
    if (!commands.syncExecuteCommand(id, params)) throw new Error(`${id} failed.`);
  }
  if (change.redos.length === 1) done.push(change);
}

/** One after the other, whatever becomes of each. */
function takeBack(commands: ICommandService, undos: Consequence["undos"]): void {
  for (const { id, params } of undos) {
    try {
      commands.syncExecuteCommand(id, params);
    } catch {
      // What is left of it is still to be taken back.
    }
  }
}
