import { aboveZero } from "../check/aboveZero";
import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { divisionsIn } from "../weighing/divisionsIn";
import { inDivisions } from "../weighing/inDivisions";
import { type Parts, scentSplit } from "./scentSplit";

/**
 * Wax and scent of a fill as a scale weighs them: the fill rounded to a division (half of one goes up), the scent to
 * the nearest one, and the wax is the rest. So each fill keeps its own total.
 * @param fill, load, basis see scentSplit
 * @param division of the scale, above 0, in the unit of the fill
 */
export function weighedSplit(fill: number, load: number, basis: string | undefined, division: number): Parts {
  const step = aboveZero("division", division);
  const exact = scentSplit(fill, load, basis);
  const whole = Math.round(divisionsIn(fill, step));
  const scent = Math.round(divisionsIn(exact.scent, step));
  if (whole > 1e12) throw wrong("division", `${plain(step)} is too fine for ${plain(fill)}; write the scale's step`);
  const lost = [whole > 0 ? 0 : fill, scent > 0 ? 0 : exact.scent].find((weight) => weight > 0);
  if (lost !== undefined) {
    const shown = plain(Number(lost.toPrecision(4)));
    throw wrong("division", `${shown} is under half a division of ${plain(step)}; weigh it on a finer scale`);
  }
  const weighing = inDivisions(step);
  return { wax: weighing(whole - scent), scent: weighing(scent) };
}
