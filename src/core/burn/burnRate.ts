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
const SHORTEST = 0.5; // h between the first and the last: clock times of a day's work lie as close, being parts of a day
const AS_HOURS = "of clock times and date-times take off the start and multiply by 24";

/**
 * Weight a candle loses an hour: the slope of weight against hours, least squares, turned round. Below 0 where
 * the weights rise.
 * Source: least squares; checked against NIST StRD Norris.
 * @param readings two or more, over more than half an hour, hours of 0 to 10,000, weights of 0 or more in any one unit
 */
export function burnRate(readings: readonly Reading[]): number {
  if (readings.length < 2) {
    throw new Fault("none", "hours", `${readings.length} readings with hours and weight; weigh at least twice`);
  }
  const points = readings.map(({ hours, weight }) => ({
    x: burnt(hours),
    y: atLeastZero("weights", weight),
  }));
  const [first, last] = points.reduce(
    ([least, most], { x }) => [Math.min(least, x), Math.max(most, x)],
    [Number.POSITIVE_INFINITY, 0],
  );
  if (first === last) throw wrong("hours", "all readings are of one time; weigh again after an hour");
  if (last - first <= SHORTEST) {
    throw wrong("hours", `all lie within half an hour; ${AS_HOURS}, or weigh again after an hour`);
  }
  return 0 - straightLine(points).slope;
}

function burnt(hours: number): number {
  if (hours <= LONGEST) return atLeastZero("hours", hours);
  throw wrong("hours", `${plain(hours)} is above ${LONGEST}; ${AS_HOURS}`);
}
