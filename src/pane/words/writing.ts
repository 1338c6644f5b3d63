/** The words around the writing of a run sheet. */

import { things } from "./check";
import { SETTINGS } from "./settings";

const counted = (count: number): string => count.toLocaleString("en-US");

export const WRITING = {
  write: "Write run sheet",
  under: "Writing the run sheet",
  stop: "Stop",
  stopped: "Stopped. Nothing was written.",
  written: (sheet: string) => `Run sheet written: ${sheet}`,
  /** A new run sheet is only said to be written once its numbers are there. */
  notWorkedOut: (sheet: string) =>
    `${sheet} is on its sheet, and its numbers are still being worked out. Wait until they have come before you pour.`,
  /** A sheet that the program would be at for minutes; `plain` where plain numbers would be few enough. */
  tooLong: (formulas: number, most: number, plain: boolean) =>
    `Nothing was written: the run sheet would have ${counted(formulas)} formulas, and no more than ${counted(most)} are worked out here in reasonable time. ${plain ? `Choose plain numbers in the settings (${SETTINGS.live}), or pour in parts, fewer rows at once.` : "Pour in parts, fewer rows at once."}`,
  /** A cell that the maker's own formula fills. */
  isFormula: (sheet: string, cell: string) =>
    `Nothing was written: ${cell} on ${sheet} holds a formula. Change what it is worked out from, or clear the cell and press again.`,
  changed: "The table has changed; fix what is listed first.",
  fixSettings: "Fix the settings first.",
  chooseTable: "Choose a table to pour from first.",
  fixFirst: (count: number) => `${things(count)} to fix first: see Check.`,
  checkFirst: (count: number) => `${things(count)} to check first: see Check.`,
} as const;
