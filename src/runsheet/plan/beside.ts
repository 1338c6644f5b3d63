/** Something that is used: an ingredient by weight, or vessels and what goes with them by number. */
export interface Use {
  readonly item: string;
  readonly amount: number;
  /** Counted, not weighed. */
  readonly isCounted: boolean;
}

/** What planning is told beside the tables and the settings. What is left out is not known. */
export interface Beside {
  /** A day as spreadsheets count them: lots whose best before lies before it do not count as on hand. */
  readonly today?: number | undefined;
  /** What run sheets that are written and not logged yet will take, weights in the unit of the settings. */
  readonly reserved?: readonly Use[] | undefined;
  /** The share of candles that do not come out good, as the log shows it. */
  readonly rejects?: number | undefined;
}
