import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { Fault } from "../fault";
import { celsius } from "../units/celsius";
import { checkedUnit } from "../units/checkedUnit";
import { millimetresIn } from "../units/length";
import { gramsIn } from "../units/weight";
import { type BurnReading, saysSomething, unreadIn } from "./burnReading";
import { coldDoubt } from "./coldDoubt";
import { flameCheck } from "./flameCheck";
import { flameDoubt } from "./flameDoubt";
import { BEYOND, NO_WIDTH, NOTHING_READ } from "./openings";
import { poolCheck } from "./poolCheck";
import { productOf } from "./product";
import { shortCycle } from "./shortCycle";
import { type WaxDoubts, waxDoubt } from "./waxDoubt";

const MOST_SOOT = 1; // an hour: EN 15426, from memory
const HOTTEST = 60; // C: common practice, no source: what a hand cannot hold
// Only the whole of a text says that there was none: "none at first, then smoke" does not.
const NO_SOOT = /^(nil|nothing|clean|clear|ok|no(ne)?( visible)?( soot| smoke)?( seen| visible)?)\.?$/i;
const NOT_READ = /^(n\/?a|not (read|looked at)|[?-]|)\.?$/i;

/** What a candle's readings say, each in words. */
export interface BurnFindings {
  /** Beyond what is published or common practice. */
  readonly beyond: readonly string[];
  /** A pool before or behind the rule of thumb, or wax that went otherwise than the weights say: to look at. */
  readonly remarks: readonly string[];
  /** Still to be done or read, in doubt, or not to be read as it stands: until then silence says nothing. */
  readonly lacks: readonly string[];
  /** Whether the candle is not to burn on: its flame is too high, or its vessel too hot. */
  readonly ends: boolean;
}

/**
 * What one candle's burn shows, and what is still to be done.
 * Source: EN 15493 (flame), EN 15426 (cycles second-hand, 10 mm left; soot from memory); common practice for the pool
 * and the glass temperature.
 * @param readings one or more that say something; others only say how long a cycle burnt
 * @param width inside width of the vessel, above 0, in `lengthUnit` as all lengths; the pool is not judged without
 * @param temperatureUnit of the glass temperature; needed where that was read
 * @param product `container` or `tea light`
 * @param weightUnit of the weights; needed where one was read
 */
export function burnFindings(
  readings: readonly BurnReading[],
  width: number | undefined,
  lengthUnit = "mm",
  temperatureUnit = "",
  product = "container",
  weightUnit = "",
): BurnFindings {
  if (!readings.some(saysSomething)) throw new Fault("none", "cycles", NOTHING_READ);
  productOf("product", product);
  const wall = width === undefined ? undefined : aboveZero("width", width);
  for (const reading of readings) checkPlace(reading);
  const isHeatRead = readings.some(({ glass }) => glass !== undefined);
  const unit = isHeatRead ? checkedUnit("temperature", "temperatureUnit", temperatureUnit) : "";
  const all = readings.map(asRead);
  const lit = all.filter(({ minutes }) => minutes > 0);
  const flames = said(lit, ({ flame }) => (flame === undefined ? "" : flameCheck(flame, lengthUnit, product)));
  const pools = said(lit, ({ pool, minutes }) =>
    pool === undefined || wall === undefined ? "" : poolCheck(pool, wall, minutes / 60, lengthUnit),
  );
  const soot = said(all, ({ soot }) => sootWords(soot));
  const heat = said(all, ({ glass }) => (glass === undefined ? "" : heatWords(glass, unit)));
  const millimetres = millimetresIn("lengthUnit", lengthUnit);
  const wax = waxOf(all, wall === undefined ? undefined : wall * millimetres, millimetres, weightUnit);
  const doubts = [
    ...shortCycle(lit.filter(saysSomething), millimetres),
    ...said(lit, (reading) => flameDoubt(reading, wall, lengthUnit)).words,
    ...said(lit, ({ glass, minutes }) => (glass === undefined ? "" : coldDoubt(glass, minutes, unit))).words,
    ...wax.lacks,
  ];
  return {
    beyond: [...flames.words, ...soot.words, ...heat.words],
    remarks: [...pools.words, ...wax.remarks],
    lacks: [
      ...[flames, pools, soot, heat].flatMap(({ faults }) => faults),
      ...doubts,
      ...(wall === undefined ? [NO_WIDTH] : []),
      ...unreadIn(all, millimetres),
    ],
    ends: flames.words.length > 0 || heat.words.length > 0,
  };
}

function waxOf(
  readings: readonly BurnReading[],
  wall: number | undefined,
  millimetres: number,
  weightUnit: string,
): WaxDoubts {
  if (readings.every(({ weight }) => weight === undefined)) return { lacks: [], remarks: [] };
  const grams = gramsIn("weightUnit", weightUnit);
  return wall === undefined ? { lacks: [], remarks: [] } : waxDoubt(readings, wall, millimetres, grams);
}

/** What is said of the first reading that has something, and of how many more; and what cannot be read. */
function said(readings: readonly BurnReading[], wordsOf: (reading: BurnReading) => string) {
  const [found, faults]: [string[], string[]] = [[], []];
  for (const reading of readings) {
    const at = `cycle ${reading.cycle} at ${plain(reading.minutes)} min`;
    try {
      const words = wordsOf(reading);
      if (words !== "") found.push(`${at}: ${words}`);
    } catch (fault) {
      if (!(fault instanceof Fault)) throw fault;
      faults.push(`${at}: ${fault.message}`);
    }
  }
  const [first] = found;
  const more = found.length > 1 ? ` (and ${found.length - 1} more)` : "";
  return { words: first === undefined ? [] : [`${first}${more}`], faults: faults.slice(0, 1) };
}

function checkPlace({ cycle, minutes }: BurnReading): void {
  if (!Number.isInteger(cycle) || cycle < 1) {
    throw wrong("cycles", `${plain(cycle)} is no number of a cycle; write 1, 2, 3 and so on`);
  }
  if (atLeastZero("minutes", minutes) > 0 && minutes < 1) {
    throw wrong(
      "minutes",
      `${plain(minutes)} is less than one; of clock times take off the start and multiply by 1440`,
    );
  }
}

/** Soot that a note says nothing of was not read. */
const asRead = (reading: BurnReading): BurnReading =>
  typeof reading.soot === "string" && NOT_READ.test(reading.soot.trim()) ? { ...reading, soot: undefined } : reading;

function sootWords(soot: number | string | undefined): string {
  if (soot === undefined) return "";
  const words = String(soot).trim();
  const index = /^\d+([.,]\d+)?$/.test(words) ? Number(words.replace(",", ".")) : soot;
  if (typeof index === "string") return NO_SOOT.test(words) ? "" : `${BEYOND.soot}: ${words}`;
  if (atLeastZero("soot", index) <= MOST_SOOT) return "";
  return `${BEYOND.soot} index ${plain(index)} an hour, at most ${MOST_SOOT} by EN 15426 (from memory)`;
}

function heatWords(glass: number, unit: string): string {
  if (celsius(glass, "temperatureUnit", unit) <= HOTTEST) return "";
  return `${BEYOND.glass}${plain(Number(glass.toPrecision(4)))} ${unit}, too hot to hold above ${HOTTEST} C (common practice)`;
}
