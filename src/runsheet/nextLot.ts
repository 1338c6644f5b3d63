import { lotCode } from "../core/label/lotCode";

/** The lot code of the next run of a day: the first that has no run sheet yet and was not logged. */
export function nextLot(date: number, sheetNames: readonly string[], logged: readonly string[]): string {
  const taken = sheetNames.map((name) => name.toLowerCase());
  let run = 1;
  const isTaken = (lot: string) =>
    logged.includes(lot) || taken.some((name) => name.startsWith(sheetNameOf(lot).toLowerCase()));
  while (isTaken(lotCode(date, run))) run++;
  return lotCode(date, run);
}

/** The name of the sheet that holds a run. */
export function sheetNameOf(lot: string): string {
  return `Pour ${lot}`;
}
