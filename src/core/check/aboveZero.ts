import { plain } from "./plain";
import { wrong } from "./wrong";

/** The value when it is above 0, else a fault that names it. */
export function aboveZero(name: string, value: number): number {
  if (value > 0) return value;
  throw wrong(name, `${plain(value)} is not above 0; write a number above 0`);
}
