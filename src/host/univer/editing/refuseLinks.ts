/** A link makes its cell a text: a number would leave every sum without a word, a formula would be gone. */

import { CellValueType, CustomCommandExecutionError, ICommandService, type Injector } from "@univerjs/core";
import { columnLetters } from "../../../sheet/columnLetters";
import { selectedCell } from "./selected";

const OPEN_LINK = "sheet.operation.open-hyper-link-edit-panel";

export function refuseLinks(injector: Injector, say: (words: string) => void): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== OPEN_LINK || (params as { customRangeId?: string } | undefined)?.customRangeId) return;
    const at = selectedCell(injector);
    const cell = at?.sheet.getCellRaw(at.row, at.column);
    const isFormula = Boolean(cell?.f || cell?.si);
    const isNumber = cell?.t === CellValueType.NUMBER || typeof cell?.v === "number";
    if (!at || (!isFormula && !isNumber)) return;
    const name = `${columnLetters(at.column)}${at.row + 1}`;
    const what = isFormula ? "a formula" : "a number";
    const words = `No link was put into ${name}: it holds ${what}, which a link would turn into text. Put the link into a cell of its own.`;
    say(words);
    throw new CustomCommandExecutionError(words);
  });
}
