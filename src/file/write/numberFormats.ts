/** Number formats that every program knows by their number, ECMA-376 Part 1, 18.8.30 (from memory). */
const BUILT_IN: Readonly<Record<string, number>> = {
  General: 0,
  "0": 1,
  "0.00": 2,
  "#,##0": 3,
  "#,##0.00": 4,
  "0%": 9,
  "0.00%": 10,
  "0.00E+00": 11,
  "# ?/?": 12,
  "# ??/??": 13,
  "d-mmm-yy": 15,
  "d-mmm": 16,
  "mmm-yy": 17,
  "h:mm AM/PM": 18,
  "h:mm:ss AM/PM": 19,
  "h:mm": 20,
  "h:mm:ss": 21,
  "mm:ss": 45,
  "[h]:mm:ss": 46,
  "##0.0E+0": 48,
  "@": 49,
};

/** Numbers below are kept for formats that programs know. */
const FIRST_OWN = 164;

/** The number of a format: a known one, one that the file has, or a new one, which is handed over. */
export function formatNumber(
  format: string,
  inFile: ReadonlyMap<string, number>,
  add: (number: number) => void,
): number {
  const known = inFile.get(format) ?? BUILT_IN[format];
  if (known !== undefined) return known;
  const number = Math.max(FIRST_OWN - 1, ...inFile.values()) + 1;
  add(number);
  return number;
}
