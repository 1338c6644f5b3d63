/** The dialog that refuses a value is headed as the check says, corrections of the data validation plugin. */

import type { IDataValidationRule, Injector } from "@univerjs/core";
import { IDialogService } from "@univerjs/preset-sheets-core";
import { BaseDataValidator } from "@univerjs/preset-sheets-data-validation";

const DIALOG = "reject-input-dialog";

/** Univer asks for the sentence of a check right before it opens the dialog, which it does not tell the check. */
export function headRefusals(injector: Injector): void {
  let asked: IDataValidationRule | null = null;
  const sentenceOf = BaseDataValidator.prototype.getRuleFinalError;
  BaseDataValidator.prototype.getRuleFinalError = function (rule, position) {
    asked = rule;
    return sentenceOf.call(this, rule, position);
  };
  const dialogs = injector.get(IDialogService);
  const open = dialogs.open.bind(dialogs);
  dialogs.open = (options) => {
    const title = options.id === DIALOG && asked?.showErrorMessage ? (asked as { errorTitle?: string }).errorTitle : "";
    return open(title ? { ...options, title: { title } } : options);
  };
}
