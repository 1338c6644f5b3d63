import { studentT } from "../statistics/studentT";
import { sum } from "../statistics/sum";
import { type Point, throughOrigin } from "../statistics/throughOrigin";
import { type Pour, pourPoints } from "./pours";

/** Of so many degrees of freedom Student's t is the normal distribution to three digits. */
const MANY = 1000;

/**
 * Half-width of the 95 % interval of the wax factor from test pours: Student's t times the combined standard error, of
 * the slope and of what the scale rounds. Pours that weigh the same say nothing of what lies within one step of it.
 * Source: least squares through the origin, of which NIST StRD NoInt1 and NoInt2 certify the standard error;
 * JCGM 100:2008 (GUM) G.4.1 and G.4.2 for the two together with their degrees of freedom, rounded down.
 * @param pours two or more, weights above 0 in one unit
 * @param division what the scale reads to, in the same unit; 0 where it is not known
 */
export function waxFactorSpread(pours: readonly Pour[], division = 0): number {
  const points = pourPoints(pours, 2);
  const { slope, error } = throughOrigin(points);
  const combined = Math.hypot(error, roundingError(points, slope, division));
  if (combined === 0) return 0;
  const own = points.length - 1;
  const degrees = Math.max(own, Math.min(MANY, Math.floor(own * (combined / error) ** 4)));
  return studentT(degrees) * combined;
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
