/** The words around run sheets that are written: comparing, and what the log shows. */

import { formatFactor, type NewFactor } from "../../runsheet/record/newFactors";
import { formatLoss } from "../../runsheet/record/newLoss";

export const WRITTEN = {
  heading: "Written run sheets",
  choose: "Run sheet",
  copies: (lot: string, sheets: readonly string[]) =>
    `Lot ${lot} also stands on ${sheets.join(", ")}. It is logged once: log the sheet that was poured by.`,
  /** Each button names the sheet it acts on. */
  on: (words: string, sheet: string) => `${words}: ${sheet}`,
  compare: "What has changed since",
  rebuild: "Rebuild",
  toPlain: "Turn into plain numbers",
  print: "Print or save as PDF",
  noRunSheet: (sheet: string) => `${sheet} is no run sheet any more: its first line, its date or its unit is gone.`,
  plainAlready: (sheet: string) => `${sheet} holds plain numbers already.`,
  plainNow: (sheet: string) => `${sheet} holds plain numbers now.`,
  isNew: (sheet: string, old: string, logged: "none" | "some" | "all") => `${sheet} is new; ${old} ${STAYS[logged]} `,
  notCompared: (sheet: string) => `Nothing is compared while ${sheet} has cells to fix:`,
  unchanged: "Nothing has changed in candles, weights, pots, steps and cure. Limits, shelf and cost are not compared.",
  changes: (sheet: string) => `The table makes these changes to ${sheet}:`,
} as const;

/** What becomes of a run sheet beside which a new one is written, by how much of it is logged. */
const STAYS = {
  none: "stays as it is and counts as planned no more.",
  some: "stays as it is: what is logged of it stays logged, and its other pots count as planned no more.",
  all: "is logged and stays as it is: the new one is one more run.",
} as const;

export const FACTORS = {
  heading: "Wax factors the log shows",
  change: ({ vessel, old, factor }: NewFactor) =>
    `Change ${vessel} from ${old === undefined ? "blank" : formatFactor(old)} to ${formatFactor(factor)}`,
  noRow: (vessel: string) => `No row of a vessel table gives ${vessel} and its wax factor any more.`,
  another: (vessel: string) => `${vessel} has another wax factor now. Check it, then press again.`,
  changed: (vessel: string, factor: number, table: string) => `${vessel} has the wax factor ${factor} in ${table} now.`,
} as const;

export const LOSS = {
  heading: "Loss the log shows",
  change: (old: number, loss: number) => `Change the loss from ${formatLoss(old)} to ${formatLoss(loss)}`,
  changed: (loss: number) => `Extra to melt (loss) is ${formatLoss(loss)} now, for run sheets to come.`,
} as const;
