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

/**
 * A weight with its unit in a column that holds so many characters: larger ones show a decimal less, and one less again.
 * The cell keeps the whole number.
 */
export function inRoom(format: string, unit: string, room = 8): string {
  const withUnit = (decimals: number) => `${decimals > 0 ? `0.${"0".repeat(decimals)}` : "0"}" ${unit}"`;
  const all = /\.(0+)/.exec(format)?.[1]?.length ?? 0;
  const places = (decimals: number) => Math.max(1, room - unit.length - 1 - (decimals > 0 ? decimals + 1 : 0));
  // Excel takes two conditions in a format.
  const fewer = [all - 2, all - 1].filter((decimals) => decimals >= 0);
  const sections = fewer.map((decimals) => `[>=${10 ** places(decimals + 1)}]${withUnit(decimals)}`);
  return [...sections, `${format}" ${unit}"`].join(";");
}

/** A share as it stands: what is typed for a whole number of parts may not be one. */
export function shareFormat(share: number, isPart: boolean): string {
  if (!isPart) return "0.0##%";
  return Number.isInteger(share) ? "General" : "0.0##";
}
