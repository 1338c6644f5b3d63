import type { WeightUnit } from "../settings";

/** A run as its sheet shows it: planned, and what was written on it after the pour. */

/** Candles of one kind in one pot, as planned and as poured. What is not written on the sheet is undefined. */
export interface PouredLine {
  /** Its row on the sheet, from 1. */
  readonly row: number;
  readonly vessel: string;
  readonly count: number;
  readonly fill: number;
  readonly good: number | undefined;
  /** Weight of one candle's wax and scent, as weighed. */
  readonly weighed: number | undefined;
}

/** An ingredient of one pot, as planned and as weighed. */
export interface PouredPart extends Weighed {
  readonly sort: "wax" | "scent" | "additive";
  /** As it stands on the sheet: `Scent: Cedar`. */
  readonly label: string;
  /** The same by its name alone: `Cedar`. */
  readonly item: string;
  /** The lot that was written beside it, else in the list of what to fetch; empty where none was. */
  readonly lot: string;
  /** Its row on the sheet, from 1. */
  readonly row: number;
}

/** One pot, as planned and as weighed. */
export interface PouredPot {
  /** As it stands on the sheet: `Cedar: pot 1 of 2`. */
  readonly title: string;
  /** What the log knows it by: its title, with a number where another pot has the same. */
  readonly id: string;
  readonly scent: string;
  /** The load that its shares ask for, `6 % of wax`; empty without scent. */
  readonly load: string;
  readonly parts: readonly PouredPart[];
  readonly wax: Weighed;
  readonly scentWeight: Weighed;
  /** What stands beside the load as weighed: the limits it passes. */
  readonly remark: string;
  /** Temperatures and times, by name. */
  readonly steps: ReadonlyMap<string, string>;
  /** The same as they were done, as far as that was written: `Melt at 74, 14:05`. */
  readonly done: readonly string[];
  readonly lines: readonly PouredLine[];
}

export interface Weighed {
  readonly planned: number;
  /** Undefined until every part of it is written down. */
  readonly actual: number | undefined;
}

/** A row in which a lot stands as the number of a day. */
export interface LotDay {
  /** From 1. */
  readonly row: number;
  readonly day: number;
}

export interface PouredRun {
  readonly lot: string;
  /** Spreadsheet serial of the day. */
  readonly date: number;
  /** Of its weights. */
  readonly unit: WeightUnit;
  /** What the scale reads to, as the head says; 0 where it does not. */
  readonly division: number;
  readonly pots: readonly PouredPot[];
  /** The lots written in the list of what to fetch, by the ids of the things. */
  readonly lots: ReadonlyMap<string, string>;
  /** Lots that the spreadsheet may have taken for a day. */
  readonly lotDays: readonly LotDay[];
  /** Days of cure by scent. */
  readonly cure: ReadonlyMap<string, number>;
  /** Who made it and what was unusual, as they were written; empty where they were not. */
  readonly madeBy: string;
  readonly notes: string;
  /** What is written on the sheet and cannot be, by row. */
  readonly wrong: readonly string[];
  /** Of it what the plan cannot do without: its weights stand at 0 here. */
  readonly unplanned: readonly string[];
}

/** Whether anything was written of a pot after the pour. */
export const isPoured = ({ parts, lines }: PouredPot): boolean =>
  parts.some(({ actual }) => actual !== undefined) ||
  lines.some(({ good, weighed }) => good !== undefined || weighed !== undefined);

/** A run as if it had only these pots. */
export const withPots = (run: PouredRun, pots: readonly PouredPot[]): PouredRun => ({ ...run, pots });
