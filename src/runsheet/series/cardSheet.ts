import { isoOfDay } from "../../core/label/isoDay";
import type { Cell, Sheet } from "../../sheet/sheet";
import { percent } from "../percent";
import type { Settings } from "../settings";
import { BREAK, CYCLE, type Series, type SeriesCandle } from "./planSeries";
import type { SeriesCandles } from "./seriesAdditions";

/** Columns to write in: a look at the candle each row. */
const LOOKS = [
  "Cycle",
  "Minutes",
  "Weight",
  "Flame (mm)",
  "Pool (mm)",
  "Wax left (mm)",
  "Soot",
  "Heat",
  "Remarks",
] as const;
const WIDTHS = [8, 9, 11, 10, 10, 10, 12, 9, 26] as const;

/** What ends a test at once: the flame by EN 15493, the rest common practice, no source. */
const stopAt = (isTeaLight: boolean): string =>
  `Put it out and end the test at once when: the flame is over ${isTeaLight ? 30 : 75} mm (EN 15493); a second flame burns; the vessel is too hot to hold, or cracks; it smokes and does not stop; anything but the wick burns. Write down what it was.`;

/** By fire-safety guidance and EN 15426, second-hand. */
const CAUTIONS = [
  "Stay with it. On a plate that cannot burn, 30 cm (12 in) from all that can, out of draughts, away from children and pets. No glass that is chipped; no cold surface below a hot one: heat and cold crack it.",
  "Never a wick with a lead core (banned in the US, 16 CFR 1500.12). A few candles prove little: a burn-test laboratory and the local rules have the last word.",
] as const;

const steps = (): string =>
  `Trim the wick to 6 mm (1/4 in), weigh, light. Each hour: flame, pool, soot, heat. After ${CYCLE} minutes put it out, let it cool for ${BREAK} minutes or more, weigh, measure the wax left. Go on until 10 mm of wax are left (EN 15426).`;

/** A card for each candle of a series, each on a page of its own, to be printed and written on. */
export function cardSheet(
  { candles, looks }: Series,
  common: SeriesCandles,
  { code, paper }: Pick<Settings, "paper"> & { readonly code: string },
): Sheet {
  const cells: Cell[] = [];
  const newPages: number[] = [];
  let row = 0;
  for (const candle of candles) {
    if (row > 0) newPages.push(row);
    const lines = cardOf(candle, common);
    for (const { text, look } of lines) {
      cells.push({ row, column: 0, content: { text }, look, across: WIDTHS.length });
      row++;
    }
    for (const [column, text] of LOOKS.entries()) cells.push({ row, column, content: { text }, look: "heading" });
    row++;
    for (const { cycle, minutes } of looks.filter(({ test }) => test === candle.test)) {
      cells.push(
        ...LOOKS.map((_, column): Cell => {
          const number = [cycle, minutes][column];
          return { row, column, look: "blank", ...(number !== undefined && { content: { number }, align: "center" }) };
        }),
      );
      row++;
    }
  }
  return { name: `Cards ${code}`, widths: WIDTHS, cells, print: { paper, newPages } };
}

function cardOf(candle: SeriesCandle, common: SeriesCandles): { text: string; look: NonNullable<Cell["look"]> }[] {
  const { vessel, wax, scent, load, product } = common;
  const filled = [wax || "the usual wax", scent || "no scent", load ? `${percent(load, 6)} %` : ""];
  return [
    { text: `Burn test ${candle.test}`, look: "title" },
    { text: `${vessel}, wick ${candle.wick}; ${filled.filter(Boolean).join(", ")}`, look: "name" },
    { text: `Burn on ${isoOfDay(candle.burnOn)} or later. By: ____________________`, look: "label" },
    { text: stopAt(/tea/i.test(product)), look: "caution" },
    ...CAUTIONS.map((text) => ({ text, look: "caution" }) as const),
    { text: steps(), look: "note" },
  ];
}
