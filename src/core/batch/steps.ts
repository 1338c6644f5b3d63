/** How far a search may go. It is counted, not timed, so that every machine gives the same answer. */
export interface Limit {
  /** Steps after which the best found has to do; 50 million when left out, about a second. */
  readonly steps?: number;
  /** Called every million steps or so with the steps done; false stops, and the best found has to do. */
  readonly onStep?: (done: number) => boolean;
}

/** Steps of work to spend. One is about 20 nanoseconds. */
export class Steps {
  private done = 0;
  private told = 0;

  constructor(
    private left: number,
    private readonly onStep: (done: number) => boolean = () => true,
    private readonly whole?: Steps,
  ) {}

  /** Spends some and says whether there are more. */
  spend(some: number): boolean {
    this.left -= some;
    this.done += some;
    if (this.done - this.told >= 1e6) {
      this.told = this.done;
      if (!this.onStep(this.done)) this.left = 0;
    }
    if (this.whole && !this.whole.spend(some)) this.left = 0;
    return this.left > 0;
  }

  /** A part of what is left, for work that must leave some to others. */
  share(part: number): Steps {
    return new Steps(this.left * part, undefined, this);
  }
}
