import { throughOrigin } from "../statistics/throughOrigin";
import { type Pour, pourPoints } from "./pours";

/**
 * Wax factor from test pours: the slope of poured wax against water, least squares through the origin.
 * Source: least squares; checked against NIST StRD NoInt1 and NoInt2.
 * @param pours one or more, weights above 0 in one unit
 * @returns weight of wax for one weight of water
 */
export function waxFactor(pours: readonly Pour[]): number {
  return throughOrigin(pourPoints(pours, 1)).slope;
}
