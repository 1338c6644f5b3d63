import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { checkedUnit } from "../units/checkedUnit";
import { TO_LOOK_AT } from "./openings";
import { poolHours } from "./poolHours";

const ABOUT = 0.5; // hours either way: how exactly "about an hour an inch" is taken here
const LONGEST = 4; // hours at a time: fire-safety guidance

/**
 * Empty text when a melt pool keeps to about an hour an inch, half an hour either way, and the burn to four hours;
 * else what is wrong.
 * Source: common practice for the pool, no source; fire-safety guidance for the hours.
 * @param pool, vessel inside diameters in `lengthUnit`, 0 or more and above 0; the pool no wider than the vessel
 * @param hours burnt, 0 or more
 */
export function poolCheck(pool: number, vessel: number, hours: number, lengthUnit: string): string {
  const unit = checkedUnit("length", "lengthUnit", lengthUnit);
  const inch = poolHours(1, lengthUnit);
  const [wide, wall, burnt] = [atLeastZero("pool", pool), aboveZero("vessel", vessel), atLeastZero("hours", hours)];
  if (wide > wall * (1 + 1e-12)) {
    throw wrong("pool", `${plain(wide)} is wider than the vessel, ${plain(wall)}; measure both inside, in one unit`);
  }
  const least = Math.min(wall, (burnt - ABOUT) / inch);
  const most = (burnt + ABOUT) / inch;
  const rounded = (value: number): string => plain(Number(value.toPrecision(4)));
  const width = (value: number): string => `${rounded(value)} ${unit}`;
  const says = (what: string, bound: string, limit: number): string =>
    `${TO_LOOK_AT.pool}${what}: ${width(wide)} after ${rounded(burnt)} h, ${bound} ${width(limit)} at about an hour an inch`;
  return [
    ...(wide < least * (1 - 1e-12) ? [says("behind", "at least", least)] : []),
    ...(wide > most * (1 + 1e-12) ? [says("ahead", "at most", most)] : []),
    ...(burnt > LONGEST
      ? [`${TO_LOOK_AT.long}${rounded(burnt)} h, at most ${LONGEST} h at a time by fire-safety guidance`]
      : []),
  ].join("; ");
}
