/** Number formats of run sheets. */

export const DAY = "yyyy-mm-dd";
export const MONEY = "#,##0.00";

/** A number format with the decimals of the scale division: 0.1 shows one. */
export function decimalsFormat(division: number): string {
  const [, digits = ""] = /\.(\d+)$/.exec(String(division)) ?? [];
  return digits === "" ? "0" : `0.${"0".repeat(Math.min(digits.length, 6))}`;
}

/** One decimal more, for what the scale does not round. */
export const finer = (format: string): string => (format === "0" ? "0.0" : `${format}0`);

/** A format that also shows what a finer division would weigh, should it be changed on a live sheet. */
export const openEnded = (format: string): string => (format === "0" ? "General" : `${format}####`);

/** A share as it stands: what is typed for a whole number of parts may not be one. */
export function shareFormat(share: number, isPart: boolean): string {
  if (!isPart) return "0.0##%";
  return Number.isInteger(share) ? "General" : "0.0##";
}
