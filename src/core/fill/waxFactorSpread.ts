import { studentT } from "../statistics/studentT";
import { throughOrigin } from "../statistics/throughOrigin";
import { type Pour, pourPoints } from "./pours";

/**
 * Half-width of the 95 % interval of the wax factor from test pours: Student's t times the slope's standard error.
 * Source: least squares through the origin; NIST StRD NoInt1 and NoInt2 certify the standard error.
 * @param pours two or more, weights above 0 in one unit
 */
export function waxFactorSpread(pours: readonly Pour[]): number {
  const points = pourPoints(pours, 2);
  return studentT(points.length - 1) * throughOrigin(points).error;
}
