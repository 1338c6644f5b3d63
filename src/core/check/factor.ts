import { plain } from "./plain";
import { wrong } from "./wrong";

/** A weight for one weight of water, or a density in g/mL: above 0 and at most 2. */
export function factor(name: string, value: number): number {
  if (value > 0 && value <= 2) return value;
  const meant = value > 2 && value <= 200 ? `write ${plain(value / 100)} if ${plain(value)} % was meant` : "";
  throw wrong(name, `${plain(value)} is not above 0 and at most 2; ${meant || "wax is near 0.86"}`);
}
