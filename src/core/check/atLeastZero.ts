import { plain } from "./plain";
import { wrong } from "./wrong";

/** The value when it is 0 or more, else a fault that names it. */
export function atLeastZero(name: string, value: number): number {
  if (value >= 0) return value;
  throw wrong(name, `${plain(value)} is below 0; write 0 or more`);
}
