import { productOf } from "../../core/burn/product";
import { plain } from "../../core/check/plain";
import { isoOfDay } from "../../core/label/isoDay";
import type { Cell, Sheet } from "../../sheet/sheet";
import { BURN_CAUTIONS, stopAt } from "../burnCautions";
import { loadText } from "../plan/loadText";
import type { Settings, WeightUnit } from "../settings";
import { degreesWith } from "../tables/readings";
import { wickOf } from "../tables/wick";
import { BREAK, CYCLE, type Series, type SeriesCandle, type SeriesLook } from "./planSeries";
import type { SeriesCandles } from "./seriesAdditions";

/** Columns to write in, a look at the candle each row, with their widths. */
const columnsOf = (unit: WeightUnit): readonly (readonly [heading: string, width: number])[] => [
  ["Cycle", 7],
  ["Minutes", 9],
  [`Weight (${unit})`, 11],
  ["Flame (mm)", 9],
  ["Pool (mm)", 9],
  ["Pool depth (mm)", 12],
  ["Wax left (mm)", 10],
  ["Soot", 11],
  [`Glass temperature (${degreesWith(unit)})`, 18],
  ["Remarks", 13],
];

/** Points of a row to write in, and cycles that a page has room for: the first one, and those behind it. */
const ROW = 15.5;
const CYCLES_ON_FIRST = 6;
const CYCLES_BEHIND = 7;

const steps = (): string =>
  `Trim the wick to 6 mm (1/4 in), weigh, light. Each hour: flame, pool, soot, glass temperature. After ${CYCLE} minutes put it out, let it cool for ${BREAK} minutes or more, weigh, measure the wax left. Go on until 10 mm of wax are left (EN 15426).`;

/** A card for each candle of a series, each on pages of its own, to be printed and written on. */
export function cardSheet(
  { candles, looks }: Series,
  common: SeriesCandles,
  { code, paper, unit }: Pick<Settings, "paper" | "unit"> & { readonly code: string },
): Sheet {
  const columns = columnsOf(unit);
  const cells: Cell[] = [];
  const newPages: number[] = [];
  const heights: Record<number, number> = {};
  let row = 0;
  const line = (text: string, look: Cell["look"]) =>
    cells.push({ row: row++, column: 0, content: { text }, look, across: columns.length });
  for (const candle of candles) {
    const pages = pagesOf(looks.filter(({ test }) => test === candle.test));
    for (const [page, own] of pages.entries()) {
      if (row > 0) newPages.push(row);
      const number = pages.length > 1 ? `, page ${page + 1} of ${pages.length}` : "";
      line(`Burn test ${candle.test}${number}`, "title");
      line(whatIsIn(candle, common), "name");
      if (page === 0) for (const [text, look] of guidance(candle, common)) line(text, look);
      cells.push(...columns.map(([text], column): Cell => ({ row, column, content: { text }, look: "heading" })));
      row++;
      for (const { cycle, minutes } of own) {
        heights[row] = ROW;
        cells.push(
          ...columns.map((_, column): Cell => {
            // A cycle's number stands where it begins: so the eye sees its rows together.
            const number = [minutes === 0 ? cycle : undefined, minutes][column];
            return {
              row,
              column,
              look: "blank",
              ...(number !== undefined && { content: { number }, align: "center" }),
            };
          }),
        );
        row++;
      }
    }
  }
  return {
    name: `Cards ${code}`,
    widths: columns.map(([, width]) => width),
    cells,
    heights,
    print: { paper, newPages },
  };
}

/** The looks at a candle, page by page: no cycle is parted. */
function pagesOf(looks: readonly SeriesLook[]): SeriesLook[][] {
  const pages: SeriesLook[][] = [];
  for (const look of looks) {
    const page = Math.max(0, Math.ceil((look.cycle - CYCLES_ON_FIRST) / CYCLES_BEHIND));
    pages[page] = [...(pages[page] ?? []), look];
  }
  return pages;
}

function whatIsIn({ wick }: SeriesCandle, { vessel, width, wax, scent, load, cureDays }: SeriesCandles): string {
  const filled = [
    wax || "the usual wax",
    [scent || "no scent", load ? loadText({ load, basis: "of wax" }) : ""].filter(Boolean).join(" "),
    `cured ${cureDays} ${cureDays === 1 ? "day" : "days"}`,
  ];
  return `${vessel}${width === undefined ? "" : `, ${plain(Number(width.toPrecision(4)))} mm wide inside`}, wick ${wick}; ${filled.join(", ")}`;
}

/** What is said of several wicks stands where there are some. */
function cautionsFor(wick: string): string[] {
  const { place, glass, lead, soot, wicks, deciding } = BURN_CAUTIONS;
  return [`${place} ${glass}`, `${lead} ${soot} ${deciding}`, ...(wickOf(wick).each > 1 ? [wicks] : [])];
}

function guidance(
  { burnOn, wick }: SeriesCandle,
  { product }: SeriesCandles,
): [text: string, look: NonNullable<Cell["look"]>][] {
  return [
    [`Burn on ${isoOfDay(burnOn)} or later. By: ____________________`, "label"],
    [stopAt(productOf("product", product) === "tea light"), "caution"],
    ...cautionsFor(wick).map((text): [string, "caution"] => [text, "caution"]),
    [steps(), "note"],
  ];
}
