import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { type RawEntry, rawZip } from "../rawZip";

export type Random = () => number;

/** Numbers from 0 to 1, the same for the same seed (mulberry32). */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

type Spoil = (file: Uint8Array, random: Random) => Uint8Array;
type Parts = Record<string, Uint8Array>;

const below = (random: Random, limit: number): number => Math.floor(random() * limit);
const pick = <T>(random: Random, list: readonly T[]): T => list[below(random, list.length)] as T;

function flip(bytes: Uint8Array, random: Random, most: number): Uint8Array {
  const changed = bytes.slice();
  for (let i = below(random, most) + 1; i > 0; i--) {
    const at = below(random, changed.length);
    changed[at] = (changed[at] ?? 0) ^ (1 << below(random, 8));
  }
  return changed;
}

/** Spoils the parts and packs them again, so that the zip itself is in order. */
const inParts =
  (spoil: (parts: Parts, random: Random) => void): Spoil =>
  (file, random) => {
    const parts = unzipSync(file);
    spoil(parts, random);
    return zipSync(parts, { level: 1 });
  };

const xmlPath = (parts: Parts, random: Random): string =>
  pick(
    random,
    Object.keys(parts).filter((path) => /\.(?:xml|rels)$/.test(path) && (parts[path]?.length ?? 0) > 0),
  );

/** Changes one part of XML as text. */
const inXml = (spoil: (xml: string, random: Random) => string): Spoil =>
  inParts((parts, random) => {
    const path = xmlPath(parts, random);
    parts[path] = strToU8(spoil(strFromU8(parts[path] as Uint8Array), random));
  });

/** One place of those that a pattern finds. */
function replaceOne(text: string, pattern: RegExp, random: Random, by: (found: string) => string): string {
  const places = [...text.matchAll(pattern)];
  if (places.length === 0) return text;
  const { 0: found, index } = pick(random, places);
  return text.slice(0, index) + by(found) + text.slice(index + found.length);
}

const VALUES = [
  "",
  "-1",
  "0",
  "99999999999",
  "1e999",
  "NaN",
  "x",
  "true",
  "A1",
  "A1:XFD1048576",
  "ZZZZ99",
  "__proto__",
  "constructor",
  "../../x",
  "&#9;",
  "🕯",
  "9".repeat(400),
];

const BOMB = `<!DOCTYPE a [<!ENTITY b "${"x".repeat(50)}">${Array.from({ length: 9 }, (_, i) => `<!ENTITY b${i} "${`&b${i ? i - 1 : ""};`.repeat(10)}">`).join("")}]>`;

const entriesOf = (file: Uint8Array): RawEntry[] =>
  Object.entries(unzipSync(file)).map(([path, content]) => ({ path, content }));

/** Ways to spoil a file, by what they do. */
export const SPOILS: Readonly<Record<string, Spoil>> = {
  cut: (file, random) => file.slice(0, below(random, file.length)),
  "cut in front": (file, random) => file.slice(below(random, file.length)),
  "flipped bits": (file, random) => flip(file, random, 20),
  "a hole": (file, random) => file.slice().fill(0, below(random, file.length), below(random, file.length)),
  "bytes put in": (file, random) => {
    const at = below(random, file.length);
    return Uint8Array.from([
      ...file.subarray(0, at),
      ...Array.from({ length: 40 }, () => below(random, 256)),
      ...file.subarray(at),
    ]);
  },
  "noise behind the mark of a zip": (_, random) =>
    Uint8Array.from({ length: 3000 }, (_, i) => [80, 75, 3, 4][i] ?? below(random, 256)),
  "flipped bits in a part": inParts((parts, random) => {
    const path = pick(random, Object.keys(parts));
    const part = parts[path] as Uint8Array;
    if (part.length > 0) parts[path] = flip(part, random, 5);
  }),
  "a part cut": inXml((xml, random) => xml.slice(0, below(random, xml.length))),
  "a part left out": inParts((parts, random) => delete parts[pick(random, Object.keys(parts))]),
  "two parts exchanged": inParts((parts, random) => {
    const [a, b] = [pick(random, Object.keys(parts)), pick(random, Object.keys(parts))];
    [parts[a], parts[b]] = [parts[b] as Uint8Array, parts[a] as Uint8Array];
  }),
  "an attribute changed": inXml((xml, random) =>
    replaceOne(xml, /="[^"]*"/g, random, () => `="${pick(random, VALUES)}"`),
  ),
  "an attribute left out": inXml((xml, random) => replaceOne(xml, / [\w:]+="[^"]*"/g, random, () => "")),
  "a text changed": inXml((xml, random) => replaceOne(xml, />[^<]+</g, random, () => `>${pick(random, VALUES)}<`)),
  "an element doubled": inXml((xml, random) =>
    replaceOne(xml, /<(\w+)[^<>]*?(?:\/>|>[^<]*<\/\1>)/g, random, (found) => found.repeat(1 + below(random, 50))),
  ),
  "an element left out": inXml((xml, random) =>
    replaceOne(xml, /<(\w+)[^<>]*?(?:\/>|>[^<]*<\/\1>)/g, random, () => ""),
  ),
  "a nest": inXml((xml, random) =>
    replaceOne(xml, /<\w+[^<>]*>/g, random, (found) => found + "<x>".repeat(5000) + "</x>".repeat(5000)),
  ),
  "an entity bomb": inXml((xml) => xml.replace(/(<\?xml.*?\?>)?/s, `$1${BOMB}`).replace(/>([^<]+)</, ">&b8;<")),
  "wrong content types": inParts((parts, random) => {
    const types = strFromU8(parts["[Content_Types].xml"] as Uint8Array);
    const all = [...types.matchAll(/ContentType="([^"]*)"/g)].map(([, type]) => type ?? "");
    parts["[Content_Types].xml"] = strToU8(
      replaceOne(types, /ContentType="[^"]*"/g, random, () => `ContentType="${pick(random, all)}"`),
    );
  }),
  "a wrong relationship": inXml((xml, random) =>
    replaceOne(xml, /Target="[^"]*"/g, random, () => `Target="${pick(random, VALUES)}"`),
  ),
  "a path that leads out": (file, random) => {
    const entries = entriesOf(file);
    const at = below(random, entries.length);
    const path = entries[at]?.path ?? "";
    const bad = pick(random, [
      `../${path}`,
      `/${path}`,
      path.replaceAll("/", "\\"),
      `C:/${path}`,
      `./${path}`,
      `${path}/../../x`,
      entries[0]?.path.toUpperCase() ?? "",
      "a\u0000b",
    ]);
    return rawZip(entries.map((entry, i) => (i === at ? { ...entry, path: bad } : entry)));
  },
  "a bomb of many megabytes": (file, random) => {
    const entries = entriesOf(file);
    const content = new Uint8Array(2_000_000).fill(32);
    const size = pick(random, [2_000_000, 10, 600_000_000, 1_900_000_000]);
    return rawZip([...entries, { path: "xl/media/big.bin", content, size }]);
  },
  "a zip in a zip": (file) => zipSync({ "a.zip": zipSync({ "b.zip": file }), "c.xlsx": file }),
  "sizes that are wrong": (file, random) => {
    const entries = entriesOf(file);
    const at = below(random, entries.length);
    return rawZip(entries.map((entry, i) => (i === at ? { ...entry, size: below(random, 100_000) } : entry)));
  },
};
