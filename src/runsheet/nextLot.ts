import { lotCode } from "../core/label/lotCode";

/** The lot code of the next run of a day: the first that has no run sheet yet and was not logged. */
export function nextLot(date: number, sheetNames: readonly string[], logged: readonly string[]): string {
  const taken = sheetNames.map((name) => name.toLowerCase());
  let run = 1;
  const isTaken = (lot: string) =>
    logged.includes(lot) ||
    NAMES.some((before) => taken.some((name) => name.startsWith(`${before} ${lot}`.toLowerCase())));
  while (isTaken(lotCode(date, run))) run++;
  return lotCode(date, run);
}

/** What stands before the lot in a sheet's name; the second one on sheets that were written before. */
const NAMES = ["Run", "Pour"] as const;

/** The name of the sheet that holds a run. */
export function sheetNameOf(lot: string): string {
  return `${NAMES[0]} ${lot}`;
}

/** Whether a sheet's name is one that a run sheet was given, a number behind it included. */
export function isRunSheet(name: string): boolean {
  return /^(Run|Pour) \d{4}-\d{3}-\d{2}( \(\d+\))?$/.test(name);
}
