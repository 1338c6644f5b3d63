/** What a page knows of the functions that run in it: an answer reaches its cell some time after. */
interface Runs {
  count: number;
  /** Called at each run by whoever set it. */
  heard?: () => void;
}

/** Found by this key by others on the page, which is Excel's shared runtime; they know nothing else of the functions. */
const page = globalThis as { [key: symbol]: Runs | undefined };
const KEY = Symbol.for("pourwright functions");

/** Says that a function runs. */
export function ran(): void {
  page[KEY] ??= { count: 0 };
  const runs = page[KEY];
  runs.count++;
  runs.heard?.();
}
