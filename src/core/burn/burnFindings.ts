import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { oneOf } from "../check/oneOf";
import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { Fault } from "../fault";
import { celsius } from "../units/celsius";
import { checkedUnit } from "../units/checkedUnit";
import { centimetresIn } from "../units/length";
import { cyclesOf, unseenStretches } from "./burnCycles";
import { flameCheck } from "./flameCheck";
import { poolCheck } from "./poolCheck";

/** What was read of one candle at one time, lengths in one unit. What was not looked at is undefined. */
export interface BurnReading {
  /** From 1. */
  readonly cycle: number;
  /** Since this cycle began. */
  readonly minutes: number;
  /** Height of the flame. */
  readonly flame?: number | undefined;
  /** Diameter of the melt pool. */
  readonly pool?: number | undefined;
  /** Wax left from the surface down. */
  readonly depth?: number | undefined;
  /** Soot index an hour, or what was seen in words: `none`, or anything else. */
  readonly soot?: number | string | undefined;
  /** The hottest place of the vessel outside. */
  readonly glass?: number | undefined;
}

const LEFT = 10; // mm of wax left at the end: EN 15426
const MOST_SOOT = 1; // an hour: EN 15426, from memory
const HOTTEST = 60; // C: common practice, no source: what a hand cannot hold
const NO_SOOT = /^(no|none|nothing|0|-|clean)$/i;
const PRODUCTS = ["container", "tea light"] as const;

/** What a candle's readings say, each in words. */
export interface BurnFindings {
  /** Beyond what is published or common practice. */
  readonly beyond: readonly string[];
  /** Still to be done or read: until then silence says nothing. */
  readonly lacks: readonly string[];
}

/**
 * What one candle's burn shows that is beyond what is published or common practice, and what is still to be done.
 * Source: EN 15493 (flame), EN 15426 (cycles, 10 mm left; soot from memory); common practice for the pool and the glass.
 * @param width inside width of the vessel, above 0, in `lengthUnit` as all lengths
 * @param temperatureUnit of the vessel's heat; needed where that was read
 * @param product `container` or `tea light`
 */
export function burnFindings(
  readings: readonly BurnReading[],
  width: number,
  lengthUnit = "mm",
  temperatureUnit = "",
  product = "container",
): BurnFindings {
  if (readings.length === 0) throw new Fault("none", "cycles", "nothing is read yet; burn a first cycle");
  oneOf("product", product, PRODUCTS);
  aboveZero("width", width);
  for (const reading of readings) checkPlace(reading);
  const lit = readings.filter(({ minutes }) => minutes > 0);
  const found = [
    ofKind(lit, ({ flame }) => (flame === undefined ? "" : flameCheck(flame, lengthUnit, product))),
    ofKind(lit, ({ pool, minutes }) => (pool === undefined ? "" : poolCheck(pool, width, minutes / 60, lengthUnit))),
    ofKind(readings, ({ soot }) => sootWords(soot)),
    ofKind(readings, ({ glass }) => (glass === undefined ? "" : glassWords(glass, temperatureUnit))),
  ];
  return {
    beyond: found.filter((words) => words !== ""),
    lacks: lacking(readings, lit, centimetresIn("lengthUnit", lengthUnit) * 10),
  };
}

/** What is said of the first reading that has something, and of how many more. */
function ofKind(readings: readonly BurnReading[], wordsOf: (reading: BurnReading) => string): string {
  const said = readings.flatMap((reading) => {
    const words = wordsOf(reading);
    return words === "" ? [] : [`cycle ${reading.cycle} at ${plain(reading.minutes)} min: ${words}`];
  });
  const [first = ""] = said;
  return said.length > 1 ? `${first} (and ${said.length - 1} more)` : first;
}

function checkPlace({ cycle, minutes }: BurnReading): void {
  if (!Number.isInteger(cycle) || cycle < 1) {
    throw wrong("cycles", `${plain(cycle)} is no number of a cycle; write 1, 2, 3 and so on`);
  }
  atLeastZero("minutes", minutes);
}

function sootWords(soot: number | string | undefined): string {
  if (soot === undefined) return "";
  if (typeof soot === "string") return NO_SOOT.test(soot.trim()) ? "" : `soot: ${soot.trim()}`;
  if (atLeastZero("soot", soot) <= MOST_SOOT) return "";
  return `soot index ${plain(soot)} an hour, at most ${MOST_SOOT} by EN 15426 (from memory)`;
}

function glassWords(glass: number, unit: string): string {
  if (celsius(glass, "temperatureUnit", unit) <= HOTTEST) return "";
  const hot = `${plain(glass)} ${checkedUnit("temperature", "temperatureUnit", unit)}`;
  return `the vessel is ${hot} hot, too hot to hold above ${HOTTEST} C (common practice)`;
}

/** What must be read or done before a candle says anything by its silence. */
function lacking(readings: readonly BurnReading[], lit: readonly BurnReading[], millimetres: number): string[] {
  const unread = (["flame", "pool"] as const).flatMap((what) => {
    const at = lit.find((reading) => reading[what] === undefined);
    return at ? [`no ${what} read in cycle ${at.cycle} at ${plain(at.minutes)} min`] : [];
  });
  const unseen = cyclesOf(readings).flatMap((cycle) => unseenStretches(cycle));
  const never = (["soot", "glass"] as const).flatMap((what) =>
    readings.every((reading) => reading[what] === undefined)
      ? [what === "soot" ? "soot never looked at" : "the vessel's heat never read"]
      : [],
  );
  return [...unread, ...unseen.slice(0, 1), ...never, ...depthLeft(readings, millimetres)];
}

function depthLeft(readings: readonly BurnReading[], millimetres: number): string[] {
  const depths = readings.flatMap(({ depth }) => (depth === undefined ? [] : [atLeastZero("depths", depth)]));
  if (depths.length === 0) return [`the depth of wax left never read; burn down to ${LEFT} mm`];
  const least = Number((Math.min(...depths) * millimetres).toPrecision(12));
  return least > LEFT ? [`${plain(least)} mm of wax left; burn down to ${LEFT} mm`] : [];
}
