import { lotCode } from "../../core/label/lotCode";

/** A lot code wherever it stands in a text: the name of a sheet, its title, a cell of the log. */
const LOT = /\b(\d{4}-\d{3})-(\d{2})\b/g;

/**
 * The lot code of the next run of a day: the one after the highest that was ever given, so that none is given twice.
 * @param taken texts that may hold lots: names and titles of sheets, the log, and what the settings keep
 */
export function nextLot(date: number, taken: readonly string[]): string {
  const day = lotCode(date, 1).slice(0, -3);
  const runs = taken.flatMap((text) =>
    [...text.matchAll(LOT)].flatMap(([, of, run]) => (of === day ? [Number(run)] : [])),
  );
  return lotCode(date, Math.max(0, ...runs) + 1);
}

/** The lots to keep once this one was given: of each day the last, for the sheets and the log may be gone one day. */
export function withLot(lots: readonly string[], lot: string): string[] {
  const day = lot.slice(0, -3);
  return [...lots.filter((one) => !one.startsWith(`${day}-`)), lot];
}
