import type { Costs } from "../plan/costs";
import type { Settings } from "../settings";
import { asPlanned } from "./fetchRows";
import { MONEY } from "./formats";
import type { Page } from "./page";

/** What stands below the pots. */

/** What the candles cost, for those who ask for it on paper. */
export function costRows(page: Page, costs: Costs | undefined, settings: Settings): void {
  if (costs === undefined || settings.costs !== "shown") return;
  page.skip();
  page.headings([asPlanned(costs.title, settings), "Count", "", "Each", "Total"].map((text) => ({ text })));
  for (const { scent, vessel, count, each } of costs.kinds) {
    page.row([
      { text: `${vessel}, ${scent}`, look: "name" },
      { number: count, format: "0" },
      {},
      { number: each, format: MONEY },
      { number: each * count, format: MONEY },
    ]);
  }
  page.row([{ text: "The run" }, {}, {}, {}, { number: costs.run, format: MONEY }], "total");
}

/** Room for what is worth a note. Who poured and who checked it stands in the head. */
export function notesRows(page: Page): void {
  page.skip();
  page.row([
    { text: "Notes: anything unusual", look: "name" },
    { look: "blank", across: page.width - 1 },
  ]);
  page.row([{}, { look: "blank", across: page.width - 1 }]);
}
