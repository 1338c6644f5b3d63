import { type Zippable, zipSync } from "fflate";

/** The bytes of a workbook file of these parts. The zip carries no time: the same parts always give the same bytes. */
export function pack(parts: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const files: Zippable = Object.fromEntries(parts);
  // Local time, as the zip format wants it: the same bytes wherever this runs.
  return zipSync(files, { mtime: new Date(1980, 0, 1), level: 6 });
}
