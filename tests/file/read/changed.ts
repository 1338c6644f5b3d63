import { strFromU8, strToU8, zipSync } from "fflate";
import { richParts } from "../richWorkbook";

type Parts = Record<string, Uint8Array>;

/** The rich workbook with a change to some of its parts, each given as text; null takes a part away. */
export function changedRich(
  changes: Readonly<Record<string, ((text: string) => string) | string | Uint8Array | null>>,
  options?: { from1904?: boolean },
): Uint8Array {
  const parts: Parts = richParts(options);
  for (const [path, change] of Object.entries(changes)) {
    const before = parts[path];
    if (change === null) delete parts[path];
    else if (typeof change === "string") parts[path] = strToU8(change);
    else if (change instanceof Uint8Array) parts[path] = change;
    else {
      const after = change(strFromU8(before ?? new Uint8Array()));
      if (before && after === strFromU8(before)) throw new Error(`${path} is unchanged`);
      parts[path] = strToU8(after);
    }
  }
  return zipSync(parts);
}

/** Every part of XML of the workbook written in another way. */
export function rewrittenRich(rewrite: (xml: string) => Uint8Array): Uint8Array {
  return zipSync(
    Object.fromEntries(
      Object.entries(richParts()).map(([path, bytes]) => [
        path,
        /\.(?:xml|rels)$/.test(path) ? rewrite(strFromU8(bytes)) : bytes,
      ]),
    ),
  );
}
