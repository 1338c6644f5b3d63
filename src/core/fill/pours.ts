import { aboveZero } from "../check/aboveZero";
import { Fault } from "../fault";
import type { Point } from "../statistics/throughOrigin";

/** A test pour: the wax that filled a vessel and the water that filled the same space, in one weight unit. */
export interface Pour {
  readonly poured: number;
  readonly water: number;
}

/** Test pours as points of the line poured = factor x water; a fault when there are fewer than `least`. */
export function pourPoints(pours: readonly Pour[], least: number): Point[] {
  if (pours.length < least) {
    throw new Fault("none", "poured", `${pours.length} test pours with both weights; weigh at least ${least}`);
  }
  return pours.map(({ poured, water }) => ({ x: aboveZero("water", water), y: aboveZero("poured", poured) }));
}
