import type { FittingTables } from "../tables/fittings";

/** Something that is used: an ingredient by weight, or vessels and what goes with them by number. */
export interface Use {
  readonly item: string;
  readonly amount: number;
  /** Counted, not weighed. */
  readonly isCounted: boolean;
}

/** Candles of one vessel and scent. */
export interface CandleCount {
  readonly scent: string;
  readonly vessel: string;
  readonly count: number;
}

/** A run whose sheet is written and not logged, or not all of it. */
export interface OpenRun {
  readonly lot: string;
  /** A day as spreadsheets count them. */
  readonly date: number;
  /** All candles of its sheet, and all that is weighed for them: they tell by which batch it was written. */
  readonly candles: readonly CandleCount[];
  readonly ingredients: readonly string[];
  /** What its pots that are not logged will take: by weight in the unit of the settings, and the vessels. */
  readonly weighed: readonly { readonly item: string; readonly amount: number }[];
  readonly vessels: readonly { readonly vessel: string; readonly count: number }[];
  /** Whether what it takes counts as planned, where the maker said so. */
  readonly counts?: boolean | undefined;
}

/** What planning is told beside the tables and the settings. What is left out is not known. */
export interface Beside {
  /** A day as spreadsheets count them: lots whose best before lies before it do not count as on hand. */
  readonly today?: number | undefined;
  /** Runs that are written and not logged yet, the newest last. */
  readonly openRuns?: readonly OpenRun[] | undefined;
  /** What goes with the vessels of those runs, where the plan's own tables are made up; then none of them is its batch. */
  readonly openFittings?: FittingTables | undefined;
  /** The names of run sheets that cannot be read, or not all of them. */
  readonly unread?: readonly string[] | undefined;
  /** The share of candles that do not come out good, as the log shows it. */
  readonly rejects?: number | undefined;
}
