import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";

/** What a measurement gives: times side by side, as medians and spread, each with its goal. */

export interface Figure {
  readonly what: string;
  readonly is: string;
  readonly goal?: string;
  /** Whether it keeps its goal. */
  readonly holds?: boolean;
}

/** A part of the bench: figures under one title. */
export interface Part {
  readonly title: string;
  readonly measure: () => Promise<readonly Figure[]>;
}

const at = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
};

export const median = (values: readonly number[]): number => at(values, 0.5);

/** A number as short as it says enough. */
export const short = (value: number): string =>
  value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2);

/** The median, and between which values the middle half lies. */
export const spread = (values: readonly number[], unit = ""): string =>
  `${short(median(values))}${unit} (${short(at(values, 0.25))} to ${short(at(values, 0.75))})`;

setFlagsFromString("--expose-gc");
// By chance of when it collects, V8 puts all rows that one loop makes among the old at once, and those of another not:
// that doubles the time of a loop that does nothing else.
setFlagsFromString("--no-allocation-site-pretenuring");
const collectGarbage = runInNewContext("gc") as (how: { readonly type: "minor" }) => void;

/** Milliseconds that some work takes. */
export async function timeOf(work: () => unknown): Promise<number> {
  const before = performance.now();
  await work();
  return performance.now() - before;
}

/** The same of work that awaits nothing, in milliseconds of a processor: a busy machine changes them less. */
export function processorTimeOf(work: () => unknown): number {
  // What was left over before is not its work.
  collectGarbage({ type: "minor" });
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/**
 * How many times as long as the first way each other one takes. They take turns, and each turn is compared with itself:
 * a busy machine is as busy for all. The first turns only warm up.
 */
export async function ratiosOf(
  ways: readonly (() => unknown)[],
  turns: number,
  { warm = 3, time = timeOf }: { readonly warm?: number; readonly time?: (work: () => unknown) => unknown } = {},
): Promise<number[][]> {
  const ratios = ways.slice(1).map((): number[] => []);
  for (let turn = 0; turn < turns + warm; turn++) {
    const times: number[] = [];
    for (const way of ways) times.push((await time(way)) as number);
    if (turn < warm) continue;
    for (const [i, list] of ratios.entries()) list.push((times[i + 1] as number) / (times[0] as number));
  }
  return ratios;
}

/** A ratio that may be so large at most. */
export const atMost = (what: string, ratios: readonly number[], most: number): Figure => ({
  ...{ what, is: spread(ratios, " x"), goal: `at most ${most} x`, holds: median(ratios) <= most },
});

export function print(title: string, figures: readonly Figure[]): void {
  console.log(`\n${title}`);
  for (const { what, is, goal, holds } of figures) {
    const verdict = holds === undefined ? "" : holds ? "holds" : "falls short";
    console.log(`  ${what.padEnd(54)} ${is.padEnd(40)} ${(goal ?? "").padEnd(24)} ${verdict}`.trimEnd());
  }
}
