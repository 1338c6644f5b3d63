import { LEFT } from "../../core/burn/burnReading";
import { tidy } from "../../core/tidy";
import type { SeenFigures, SeenMean } from "./seenFigures";

/**
 * Of candles that were read as burnt to their end as much of the fill as this has burnt, by their weights; less, or
 * more, and one of the figures is wrong. In a vessel that is filled 15 mm high 10 mm are two thirds. Common practice, no
 * source.
 */
export const BURNT = { least: 1 / 3, most: 1.1 } as const;

/** What is asked where the weights do not agree with the wax left, around the share of the fill that burnt. */
const ASK_BURNT = {
  little: [`with ${LEFT} mm of wax left only about `, " % of the fill had burnt by the weights: check the wax left"],
  much: ["by the weights about ", " % of the fill had burnt: check them, and the fill of the vessel"],
} as const;

/**
 * What is asked of candles that were read as burnt to their end, by what they lost; empty where all agrees or too little
 * is known.
 * @param fill wax and scent of one candle together, in the unit of the weights
 */
export function burntShareWords(
  life: SeenFigures["life"],
  rate: SeenMean | undefined,
  fill: number | undefined,
): string[] {
  if (life?.by !== "burnt" || !rate || fill === undefined || !(fill > 0)) return [];
  const share = (rate.mean * life.mean) / fill;
  const ask = share < BURNT.least ? ASK_BURNT.little : share > BURNT.most ? ASK_BURNT.much : undefined;
  return ask ? [`${ask[0]}${Math.round(tidy(100 * share))}${ask[1]}`] : [];
}

/** The same as a formula that gives a text. */
export function burntShareFormula(by: string, life: string, rate: string, fill: string): string {
  const words = ([before, after]: readonly [string, string]) => `"; ${before}"&ROUND(100*share,0)&"${after}"`;
  const asked = `LET(share,${rate}*${life}/${fill},IF(share<${BURNT.least},${words(ASK_BURNT.little)},IF(share>${BURNT.most},${words(ASK_BURNT.much)},"")))`;
  return `IF(${by}=1,IF(COUNT(${fill},${rate},${life})=3,IF(${fill}>0,${asked},""),""),"")`;
}
