import type { Temperature } from "./readTemperature";

/**
 * Degrees Celsius between which wax is worked with and scents have their flash points: common practice, no source.
 * 65 C under a heading in F, or 185 F under one in C, lies outside.
 */
const LEAST = 30;
const MOST = 150;

/** Whether a temperature looks as if it were in the other unit. What could not be read is spoken of elsewhere. */
export function isUnlikelyTemperature({ least, most, doubt }: Temperature): boolean {
  if (doubt) return false;
  const ends = [least, most].filter(Number.isFinite);
  return ends.some((degrees) => degrees < LEAST || degrees > MOST);
}

export const LIKELY_TEMPERATURES = `${LEAST} to ${MOST} C (86 to 302 F)`;
