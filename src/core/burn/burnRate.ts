import { atLeastZero } from "../check/atLeastZero";
import { wrong } from "../check/wrong";
import { Fault } from "../fault";
import { straightLine } from "../statistics/straightLine";

/** A candle weighed during a burn: the hours it has burnt, and its weight then. */
export interface Reading {
  readonly hours: number;
  readonly weight: number;
}

/**
 * Weight a candle loses an hour: the slope of weight against hours, least squares, turned round. Below 0 where
 * the weights rise.
 * Source: least squares; checked against NIST StRD Norris.
 * @param readings two or more, not all at one time, hours and weights of 0 or more, any one weight unit
 */
export function burnRate(readings: readonly Reading[]): number {
  if (readings.length < 2) {
    throw new Fault("none", `hours: ${readings.length} readings with hours and weight; weigh at least twice`);
  }
  const points = readings.map(({ hours, weight }) => ({
    x: atLeastZero("hours", hours),
    y: atLeastZero("weights", weight),
  }));
  if (points.every(({ x }) => x === points[0]?.x)) {
    throw wrong("hours", "all readings are of one time; weigh again after an hour");
  }
  return 0 - straightLine(points).slope;
}
