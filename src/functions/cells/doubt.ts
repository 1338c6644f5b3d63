/**
 * Some Excels hand a blank cell over as 0. Those that have the requirement set 1.5 of the functions do not; of the
 * others nobody knows, and a copy bought once never has it. There a 0 may be a blank.
 */

import { basic, isBlank } from "./blank";

/** As much of Office as is asked here. Other hosts have none, and hand blank cells over as blanks. */
declare const Office:
  | { readonly context?: { readonly requirements?: { isSetSupported(name: string, version: string): boolean } } }
  | undefined;

/** Known once Office has said so. */
let areZerosDoubtful: boolean | undefined;

function areDoubtful(): boolean {
  if (areZerosDoubtful !== undefined) return areZerosDoubtful;
  if (typeof Office === "undefined") return false;
  const requirements = Office.context?.requirements;
  if (!requirements) return true;
  areZerosDoubtful = !requirements.isSetSupported("CustomFunctionsRuntime", "1.5");
  return areZerosDoubtful;
}

/** Whether a cell is a 0 that may be a blank. */
export const mayBeBlank = (cell: unknown): boolean => basic(cell) === 0 && areDoubtful();

/** Whether a cell is blank, or may be. */
export const seemsBlank = (cell: unknown): boolean => isBlank(cell) || mayBeBlank(cell);
