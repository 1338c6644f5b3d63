import { plain } from "../check/plain";
import { checkedUnit } from "../units/checkedUnit";
import { millimetresIn } from "../units/length";
import type { BurnReading } from "./burnReading";
import { DOUBT } from "./openings";

// Common practice, no source: a flame that keeps a pool melted is 10 mm high or more, and not lower than a fifth of the
// pool. Of centimetres taken for millimetres both are a tenth of what was seen.
const LOW = { ever: 5, wide: 10, ofPool: 1 / 5 } as const; // mm, mm, a share
const SETTLED = 30; // minutes until a lit wick shows its flame
const AT_WALL = 0.95; // of the inside width: a pool this wide was measured as one
const SECOND_HOUR = 90; // minutes, from which on a look is nearer to the second hour
const TALL = 1.25; // times the pool: by then even too high a flame has a pool nearly as wide

/**
 * What is asked of a flame that no candle shows, by the pool beside it; empty where nothing is.
 * @param wall inside width of the vessel, in `lengthUnit` as the flame and the pool
 */
export function flameDoubt(
  { flame, pool, minutes }: Pick<BurnReading, "flame" | "pool" | "minutes">,
  wall: number | undefined,
  lengthUnit: string,
): string {
  if (flame === undefined) return "";
  const unit = checkedUnit("length", "lengthUnit", lengthUnit);
  const shown = (length: number): string => `${plain(Number(length.toPrecision(6)))} ${unit}`;
  if (flame === 0) return `${DOUBT.out} (${shown(0)}): out or drowned?`;
  const millimetres = flame * millimetresIn("lengthUnit", lengthUnit);
  // Without the width of the vessel no pool is judged, and no candle is finished.
  const judged = wall === undefined ? undefined : pool;
  const isBelow = judged !== undefined && millimetres < LOW.wide && flame < judged * LOW.ofPool;
  if ((millimetres < LOW.ever || isBelow) && minutes >= SETTLED) {
    return `${DOUBT.low}, ${shown(flame)}: is its unit right?`;
  }
  if (judged === undefined || wall === undefined || minutes < SECOND_HOUR) return "";
  if (flame <= judged * TALL || judged >= wall * AT_WALL) return "";
  return `${DOUBT.narrow}, ${shown(judged)} below a flame of ${shown(flame)}: are they in each other's columns?`;
}
