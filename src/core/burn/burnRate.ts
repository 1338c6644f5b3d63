import { atLeastZero } from "../check/atLeastZero";
import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { Fault } from "../fault";
import { straightLine } from "../statistics/straightLine";

/** A candle weighed during a burn: the hours it has burnt, and its weight then. */
export interface Reading {
  readonly hours: number;
  readonly weight: number;
}

const LONGEST = 10_000; // h: over a year, and a date is a count of some 46,000 days

/**
 * Weight a candle loses an hour: the slope of weight against hours, least squares, turned round. Below 0 where
 * the weights rise.
 * Source: least squares; checked against NIST StRD Norris.
 * @param readings two or more, not all at one time, hours of 0 to 10,000, weights of 0 or more in any one unit
 */
export function burnRate(readings: readonly Reading[]): number {
  if (readings.length < 2) {
    throw new Fault("none", `hours: ${readings.length} readings with hours and weight; weigh at least twice`);
  }
  const points = readings.map(({ hours, weight }) => ({
    x: burnt(hours),
    y: atLeastZero("weights", weight),
  }));
  if (points.every(({ x }) => x === points[0]?.x)) {
    throw wrong("hours", "all readings are of one time; weigh again after an hour");
  }
  return 0 - straightLine(points).slope;
}

function burnt(hours: number): number {
  if (hours <= LONGEST) return atLeastZero("hours", hours);
  throw wrong("hours", `${plain(hours)} is above ${LONGEST}; of date-times take off the start and multiply by 24`);
}
