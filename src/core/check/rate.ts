import { plain } from "./plain";
import { wrong } from "./wrong";

/** A fraction of 0 or more and below 1. A percentage typed without its sign (6 for 6 %) is the usual slip. */
export function rate(name: string, value: number): number {
  if (value >= 0 && value < 1) return value;
  if (value < 0) throw wrong(name, `${plain(value)} is below 0; write 0 or more`);
  const shown = plain(value);
  if (value >= 100) throw wrong(name, `${shown} means ${plain(value * 100)} %; write a share below 100 %`);
  // 1.5 may be 1.5 % without its sign, or really 150 %.
  const ifMeant = value < 2 ? ` if ${shown} % was meant, else a share below 100 %` : "";
  throw wrong(name, `${shown} means ${plain(value * 100)} %; write ${shown}% or ${plain(value / 100)}${ifMeant}`);
}
