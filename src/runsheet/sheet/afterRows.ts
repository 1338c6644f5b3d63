import { plain } from "../../core/check/plain";
import type { Costs } from "../plan/costs";
import { nameOf, type RunPlan } from "../plan/runPlan";
import type { Lack, Shelf } from "../plan/shortages";
import type { Settings } from "../settings";
import { DAY, MONEY } from "./formats";
import type { RunHead } from "./headRows";
import { cureFormula, cureRemark } from "./inputChecks";
import { keyOf } from "./layout";
import type { Page } from "./page";
import type { Writing } from "./potBlock";

/** What stands below the pots and their totals. Parts without data are left out. */

export function cureRows(page: Page, { scents }: RunPlan, { date, settings: { live } }: RunHead): void {
  const cured = scents.flatMap((scent, s) =>
    scent.notes?.cureDays === undefined ? [] : [{ scent, days: scent.notes.cureDays, key: keyOf(s + 1, "cure") }],
  );
  if (cured.length === 0) return;
  page.skip();
  page.headings(["Cure", "Days", "Until"]);
  for (const { scent, days, key } of cured) {
    const at = page.next;
    page.row(
      [
        { text: nameOf(scent) },
        { number: days, format: "General", look: live ? "input" : "body" },
        { ...(live ? { formula: cureFormula(at) } : { number: date + days }), format: DAY, align: "left" },
        live ? { formula: cureRemark(at), look: "alert", across: 4 } : {},
      ],
      undefined,
      key,
    );
  }
}

export function shelfRows(page: Page, shelf: Shelf | undefined, { settings, weight }: Writing): void {
  if (shelf === undefined) return;
  const { lacks, unchecked } = shelf;
  page.skip();
  if (lacks.length > 0) lackRows(page, lacks, settings, weight);
  else if (unchecked.length === 0) page.line(asPlanned("The shelf holds all that this run takes", settings), "note");
  if (unchecked.length > 0) page.line(`Not checked against the shelf: ${unchecked.join(", ")}`, "note");
}

function lackRows(page: Page, lacks: readonly Lack[], settings: Settings, weight: string): void {
  page.headings([asPlanned("Missing from the shelf", settings), "Needed", "On hand", "Missing", "Cost", "Buy"]);
  for (const { item, amount, isCounted, onHand, missing, buy, cost } of lacks) {
    const format = isCounted ? "0" : weight;
    // A pack of a pound is 453.59237 g: nobody shops by that.
    const pack = (size: number) => (isCounted ? plain(size) : `${plain(Number(size.toPrecision(6)))} ${settings.unit}`);
    page.row([
      { text: isCounted ? item : `${item} (${settings.unit})` },
      { number: amount, format },
      { number: onHand, format },
      { number: missing, format, look: "label" },
      cost === undefined ? {} : { number: cost, format: MONEY },
      {
        text: buy.map(({ count, size }) => `${count} x ${pack(size)}`).join(" + ") || "no pack known",
        across: 2,
      },
    ]);
  }
}

export function costRows(page: Page, costs: Costs | undefined, settings: Settings): void {
  if (costs === undefined) return;
  page.skip();
  page.headings([asPlanned("Cost of materials", settings), "Candles", "Each", "Total"]);
  for (const { scent, vessel, count, each } of costs.kinds) {
    page.row([
      { text: `${vessel}, ${scent}` },
      { number: count, format: "0" },
      { number: each, format: MONEY },
      { number: each * count, format: MONEY },
    ]);
  }
  page.row([{ text: "The run" }, {}, {}, { number: costs.run, format: MONEY }], "total");
}

/** The shelf and the cost come from other tables: also on a live sheet they are what they were when it was written. */
function asPlanned(text: string, { live }: Settings): string {
  return live ? `${text}, as planned` : text;
}

export function signOffRows(page: Page): void {
  page.skip();
  page.row([
    { text: "Notes: anything unusual", look: "label" },
    { look: "blank", across: page.width - 1 },
  ]);
  page.row([{}, { look: "blank", across: page.width - 1 }]);
  page.row([
    { text: "Poured: name, date", look: "label" },
    { look: "blank", across: 2 },
    { text: "Checked: name, date", look: "label", align: "right", across: 2 },
    { look: "blank", across: 2 },
  ]);
}
