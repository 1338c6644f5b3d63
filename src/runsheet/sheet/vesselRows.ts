import { weighOut } from "../../core/weighing/weighOut";
import { vesselId } from "../plan/fetchList";
import { sameName } from "../sameName";
import { finer } from "./formats";
import { fillFormula, labelFormula } from "./inputChecks";
import { AT, keyed } from "./layout";
import type { Page } from "./page";
import type { Block } from "./potBlock";

/** What is poured from a pot: a row for each kind of candle. */
export function vesselRows(page: Page, { pot, scentNumber, settings, weight, scale, wicks }: Block): void {
  const { unit, live, division } = settings;
  const input = live ? "input" : "body";
  page.headings([
    { text: "Pour into" },
    ...["Count", `Planned (${unit})`, `Fill each (${unit})`, "Good candles"].map((text) => ({ text })),
    { text: `Weight of one, without vessel (${unit})`, across: 2 },
    { text: "Net weight to declare", across: 3 },
  ]);
  for (const { vessel, count, fill } of pot.lines) {
    const at = page.next;
    const shown = shownFill(fill, division);
    const wick = wicks.get(sameName(vessel)) ?? "";
    page.row(
      [
        { text: vessel, look: "name" },
        // Not rounded: half a candle must not look like one.
        { number: count, format: "General", look: input },
        { number: fill, format: finer(weight), look: input },
        { ...(live ? { formula: fillFormula(at) } : { number: shown }), look: "label", format: scale },
        { look: "blank", format: "General" },
        { look: "blank", format: finer(weight) },
        wick === "" ? {} : { text: `wick ${wick}`, look: "name" },
        { formula: labelFormula(at, settings, live ? undefined : Math.min(fill, shown)), look: "note", across: 3 },
      ],
      undefined,
      { [AT.thing]: { text: vesselId(vessel) }, ...keyed(scentNumber, "vessel") },
    );
  }
}

/** A fill as the scale shows it. What is less than half a step of it stays as planned: 0 would be no fill. */
const shownFill = (fill: number, division: number): number => weighOut([fill], division)[0] || fill;
