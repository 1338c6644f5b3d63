import { plain } from "../check/plain";
import { celsius } from "../units/celsius";
import { DOUBT } from "./openings";

// C, common practice, no source: a lit vessel is no colder than a room, and its wax, which melts at 45 C and more, warms
// it by 5 C in each of the first two hours at least.
const ROOM = 20;
const EACH_HOUR = 5;
const MOST_HOURS = 2;
const NOISE = 1e-9;

/**
 * What is asked of a glass temperature that is lower than that of any vessel after so long; empty where nothing is.
 * @param minutes since the cycle began
 */
export function coldDoubt(glass: number, minutes: number, temperatureUnit: string): string {
  const coldest = ROOM + EACH_HOUR * Math.min(MOST_HOURS, Math.floor(minutes / 60));
  if (celsius(glass, "temperatureUnit", temperatureUnit) >= coldest - NOISE) return "";
  return `${DOUBT.cold}, ${plain(Number(glass.toPrecision(4)))} ${temperatureUnit}, below ${coldest} C: is its unit right?`;
}
