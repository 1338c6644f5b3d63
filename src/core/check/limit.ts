import { plain } from "./plain";
import { rate } from "./rate";
import { wrong } from "./wrong";

/** The most a load may be: a fraction from 0 to 1. A scent's documents write 100 % where nothing is restricted. */
export function limit(name: string, value: number): number {
  // What binary fractions add to 100 % is no excess.
  if (value >= 1 && value <= 1 + 1e-12) return 1;
  if (value > 1 && value < 2) {
    const shown = plain(value);
    const written = `write ${shown}% or ${plain(value / 100)} if ${shown} % was meant, else a share up to 100 %`;
    throw wrong(name, `${shown} means ${plain(value * 100)} %; ${written}`);
  }
  if (value === 100) throw wrong(name, "100 means 10000 %; write 100% or 1");
  return rate(name, value);
}
