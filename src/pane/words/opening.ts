/** The words of the pane's head and of a workbook that has no table to pour from yet. */

import type { WeightUnit } from "../../runsheet/settings";

export const OPENING = {
  help: "How a run sheet is made",
  reading: "Reading the workbook…",
  noTable: "No table to pour from is here yet. A run sheet is made from a table with a row for each vessel to pour.",
  steps: [
    "Add the starter tables: Vessels, Scents and Batch, on sheets of their own.",
    "Write your vessels with the weight of water each holds, and your scents (fragrance oils) with their loads.",
    "Write in Batch what to pour. The pots appear here as you type.",
  ],
  add: "Add starter tables",
  hint: (unit: WeightUnit) =>
    `They are in ${unit}; choose another unit under Settings first. Have a table already? Make sure it has columns for the vessel, the quantity and the fill or water weight, or select its cells with their headings and press the button below.`,
} as const;

/** Where the pane itself has failed. */
export const FAILED = {
  says: (why: string) => `The pane has stopped: ${why}`,
  unharmed: "Your workbook is as it was. Undo what you changed last, then open the pane again.",
  again: "Open the pane again",
} as const;
