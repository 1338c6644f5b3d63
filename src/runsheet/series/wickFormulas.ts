import { burntShareFormula } from "./burntShare";
import { isFirstOf } from "./firstOfName";
import { FEW } from "./planSeries";
import {
  ANOTHER_WICK,
  asFormula,
  beyondIn,
  burnMore,
  couldStill,
  finish,
  nothingBeyond,
  nothingYet,
  toLookAt,
} from "./verdictWords";

/** Formulas of a wick's row on the sheet of a series, over the rows of its candles. */

/** Ranges of the candles' rows, a column each. */
export interface CandleRanges {
  readonly candle: string;
  readonly wick: string;
  readonly rate: string;
  readonly end: string;
  readonly hours: string;
  readonly flame: string;
  readonly state: string;
  readonly remarks: string;
  readonly notes: string;
  readonly words: string;
  readonly soot: string;
  readonly scores: string;
  readonly scored: string;
}

/** Cells of the wick's own row. */
export interface WickCells {
  readonly wick: string;
  readonly count: string;
  readonly passed: string;
  readonly failed: string;
  readonly mean: string;
  readonly lower: string;
  readonly upper: string;
  readonly lifeBy: string;
  readonly alike: string;
}

const own = ({ wick }: CandleRanges, cells: Pick<WickCells, "wick">): string => `(${wick}=${cells.wick})`;
const unless = ({ wick }: Pick<WickCells, "wick">, formula: string): string => `=IF(${wick}="","",${formula})`;
const some = (range: string, mine: string): string => `IF(${mine}*ISNUMBER(${range}),${range},"")`;

/** The wick of this place in the order of the candles; an empty text behind the last one. */
export const wickAtPlace = ({ wick }: CandleRanges, place: number): string => {
  return `=LET(wicks,FILTER(${wick},(${wick}<>"")*${isFirstOf(wick, wick)},""),IF(ROWS(wicks)<${place},"",INDEX(wicks,${place})))`;
};

/** How many wicks there are. */
export const countOfWicks = ({ wick }: CandleRanges): string => `SUMPRODUCT((${wick}<>"")*${isFirstOf(wick, wick)})`;

export const countOf = (ranges: CandleRanges, cells: Pick<WickCells, "wick">): string =>
  unless(cells, `SUMPRODUCT(${own(ranges, cells)}*1)`);

export const countIn = (state: 1 | 2, ranges: CandleRanges, cells: Pick<WickCells, "wick">): string =>
  unless(cells, `SUMPRODUCT(${own(ranges, cells)}*(${ranges.state}=${state}))`);

export const passedWords = (cells: WickCells): string => {
  const { count, passed, failed } = cells;
  const open = `${count}-${passed}-${failed}`;
  return unless(
    cells,
    `IF(${passed}+${failed}=0,"none finished",${passed}&" of "&(${passed}+${failed}))&IF(${open}>0,", "&(${open})&" open","")`,
  );
};

export const boundOf = (cells: WickCells): string =>
  unless(
    cells,
    `IF(${cells.passed}=0,"",ROUNDDOWN(ROUND(POUR.PASSBOUND(${cells.passed},${cells.passed}+${cells.failed}),12),2))`,
  );

export const meanOf = (ranges: CandleRanges, cells: Pick<WickCells, "wick">): string =>
  unless(cells, `LET(rates,${some(ranges.rate, own(ranges, cells))},IF(COUNT(rates)=0,"",AVERAGE(rates)))`);

export const highest = (range: string, ranges: CandleRanges, cells: Pick<WickCells, "wick">): string =>
  unless(cells, `LET(seen,${some(range, own(ranges, cells))},IF(COUNT(seen)=0,"",MAX(seen)))`);

/** The narrowest and the widest pool of an hour, in whole percent. */
export const poolWords = (
  least: string,
  most: string,
  ranges: CandleRanges,
  cells: Pick<WickCells, "wick">,
): string => {
  const mine = own(ranges, cells);
  const names = `low,${some(least, mine)},high,${some(most, mine)},from,ROUND(MIN(low)*100,0),to,ROUND(MAX(high)*100,0)`;
  return unless(cells, `LET(${names},IF(COUNT(low)=0,"",IF(from=to,from,from&" to "&to)&" %"))`);
};

/** What was read of soot, each list of a candle once. */
export const sootWords = (ranges: CandleRanges, cells: Pick<WickCells, "wick">): string => {
  const read = `FILTER(${ranges.soot},${own(ranges, cells)}*(${ranges.soot}<>""))`;
  return unless(cells, `IFERROR(LET(read,${read},TEXTJOIN("; ",TRUE,UNIQUE(read))),"not read")`);
};

/** The mean of all scores of the throw. */
export const throwOf = (ranges: CandleRanges, cells: Pick<WickCells, "wick">): string => {
  const all = (range: string) => `SUM(IF(${own(ranges, cells)}*ISNUMBER(${range}),${range},0))`;
  return unless(cells, `LET(many,${all(ranges.scores)},IF(many=0,"not read",${all(ranges.scored)}/many))`);
};

/** 1 where candles were burnt to their end, 2 where the fill and the rate say how long; an empty text where neither. */
export const lifeBy = (ranges: CandleRanges, cells: WickCells, fill: string): string =>
  unless(
    cells,
    `IF(SUMPRODUCT(${own(ranges, cells)}*ISNUMBER(${ranges.end}))>0,1,IF(COUNT(${fill},${cells.mean})<2,"",IF(${fill}>0,2,"")))`,
  );

export function lifeOf(ranges: CandleRanges, cells: WickCells, fill: string) {
  const { lifeBy: by, mean, lower, upper } = cells;
  const ends = `ends,${some(ranges.end, own(ranges, cells))}`;
  const half = "T.INV.2T(0.05,COUNT(ends)-1)*STDEV.S(ends)/SQRT(COUNT(ends))";
  const interval = (sign: "-" | "+", rate: string) => {
    const burnt = `LET(${ends},IF(COUNT(ends)<2,"",IF(MAX(ends)=MIN(ends),"",AVERAGE(ends)${sign}${half})))`;
    const byRate = `IF(COUNT(${lower},${upper})<2,"",IF(${lower}>0,POUR.BURNHOURS(${fill},${rate}),""))`;
    return unless(cells, `IF(${by}=1,${burnt},IF(${by}=2,${byRate},""))`);
  };
  return {
    mean: unless(cells, `IF(${by}=1,LET(${ends},AVERAGE(ends)),IF(${by}=2,POUR.BURNHOURS(${fill},${mean}),""))`),
    lower: interval("-", upper),
    upper: interval("+", lower),
  };
}

export const lifeWords = (cells: WickCells, life: { mean: string; lower: string; upper: string }): string =>
  unless(
    cells,
    `IF(${life.mean}="","not known",TEXT(${life.mean},"0.0")&" h"&IF(${life.lower}="",""," ("&TEXT(${life.lower},"0.0")&" to "&TEXT(${life.upper},"0.0")&")")&IF(${cells.lifeBy}=1,", burnt",", by rate"))`,
  );

/** A share in percent of two digits, rounded up, of a fault that so many candles without one leave possible. */
const mostOf = (count: string): string =>
  `LET(share,ROUND(100-100*POUR.PASSBOUND(${count},${count}),9),ROUNDUP(share,IF(share<10,1,0)))`;

/**
 * What was seen, in words; it never says safe.
 * @param fill what one candle holds
 */
export function verdictOf(ranges: CandleRanges, cells: WickCells, fill: string): string {
  const { count, passed, failed, alike } = cells;
  const first = (column: string, value: number): string => {
    const at = (range: string) => `INDEX(${range},XMATCH(1,${own(ranges, cells)}*(${column}=${value})))`;
    return `${at(ranges.candle)}&", "&${at(ranges.words)}`;
  };
  const looks = `SUMPRODUCT(${own(ranges, cells)}*(${ranges.remarks}=1))`;
  const open = `${count}-${passed}-${failed}`;
  const seen = [
    nothingBeyond(asFormula, passed, mostOf(passed)),
    `IF(${looks}>0,${toLookAt(asFormula, looks, first(ranges.remarks, 1))},"")`,
    `IF(${open}>0,"; open: "&${first(ranges.state, 0)},"")`,
  ].join("&");
  const failedWords = beyondIn(asFormula, failed, count, first(ranges.state, 2));
  const noneYet = nothingYet(asFormula, first(ranges.state, 0));
  const words = `IF(${failed}>0,${failedWords},IF(${passed}=0,${noneYet},${seen}))`;
  const noted = `${own(ranges, cells)}*(${ranges.notes}<>"")`;
  const ofFirst = (range: string) => `INDEX(${range},XMATCH(1,${noted}))`;
  const notes = `IF(SUMPRODUCT(${noted})>0,"; the maker's remarks, in "&SUMPRODUCT(${noted})&": "&${ofFirst(ranges.candle)}&", "&${ofFirst(ranges.notes)}&": read them first","")`;
  const share = burntShareFormula(own(ranges, cells), ranges, fill);
  return unless(
    cells,
    `${words}&${notes}&${share}&IF(${alike}="","","; its rate cannot be told from that of "&${alike})`,
  );
}

/** How many more candles would tell more, and what they would tell. */
export function surerOf(cells: WickCells): string {
  const { wick, count, passed, failed } = cells;
  const plural = (number: string): string => `IF(${number}=1," candle"," candles")`;
  const names = `open,${count}-${passed}-${failed},every,${passed}+open,more,IF(every<${FEW},${FEW}-every,IF(open>0,0,every))`;
  const words = [
    `IF(open>0,${finish(asFormula, "open", plural("open"))},"")`,
    'IF(AND(open>0,more>0),", then ","")',
    `IF(more>0,${burnMore(asFormula, "more", plural("more"), wick)},"")`,
    couldStill(asFormula, mostOf("(every+more)")),
  ].join("&");
  return unless(cells, `IF(${failed}>0,"${ANOTHER_WICK}",LET(${names},${words}))`);
}
