import type { Page } from "playwright-core";

export interface TaskTime {
  /** Milliseconds of a processor, and of a clock: beside other work a task waits for its turn. */
  readonly processor: number;
  readonly clock: number;
}

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds, by the clock and of the thread. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** How long the page's own thread was kept by one task at most while some work was done, as the browser traces it. */
export async function longestTask(page: Page, work: () => Promise<unknown>): Promise<TaskTime> {
  const browser = page.context().browser();
  if (!browser) throw new Error("A page without a browser cannot be traced.");
  const categories = ["__metadata", "toplevel", "devtools.timeline", "disabled-by-default-devtools.timeline"];
  await browser.startTracing(page, { categories });
  await work();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] };
  const thread = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
  const own = new Set(traceEvents.filter(({ args }) => args?.name === "CrRendererMain").map(thread));
  const tasks = traceEvents.filter((event) => event.name.endsWith("RunTask") && own.has(thread(event)));
  if (tasks.length === 0) throw new Error("The browser traced no tasks of the page.");
  const longest = (of: (task: TraceEvent) => number | undefined): number =>
    tasks.reduce((most, task) => Math.max(most, (of(task) ?? 0) / 1000), 0);
  return { processor: longest(({ tdur }) => tdur), clock: longest(({ dur }) => dur) };
}
