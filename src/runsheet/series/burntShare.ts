import { LEFT } from "../../core/burn/burnReading";
import type { SeenCandle } from "../seenCandle";

/**
 * Of candles that were read as burnt to their end as much of the fill as this has burnt by then by their weights, and
 * until they were weighed last; less, or more, and one of the figures is wrong. In a vessel that is filled 20 mm high
 * 10 mm are half. Common practice, no source.
 */
export const BURNT = { least: 1 / 2, most: 1.1 } as const;

/** Of a share: behind them stands noise, which is another on a sheet. */
const DIGITS = 9;

/** What is asked where the weights do not agree with the wax left, around the share of the fill that burnt. */
export const ASK_BURNT = {
  little: [`with ${LEFT} mm of wax left only about `, " % of the fill had burnt by the weights: check the wax left"],
  much: ["by the weights about ", " % of the fill had burnt: check them, and the fill of the vessel"],
} as const;

/**
 * What is asked of a wick's candles that were read as burnt to their end, by what they lost; empty where all agrees or
 * too little is known.
 * @param fill wax and scent of one candle together, in the unit of the weights
 */
export function burntShareWords(
  candles: readonly Pick<SeenCandle, "rate" | "end" | "hours">[],
  fill: number | undefined,
): string[] {
  if (fill === undefined || !(fill > 0)) return [];
  const shares = (hoursOf: (one: (typeof candles)[number]) => number | undefined): number[] =>
    candles.flatMap((one) => {
      const hours = hoursOf(one);
      return one.rate === undefined || one.end === undefined || hours === undefined
        ? []
        : [Number(((one.rate * hours) / fill).toFixed(DIGITS))];
    });
  const [little, much] = [Math.min(...shares(({ end }) => end)), Math.max(...shares(({ hours }) => hours))];
  const words = ([before, after]: readonly [string, string], share: number) =>
    `${before}${Math.round(Number((100 * share).toFixed(DIGITS)))}${after}`;
  return [
    ...(little < BURNT.least ? [words(ASK_BURNT.little, little)] : []),
    ...(much > BURNT.most ? [words(ASK_BURNT.much, much)] : []),
  ];
}

/**
 * The same as a formula that gives a text.
 * @param own whether a candle's row is the wick's, for each
 */
export function burntShareFormula(
  own: string,
  ranges: { readonly rate: string; readonly end: string; readonly hours: string },
  fill: string,
): string {
  const { rate, end, hours } = ranges;
  const words = ([before, after]: readonly [string, string], share: string) =>
    `"; ${before}"&ROUND(ROUND(100*${share},${DIGITS}),0)&"${after}"`;
  const shares = (of: string) =>
    `IF(${own}*ISNUMBER(${rate})*ISNUMBER(${end}),ROUND(${rate}*${of}/${fill},${DIGITS}),"")`;
  const names = `first,${shares(end)},last,${shares(hours)},little,MIN(first),much,MAX(last)`;
  const asked = `IF(little<${BURNT.least},${words(ASK_BURNT.little, "little")},"")&IF(much>${BURNT.most},${words(ASK_BURNT.much, "much")},"")`;
  return `IF(N(${fill})>0,LET(${names},IF(COUNT(first)=0,"",${asked})),"")`;
}
