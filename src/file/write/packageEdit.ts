import { decoderFor } from "../xml/decoder";
import { CONTENT_TYPES, findPath, type Relationship, relationships, relationshipsPath } from "../zip/package";
import type { Package } from "../zip/unpack";
import { attributeOf, type Cut, cut, element, join, openingTag, withAttributes } from "./rawXml";

const RELATIONS = "http://schemas.openxmlformats.org/package/2006/relationships";
const TYPES = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const STRICT_TYPES = "http://purl.oclc.org/ooxml/officeDocument/relationships";

const STRICT_SPACE = "http://purl.oclc.org/ooxml/spreadsheetml/main";

/** The namespace of all that a workbook is made of. */
export const SPACE = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

/** What a part of XML begins with. */
export const XML = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n`;

/** The parts of a workbook file while they are changed. Paths carry no slash in front, as in the zip. */
export class PackageEdit implements Package {
  readonly parts: Map<string, Uint8Array>;
  /** Types of relations are spelled another way in the strict form of the format. */
  readonly isStrict: boolean;
  readonly #texts = new Map<string, string>();

  constructor(parts: ReadonlyMap<string, Uint8Array>) {
    this.parts = new Map(parts);
    this.isStrict = (this.text(relationshipsPath("")) ?? "").includes(STRICT_TYPES);
  }

  text(path: string): string | undefined {
    const known = this.#texts.get(path);
    if (known !== undefined) return known;
    const bytes = this.parts.get(path);
    if (!bytes) return undefined;
    const text = withoutPrefix((decoderFor(bytes) ?? new TextDecoder()).decode(bytes));
    this.#texts.set(path, text);
    return text;
  }

  /** A part that has to be there. */
  read(path: string): string {
    const text = this.text(path);
    if (text === undefined) throw new Error(`The file lacks its part ${path}.`);
    return text;
  }

  /** A part that says what it said keeps its bytes. */
  write(path: string, text: string): void {
    if (this.text(path) === text) return;
    const written = this.#withRelationPrefix(text.replace(/^(<\?xml[^>]*encoding=)(["'])[^"']*\2/, '$1"UTF-8"'));
    this.parts.set(path, new TextEncoder().encode(written));
    this.#texts.set(path, written);
  }

  /** What is written here names relations `r:id`, whatever prefix the file has for them. */
  #withRelationPrefix(text: string): string {
    if (!/\sr:id=/.test(text) || /\sxmlns:r=/.test(text)) return text;
    return withAttributes(text, { "xmlns:r": this.isStrict ? STRICT_TYPES : TYPES });
  }

  /** Adds a part and says in the list of contents what it is. */
  add(path: string, contentType: string, text: string): void {
    this.write(path, this.isStrict ? text.replace(SPACE, STRICT_SPACE) : text);
    const contents = cut(this.read(CONTENT_TYPES));
    contents.pieces.push({
      name: "Override",
      raw: element("Override", { PartName: `/${path}`, ContentType: contentType }),
    });
    this.write(CONTENT_TYPES, join(contents));
  }

  /** Says what all parts with this ending are, where nothing was said yet. */
  knowEnding(ending: string, contentType: string): void {
    const contents = cut(this.read(CONTENT_TYPES));
    const isKnown = contents.pieces.some(
      ({ name, raw }) => name === "Default" && attributeOf(raw, "Extension")?.toLowerCase() === ending,
    );
    if (isKnown) return;
    contents.pieces.unshift({
      name: "Default",
      raw: element("Default", { Extension: ending, ContentType: contentType }),
    });
    this.write(CONTENT_TYPES, join(contents));
  }

  /** Takes a part out with its own relations and its place in the list of contents. */
  remove(path: string): void {
    for (const one of [path, relationshipsPath(path)]) {
      this.parts.delete(one);
      this.#texts.delete(one);
    }
    const contents = cut(this.read(CONTENT_TYPES));
    const kept = contents.pieces.filter(
      ({ name, raw }) =>
        name !== "Override" || attributeOf(raw, "PartName")?.toLowerCase() !== `/${path}`.toLowerCase(),
    );
    if (kept.length < contents.pieces.length) this.write(CONTENT_TYPES, join({ ...contents, pieces: kept }));
  }

  /** What a part refers to; an empty path is the package itself. */
  relations(path: string): readonly Relationship[] {
    return relationships(this, path);
  }

  /** Lets a part refer to another part, or to an address outside; gives the id. */
  relate(path: string, type: string, target: { path: string } | { address: string }): string {
    const taken = new Set(this.relations(path).map(({ id }) => id));
    let number = taken.size + 1;
    while (taken.has(`rId${number}`)) number++;
    const id = `rId${number}`;
    const list = this.#relationList(path);
    const isOutside = "address" in target;
    const base = this.isStrict && !type.includes("/") ? STRICT_TYPES : TYPES;
    list.pieces.push({
      name: "Relationship",
      raw: element("Relationship", {
        Id: id,
        Type: type.includes("/") ? type : `${base}/${type}`,
        Target: isOutside ? target.address : relativePath(path, target.path),
        TargetMode: isOutside ? "External" : null,
      }),
    });
    this.write(this.#relationListPath(path), join(list));
    return id;
  }

  unrelate(path: string, id: string): void {
    const list = this.#relationList(path);
    const pieces = list.pieces.filter(({ name, raw }) => name !== "Relationship" || attributeOf(raw, "Id") !== id);
    this.write(this.#relationListPath(path), join({ ...list, pieces }));
  }

  /** A path that no part has: `xl/tables/table` and `.xml` around a number. */
  freePath(start: string, ending: string): string {
    const taken = new Set([...this.parts.keys()].map((path) => path.toLowerCase()));
    for (let number = 1; ; number++) {
      const path = `${start}${number}${ending}`;
      if (!taken.has(path.toLowerCase())) return path;
    }
  }

  /** All parts that can be come to from the package itself. */
  reachable(): ReadonlySet<string> {
    const found = new Set<string>();
    const open = [""];
    for (let path = open.pop(); path !== undefined; path = open.pop()) {
      for (const { target: next, external } of this.#readableRelations(path)) {
        if (external || found.has(next) || !this.parts.has(next)) continue;
        found.add(next);
        open.push(next);
      }
    }
    return found;
  }

  /** Of parts that nobody here looked into it is not known whether they can be read. */
  #readableRelations(path: string): readonly Relationship[] {
    try {
      return this.relations(path);
    } catch {
      return [];
    }
  }

  #relationList(path: string): Cut {
    const none = `${XML}<Relationships xmlns="${RELATIONS}"/>`;
    return cut(this.text(this.#relationListPath(path)) ?? none);
  }

  #relationListPath(path: string): string {
    return findPath(this, relationshipsPath(path)) ?? relationshipsPath(path);
  }
}

function relativePath(from: string, to: string): string {
  const [start, end] = [from.split("/").slice(0, -1), to.split("/")];
  let shared = 0;
  while (shared < start.length && shared < end.length - 1 && start[shared] === end[shared]) shared++;
  return [...start.slice(shared).map(() => ".."), ...end.slice(shared)].join("/");
}

/** Some programs write `<x:row>` for `<row>`. Without the prefix new elements fit between the old ones. */
function withoutPrefix(xml: string): string {
  const prefix = /^<(\w+):/.exec(openingTag(xml))?.[1];
  if (prefix === undefined || !/spreadsheetml|package/.test(attributeOf(xml, `xmlns:${prefix}`) ?? "")) return xml;
  const plain = xml.replace(new RegExp(`(</?)${prefix}:`, "g"), "$1");
  return withAttributes(plain, { xmlns: attributeOf(xml, `xmlns:${prefix}`) });
}
