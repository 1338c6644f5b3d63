import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { loadFrom } from "./loadFrom";

/**
 * The load that was weighed, by a person who may have swapped the two: no candle holds as much scent as wax.
 * @param wax, scent, basis see loadFrom
 */
export function weighedLoad(wax: number, scent: number, basis?: string): number {
  if (loadFrom(wax, scent) < 1) return loadFrom(wax, scent, basis);
  const text = `${plain(scent)} of scent in ${plain(wax)} of wax is a load of 100 % of wax or more`;
  throw wrong("scent", `${text}; were the two swapped? Give the wax first`);
}
