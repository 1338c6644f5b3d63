/** How far a search may go. It is counted, not timed, so that every machine gives the same answer. */
export interface Limit {
  /** Steps after which the best found has to do; MOST_STEPS when left out. */
  readonly steps?: number;
}

/** Well under a second: every edit of a sheet works its formulas out again. */
export const MOST_STEPS = 3e7;

/** Steps of work to spend. One is about 15 to 30 nanoseconds. */
export class Steps {
  constructor(
    private left: number,
    private readonly whole?: Steps,
  ) {}

  /** Spends some and says whether there are more. */
  spend(some: number): boolean {
    this.left -= some;
    if (this.whole && !this.whole.spend(some)) this.left = 0;
    return this.left > 0;
  }

  /** A part of what is left, for work that must leave some to others. */
  share(part: number): Steps {
    return new Steps(this.left * part, this);
  }
}
