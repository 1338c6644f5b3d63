const MEGABYTE = 2 ** 20;
/** Steps in which code is compiled and what is remembered fills up. */
const WARM = 3;
/** What may come and go, in megabytes: 160,000 calls that each left 16 bytes behind are beyond it. */
const MOST_GROWTH = 2;

/** What stays on the heap after equal steps. */
export class Heap {
  readonly steps: number[] = [];

  constructor(private readonly collect: () => void) {}

  measure(): void {
    // What was waited for goes with the next turn, and what is remembered weakly with the next collection.
    for (let i = 0; i < 3; i++) this.collect();
    this.steps.push(process.memoryUsage().heapUsed / MEGABYTE);
  }

  /** How much the last steps hold beyond the first ones that were warm, each at its least. */
  get growth(): number {
    const warm = this.steps.slice(WARM);
    const half = Math.ceil(warm.length / 2);
    return warm.length < 4 ? 0 : Math.min(...warm.slice(half)) - Math.min(...warm.slice(0, half));
  }

  get isGrowing(): boolean {
    return this.growth > MOST_GROWTH;
  }
}
