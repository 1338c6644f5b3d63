/** A correction of what becomes of formulas when a name in them is removed, formula plugin, version 0.25.1. */

import type { ICommandInfo } from "@univerjs/core";
import { RemoveDefinedNameCommand, UpdateFormulaController } from "@univerjs/preset-sheets-core";
import type { Consequence } from "./edits";

interface Updates {
  _getUpdateFormula(command: ICommandInfo): Consequence;
}

// They keep the name, and are #NAME? until something is called so again, as in Excel. Univer would put #REF! there.
const updates = UpdateFormulaController.prototype as unknown as Updates;
const follow = updates._getUpdateFormula;
updates._getUpdateFormula = function (command) {
  return command.id === RemoveDefinedNameCommand.id ? { redos: [], undos: [] } : follow.call(this, command);
};
