import { studentT } from "../statistics/studentT";
import { sum } from "../statistics/sum";
import { type Point, throughOrigin } from "../statistics/throughOrigin";
import { type Pour, pourPoints } from "./pours";

/** Half of the interval that holds 95 % of a normal distribution, in standard deviations. */
const NORMAL = 1.959963985;

/**
 * Half-width of the 95 % interval of the wax factor from test pours: that of the slope by Student's t, and with it what
 * the scale rounds. Pours that weigh the same say nothing of what lies within one step of it.
 * Source: least squares through the origin, of which NIST StRD NoInt1 and NoInt2 certify the standard error. The two
 * are added as JCGM 100:2008 (GUM) 5.1.2 adds uncertainties, each with its own factor: by the effective degrees of
 * freedom of G.4 two pours would be surer on a coarser scale.
 * @param pours two or more, weights above 0 in one unit
 * @param division what the scale reads to, in the same unit; 0 where it is not known
 */
export function waxFactorSpread(pours: readonly Pour[], division = 0): number {
  const points = pourPoints(pours, 2);
  const { slope, error } = throughOrigin(points);
  return Math.hypot(studentT(points.length - 1) * error, NORMAL * roundingError(points, slope, division));
}

/**
 * The standard error that rounding gives the slope. Weights that are alike are rounded alike, so it does not grow less
 * with the number of pours: all water is taken to be off by the same, and all wax.
 * Source: GUM 4.3.7 and F.2.2.1: what lies anywhere within a step has the standard uncertainty step / sqrt(12); 5.1.2
 * for the two through the slope.
 */
function roundingError(points: readonly Point[], slope: number, division: number): number {
  const [width, squares] = [sum(points.map(({ x }) => x)), sum(points.map(({ x }) => x * x))];
  return ((division / Math.sqrt(12)) * Math.hypot(1, slope) * width) / squares;
}
