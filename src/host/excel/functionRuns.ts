/**
 * How long an answer of a function takes, at the longest, until it stands in its cell: the runtime hands answers over
 * after 50 ms and then every 200 to 500 ms. Until then the cell may show its old value, and not #BUSY!.
 */
const DELIVERY = 600;

/** Under which the functions tell, on the page that they share with the pane, that they run. */
const KEY = Symbol.for("pourwright functions");

/** What is known of the runs of our functions in this page. */
export interface Runs {
  /** How many there were. */
  readonly count: number;
  /** Whether the answers of all of them stand in their cells. */
  readonly areDelivered: boolean;
  /** Resolves when they do. */
  delivered(): Promise<void>;
  /** Calls back at each time that they do; gives the way to stop that. */
  onDelivered(callback: () => void): () => void;
}

/** The clock of the page, and what waits by it. */
interface Clock {
  readonly now: () => number;
  readonly later: (work: () => void, milliseconds: number) => unknown;
}

const CLOCK: Clock = { now: () => performance.now(), later: (work, milliseconds) => setTimeout(work, milliseconds) };

/** Listens to the functions of this page. There is one for the page: the last one made hears. */
export class FunctionRuns implements Runs {
  private readonly page: { count: number; heard?: () => void };
  private last = Number.NEGATIVE_INFINITY;
  private isWaiting = false;
  private readonly listeners = new Set<() => void>();

  constructor(private readonly clock = CLOCK) {
    const global = globalThis as { [key: symbol]: FunctionRuns["page"] | undefined };
    global[KEY] ??= { count: 0 };
    this.page = global[KEY];
    this.page.heard = () => this.hear();
    // Of those before nobody knows when they were.
    if (this.page.count > 0) this.hear();
  }

  get count(): number {
    return this.page.count;
  }

  get areDelivered(): boolean {
    return !this.isWaiting;
  }

  async delivered(): Promise<void> {
    if (this.areDelivered) return;
    await new Promise<void>((resolve) => {
      const stop = this.onDelivered(() => {
        stop();
        resolve();
      });
    });
  }

  onDelivered(callback: () => void): () => void {
    this.listeners.add(callback);
    return () => this.listeners.delete(callback);
  }

  private hear(): void {
    this.last = this.clock.now();
    if (!this.isWaiting) this.wait(DELIVERY);
    this.isWaiting = true;
  }

  /** One timer for however many runs. */
  private wait(milliseconds: number): void {
    this.clock.later(() => {
      const left = this.last + DELIVERY - this.clock.now();
      if (left > 0) return this.wait(left);
      this.isWaiting = false;
      for (const listener of [...this.listeners]) listener();
    }, milliseconds);
  }
}
