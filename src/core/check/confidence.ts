import { plain } from "./plain";
import { rate } from "./rate";
import { wrong } from "./wrong";

/** A confidence of 50 % or more and below 100 %. The chance of being wrong typed in its place (5 % for 95 %) is the usual slip. */
export function confidence(name: string, value: number): number {
  const share = rate(name, value);
  if (share >= 0.5) return share;
  const meant = plain(100 - share * 100);
  throw wrong(name, `${plain(share * 100)} % is below 50 %; write ${meant}% if you may be wrong that often`);
}
