import { tidy } from "../tidy";

/** A number as a person would write it: at most 12 digits, so that 0.07 * 100 reads 7. */
export function plain(value: number): string {
  return String(tidy(value));
}
