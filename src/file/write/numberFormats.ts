import { builtInFormat } from "../read/numberFormats";

/** Formats of money without a place for their sign: programs show these in the currency of the reader. */
const LOCAL = [5, 6, 7, 8, 42, 44];
const LAST_BUILT_IN = 49;

/** The numbers by which every program knows a format. */
const BUILT_IN: ReadonlyMap<string, number> = new Map(
  Array.from({ length: LAST_BUILT_IN + 1 }, (_, number) => number)
    .filter((number) => !LOCAL.includes(number))
    // Of several numbers for one format the first counts.
    .reverse()
    .map((number) => [builtInFormat(number), number]),
);

/** Numbers below are kept for formats that programs know. */
const FIRST_OWN = 164;

/** The number of a format: a known one, one that the file has, or a new one, which is handed over. */
export function formatNumber(
  format: string,
  inFile: ReadonlyMap<string, number>,
  add: (number: number) => void,
): number {
  const known = inFile.get(format) ?? BUILT_IN.get(format);
  if (known !== undefined) return known;
  const number = Math.max(FIRST_OWN - 1, ...inFile.values()) + 1;
  add(number);
  return number;
}
