import { openPane } from "./openPane";
import { SHEET } from "./pourHost";

/** The pane of a workbook whose runs are poured, on day 331 of 2026, and what a maker does and sees in it. */
export function pouredPane() {
  const pane = openPane("pane-written", undefined, new Date(2026, 10, 27, 12));
  const { press, section, field, type } = pane;
  /** Logs a pour: what it adds is shown at the first press and added at the second. */
  const logPour = async (sheet = SHEET, anyway = false) => {
    await press(`Log this pour: ${sheet}`);
    await press(`${anyway ? "Log anyway" : "Add these rows"}: ${sheet}`);
  };
  const asked = () =>
    [...(section()?.querySelectorAll("[role=status] :is(p, li)") ?? [])].map(({ textContent }) => textContent ?? "");
  return {
    ...pane,
    logPour,
    asked,
    pick: (name: string) => type({ "Run sheet": name }),
    chosen: () => (section() ? (field("Run sheet") as unknown as HTMLSelectElement) : undefined),
  };
}
