import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { loadFrom } from "./loadFrom";

/**
 * The load that was weighed, by a person who may have swapped the two: no candle holds as much scent as wax.
 * @param wax, scent, basis see loadFrom
 */
export function weighedLoad(wax: number, scent: number, basis?: string): number {
  const ofWax = loadFrom(wax, scent);
  if (ofWax < 1) return loadFrom(wax, scent, basis);
  const [oil, base] = [scent, wax].map(plain);
  throw wrong(
    "scent",
    `${oil} of scent in ${base} of wax is ${plain(Number((ofWax * 100).toPrecision(4)))} % of the wax; were the two swapped? Give the wax first`,
  );
}
