import { lotCode } from "../core/label/lotCode";

/** The lot code of the next run of a day: the first whose run sheet is not among the sheets yet. */
export function nextLot(date: number, sheetNames: readonly string[]): string {
  const taken = sheetNames.map((name) => name.toLowerCase());
  let run = 1;
  while (taken.some((name) => name.startsWith(sheetNameOf(lotCode(date, run)).toLowerCase()))) run++;
  return lotCode(date, run);
}

/** The name of the sheet that holds a run. */
export function sheetNameOf(lot: string): string {
  return `Pour ${lot}`;
}
