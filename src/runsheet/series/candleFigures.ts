import { LEFT, RULER } from "../../core/burn/burnReading";
import { BY_PLACE, isRising, unlessGap, withBurnt } from "./burntFormula";
import {
  type CandleCells,
  type CandleReadings,
  ifRead,
  ifThere,
  isFilled,
  isNumber,
  NOT_SAID,
  numbersIn,
  refOf,
  unlessFree,
} from "./candleReadings";
import type { SeenColumns } from "./seenColumns";

/** Formulas of a candle's figures on the sheet of a series. One that needs a column that is not there is an empty text. */

/** Its row in the table of burn tests, counted from 1. */
export const rowOf = ({ test }: SeenColumns, cells: CandleCells): string =>
  unlessFree(cells, `XMATCH(${cells.candle},TRIM(${refOf(test("test"))}))`);

/** The first of its readings, counted from 1. */
export const firstOf = ({ reading }: SeenColumns, cells: CandleCells): string =>
  unlessFree(cells, `IFERROR(XMATCH(${cells.candle},TRIM(${refOf(reading("test"))})),"")`);

export function wickOf({ test }: SeenColumns, cells: CandleCells): string {
  const name = `TRIM(INDEX(${refOf(test("wick"))},${cells.at}))`;
  return unlessFree(cells, `IF(${name}="","no wick named",${name})`);
}

export function widthOf({ test }: SeenColumns, cells: CandleCells): string {
  const width = test("width");
  if (!width) return NOT_SAID;
  const cell = `INDEX(${width.ref},${cells.at})`;
  return unlessFree(cells, `IF(ISNUMBER(${cell}),IF(${cell}>0,${cell}${width.times},""),"")`);
}

export const hoursOf = (own: CandleReadings): string =>
  ifRead(own.cells, `IFERROR(${withBurnt(own, "MAX(burnt)")},0)`, "0");

/** Weight lost an hour; none while its weights rise. */
export const rateOf = (own: CandleReadings): string =>
  ifThere(own, "weight", (weight) => {
    const lost = withBurnt(own, unlessGap("POUR.BURNRATE(burnt,beside)"), weight);
    return `IF(${own.cells.rise}=1,"",IFERROR(LET(lost,${lost},IF(lost="","",IF(lost>0,lost,""))),""))`;
  });

/** 1 where one of its weights is above one of when it had burnt less, else 0. */
export const riseOf = (own: CandleReadings): string =>
  ifThere(own, "weight", (weight) => `IFERROR(${withBurnt(own, `IF(${isRising("burnt", 0)},1,0)`, weight)},0)`);

/** Hours it had burnt when no more wax was left than a burn ends with. */
export const endOf = (own: CandleReadings): string =>
  ifThere(own, "depth", (depth) => {
    const ends = `IF(ISNUMBER(beside),IF(ROUND(beside,9)<=${LEFT},burnt,""),"")`;
    const first = `LET(ends,${ends},IF(COUNT(ends)=0,"",MIN(ends)))`;
    return `IFERROR(${withBurnt(own, unlessGap(`IF(${isRising(BY_PLACE, RULER)},"",${first})`), depth)},"")`;
  });

export const flameOf = (own: CandleReadings): string =>
  ifThere(own, "flame", (flame) => `LET(seen,${numbersIn(own, flame)},IF(COUNT(seen)=0,"",MAX(seen)))`);

/** Its narrowest pool at a full hour, or its widest, as a share of the width. */
export const poolOf = (own: CandleReadings, hour: number, which: "MIN" | "MAX"): string =>
  ifThere(own, "pool", (pool) => {
    const { minutes, cells } = own;
    const atHour = `*(ROUND(IF(${isNumber(minutes)},${minutes.ref}${minutes.times},0)/60,0)=${hour})`;
    const share = `LET(seen,${numbersIn(own, pool, atHour)},IF(COUNT(seen)=0,"",${which}(seen)/${cells.width}))`;
    return `IF(${cells.width}="","",${share})`;
  });

/** What was read of soot, each once. */
export const sootOf = (own: CandleReadings): string =>
  ifThere(own, "soot", (soot) => {
    const read = `FILTER(TRIM(${soot.ref}),${isFilled(soot)}*${own.cells.placed})`;
    return `IFERROR(LET(read,${read},TEXTJOIN(", ",TRUE,UNIQUE(read))),"")`;
  });

/** What the maker remarked. */
export const notesOf = (own: CandleReadings): string =>
  ifThere(own, "remarks", (remarks) => `TEXTJOIN("; ",TRUE,TRIM(${remarks.ref}))`);

/** How many scores of its throw there are, or their sum. */
export const scoresOf = (own: CandleReadings, which: "COUNT" | "SUM"): string =>
  ifThere(own, "throw", (scores) => `${which}(${numbersIn(own, scores)})`);
