/** What the views of the pane are called, in the order of a candle's way; tests of its wick stand beside it. */

export const VIEWS = {
  plan: "Plan",
  log: "Log",
  stock: "Stock",
  trace: "Trace",
  tests: "Tests",
} as const;

export type View = keyof typeof VIEWS;

export const VIEWS_LABEL = "What to do";

/** Where there is no run sheet yet. */
export const NOTHING_TO_LOG =
  "No run sheet is written yet. Write one under Plan, pour by it, then come back with what was weighed.";
