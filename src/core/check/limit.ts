import { rate } from "./rate";

/** The most a load may be: a fraction from 0 to 1. A scent's documents write 100 % where nothing is restricted. */
export function limit(name: string, value: number): number {
  // What binary fractions add to 100 % is no excess.
  return value >= 1 && value <= 1 + 1e-12 ? 1 : rate(name, value);
}
