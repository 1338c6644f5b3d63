import { createContext, Script } from "node:vm";

/** How long a call may work, in milliseconds of a processor: a busy machine takes none of them. */
export const MOST_WORK = 2000;
/** When a call that does not end is ended, in milliseconds on the clock. */
const GIVEN_UP = 20_000;

export interface Slow {
  readonly name: string;
  readonly work: number;
  /** What was given, as far as it can be shown. */
  readonly given: string;
}

const SHOWN = 160;
const MOST_SLOW = 5;

/** Runs work under watch, and remembers what took the longest. */
export class Watch {
  readonly slowest: Slow[] = [];
  private readonly page: { work: () => void } = { work: () => {} };
  private readonly context = createContext(this.page);
  private readonly script = new Script("work()");

  /** What work gives; throws what it throws, or that it takes too long. */
  run<T>(name: string, work: () => T, given: () => string): T {
    let result: T | undefined;
    this.page.work = () => {
      result = work();
    };
    const [began, worked] = [performance.now(), process.cpuUsage()];
    try {
      // The only way to end a loop without an end, so that its case can be made smaller.
      this.script.runInContext(this.context, { timeout: GIVEN_UP });
    } catch (thrown) {
      if ((thrown as { code?: unknown }).code !== "ERR_SCRIPT_EXECUTION_TIMEOUT") throw thrown;
      throw new Error(`${name} did not end within ${GIVEN_UP / 1000} s`);
    } finally {
      this.page.work = () => {};
    }
    const took = performance.now() - began;
    if (took < (this.slowest.at(-1)?.work ?? 0) && took < MOST_WORK) return result as T;
    const { user, system } = process.cpuUsage(worked);
    const spent = Math.min(took, (user + system) / 1000);
    this.note({ name, work: spent, given: given().slice(0, SHOWN) });
    if (spent > MOST_WORK)
      throw new Error(`${name} works for ${(spent / 1000).toFixed(1)} s, more than ${MOST_WORK / 1000} s`);
    return result as T;
  }

  private note(slow: Slow): void {
    // Each name once: its slowest.
    const before = this.slowest.findIndex(({ name }) => name === slow.name);
    if (before >= 0 && (this.slowest[before] as Slow).work >= slow.work) return;
    if (before >= 0) this.slowest.splice(before, 1);
    this.slowest.push(slow);
    this.slowest.sort((a, b) => b.work - a.work);
    this.slowest.length = Math.min(this.slowest.length, MOST_SLOW);
  }
}
