import type { View } from "./views";

/** What stands above each view of the pane. */
export const VIEW_HEADINGS: Readonly<Record<View, string>> = {
  plan: "Run sheet",
  log: "Log a pour",
  stock: "Stock",
  trace: "Lots and runs",
  tests: "Burn tests",
};
