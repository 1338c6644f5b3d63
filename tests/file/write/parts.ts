import { attributesOf } from "../../samples/zipped";

/** The parts of a workbook file as text, by their paths. */
export type Parts = Readonly<Record<string, string>>;

/** Whether a part's root is such an element. */
export const isA = (xml: string, root: string): boolean =>
  new RegExp(`^\\s*(?:<\\?[^>]*>\\s*)?<(?:\\w+:)?${root}(?=[\\s/>])`).test(xml);

/** The part whose root is such an element; empty where there is none. */
export const partWith = (parts: Parts, root: string): string =>
  Object.values(parts).find((xml) => isA(xml, root)) ?? "";

/** A block of cells, rows and columns from 1. */
export interface Area {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The attributes of each element of a name. */
export const tags = (xml: string, name: string): Record<string, string>[] =>
  [...xml.matchAll(new RegExp(`<(?:\\w+:)?${name}(?=[\\s/>])[^>]*>`, "g"))].map(([tag]) => attributesOf(tag));

/** What stands inside the first element of a name. */
export const inside = (xml: string, name: string): string =>
  new RegExp(`<(?:\\w+:)?${name}(?=[\\s>])[^>]*(?<!/)>(.*?)</(?:\\w+:)?${name}>`, "s").exec(xml)?.[1] ?? "";

export function doubled<T>(list: readonly T[]): T[] {
  const seen = new Set<T>();
  return list.filter((one) => seen.has(one) || !seen.add(one));
}

export const columnOf = (address: string): number =>
  [...address.replace(/[^A-Z]/g, "")].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);

export const rowOf = (address: string): number => Number(address.replace(/\D/g, ""));

export function areaOf(ref: string): Area {
  const [first = "", last = first] = ref.split(":");
  return { left: columnOf(first), top: rowOf(first), right: columnOf(last), bottom: rowOf(last) };
}

const overlap = (one: Area, other: Area): boolean =>
  one.left <= other.right && other.left <= one.right && one.top <= other.bottom && other.top <= one.bottom;

/** The blocks that share a cell with one before them. */
export const overlapping = (refs: readonly string[]): string[] => {
  const areas = refs.map(areaOf);
  return refs.filter((_, i) => areas.slice(0, i).some((before) => overlap(before, areas[i] as Area)));
};

/** Where the relations of a part lead inside the package, by kind: the last word of their type. */
export function relationsOf(parts: Parts, path: string): { kind: string; target: string }[] {
  const [, folder = "", name = ""] = /^(.*?)([^/]*)$/.exec(path) ?? [];
  return tags(parts[`${folder}_rels/${name}.rels`] ?? "", "Relationship")
    .filter(({ TargetMode }) => TargetMode !== "External")
    .map(({ Type = "", Target = "" }) => ({
      kind: Type.slice(Type.lastIndexOf("/") + 1),
      target: decodeURI(new URL(Target, `zip:/${folder}`).pathname.slice(1)),
    }));
}

/** The texts of a shared text or of a cell that holds its own, without how they are read aloud. */
export const textOf = (xml: string): string =>
  [...xml.replace(/<rPh\b.*?<\/rPh>/gs, "").matchAll(/<t\b[^>]*>(.*?)<\/t>/gs)]
    .map(([, text = ""]) => plain(text))
    .join("");

const ENTITIES: Record<string, string> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

export function plain(text: string): string {
  return text
    .replace(/&#(x?)([\da-f]+);/gi, (_, hex, code) => String.fromCodePoint(Number.parseInt(code, hex ? 16 : 10)))
    .replace(/&(amp|lt|gt|quot|apos);/g, (_, name: string) => ENTITIES[name] ?? "")
    .replace(/_x([\da-f]{4})_/gi, (_, code) => String.fromCharCode(Number.parseInt(code, 16)));
}
