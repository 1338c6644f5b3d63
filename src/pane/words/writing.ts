/** The words around the writing of a run sheet. */

import { things } from "./check";

export const WRITING = {
  write: "Write run sheet",
  under: "Writing the run sheet",
  stop: "Stop",
  stopped: "Stopped. Nothing was written.",
  written: (sheet: string) => `Run sheet written: ${sheet}`,
  /** A new run sheet is only said to be written once its numbers are there. */
  notWorkedOut: (sheet: string) =>
    `${sheet} is on its sheet, and its numbers are still being worked out. Wait until they have come before you pour.`,
  changed: "The table has changed; fix what is listed first.",
  fixSettings: "Fix the settings first.",
  chooseTable: "Choose a table to pour from first.",
  fixFirst: (count: number) => `${things(count)} to fix first: see Check.`,
  checkFirst: (count: number) => `${things(count)} to check first: see Check.`,
} as const;
