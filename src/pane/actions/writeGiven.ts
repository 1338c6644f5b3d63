import type { Host } from "../../host/host";
import { columnLetters } from "../../sheet/columnLetters";
import type { Cell } from "../../sheet/sheet";
import { WRITING } from "../words/writing";

/** Writes into a cell of the maker's own. A formula stays: what it is worked out from is the maker's to change. */
export async function writeGiven(host: Host, sheet: string, cell: Cell): Promise<void> {
  const { row, column } = cell;
  if (await host.isFormula(sheet, row, column)) {
    throw new Error(WRITING.isFormula(sheet, `${columnLetters(column)}${row + 1}`));
  }
  await host.write(sheet, [cell]);
}
