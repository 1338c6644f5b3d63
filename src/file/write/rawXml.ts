import { unescaped } from "../read/text";

/**
 * XML in pieces of raw text: what is not touched keeps every letter of it. Only for text that was read before and so
 * is well-formed; a cut that fails throws.
 */

/** An element with all that is in it, or what stands between two of them. */
export interface Piece {
  /** Without its prefix; empty for what is no element. */
  readonly name: string;
  readonly raw: string;
}

/** An element cut at its children. Put together again it is the very text. */
export interface Cut {
  /** Up to the end of the opening tag, what stands before the element included. */
  readonly head: string;
  readonly pieces: Piece[];
  /** The closing tag, and what stands behind it. */
  readonly tail: string;
}

export const join = ({ head, pieces, tail }: Cut): string => head + pieces.map(({ raw }) => raw).join("") + tail;

/** Cuts at the children of the outermost element. One that closes itself is opened, so that something can be put in. */
export function cut(xml: string): Cut {
  let at = 0;
  for (;;) {
    const from = nextTag(xml, at);
    const end = tagEnd(xml, from);
    at = end;
    if (isMarkup(xml, from)) continue;
    if (xml[end - 2] === "/") {
      const tag = xml.slice(from, end - 2).trimEnd();
      const name = /^<([^\s/>]+)/.exec(tag)?.[1] ?? "";
      return { head: `${xml.slice(0, from)}${tag}>`, pieces: [], tail: `</${name}>${xml.slice(end)}` };
    }
    const { pieces, end: close } = children(xml, end);
    return { head: xml.slice(0, end), pieces, tail: xml.slice(close) };
  }
}

/** The pieces from here to the closing tag of the element that surrounds them, and where that tag begins. */
function children(xml: string, start: number): { pieces: Piece[]; end: number } {
  const pieces: Piece[] = [];
  let done = start;
  let depth = 0;
  let begin = start;
  for (let at = start; ; ) {
    const from = nextTag(xml, at);
    at = tagEnd(xml, from);
    if (isMarkup(xml, from)) continue;
    const closes = xml[from + 1] === "/";
    if (closes && depth === 0) {
      if (from > done) pieces.push({ name: "", raw: xml.slice(done, from) });
      return { pieces, end: from };
    }
    if (!closes && depth === 0) begin = from;
    if (closes) depth--;
    else if (xml[at - 2] !== "/") depth++;
    if (depth > 0) continue;
    if (begin > done) pieces.push({ name: "", raw: xml.slice(done, begin) });
    pieces.push({ name: localName(xml, begin), raw: xml.slice(begin, at) });
    done = at;
  }
}

function nextTag(xml: string, at: number): number {
  const from = xml.indexOf("<", at);
  if (from < 0) throw new Error("The XML ends too early.");
  return from;
}

/** Whether this is a comment, a section of characters, an instruction or a declaration instead of a tag. */
const isMarkup = (xml: string, from: number): boolean => xml[from + 1] === "!" || xml[from + 1] === "?";

function tagEnd(xml: string, from: number): number {
  for (const [start, stop] of [
    ["<!--", "-->"],
    ["<![CDATA[", "]]>"],
    ["<?", "?>"],
  ] as const) {
    if (xml.startsWith(start, from)) return after(xml, stop, from + start.length);
  }
  // A sign of the end may stand within quotes.
  for (let at = from + 1; at < xml.length; at++) {
    const sign = xml[at];
    if (sign === ">") return at + 1;
    if (sign === '"' || sign === "'") at = after(xml, sign, at + 1) - 1;
  }
  throw new Error("A tag of the XML does not end.");
}

function after(xml: string, text: string, at: number): number {
  const found = xml.indexOf(text, at);
  if (found < 0) throw new Error(`The XML lacks a ${text}`);
  return found + text.length;
}

function localName(xml: string, from: number): string {
  let end = from + 1;
  let start = end;
  for (; !/[\s/>]/.test(xml[end] as string); end++) if (xml[end] === ":") start = end + 1;
  return xml.slice(start, end);
}

/** The opening tag that a piece begins with; the last one of a head. */
export function openingTag(raw: string): string {
  for (let at = 0; ; ) {
    const from = nextTag(raw, at);
    at = tagEnd(raw, from);
    if (!isMarkup(raw, from)) return raw.slice(from, at);
  }
}

const ATTRIBUTE = /\s+([^\s=<>/"']+)\s*=\s*("[^"]*"|'[^']*')/g;

/** The attributes of the opening tag of a piece, by their names as they stand there. */
export const attributesOf = (raw: string): ReadonlyMap<string, string> =>
  new Map(
    [...openingTag(raw).matchAll(ATTRIBUTE)].map(([, name = "", value = ""]) => [
      name,
      unescapeXml(value.slice(1, -1)),
    ]),
  );

/** An attribute by its name without a prefix, as the prefix of relations is the file's choice. */
export function attributeOf(raw: string, name: string): string | undefined {
  const attributes = attributesOf(raw);
  const exact = attributes.get(name);
  if (exact !== undefined) return exact;
  return [...attributes].find(([one]) => one.slice(one.indexOf(":") + 1) === name && !one.startsWith("xmlns"))?.[1];
}

export type Attributes = Readonly<Record<string, string | number | boolean | null | undefined>>;

/** A piece with other attributes in its opening tag: null takes one away, undefined leaves it, the rest stay in place. */
export function withAttributes(raw: string, changes: Attributes): string {
  const tag = openingTag(raw);
  const start = raw.indexOf(tag);
  let changed = tag;
  for (const [name, value] of Object.entries(changes)) {
    if (value === undefined) continue;
    const written = value === null ? "" : attribute(name, value);
    // One attribute after the other: a value may read like an attribute itself.
    let isThere = false;
    changed = changed.replace(ATTRIBUTE, (found, one: string) => {
      if (one !== name) return found;
      isThere = true;
      return written;
    });
    if (!isThere) changed = changed.replace(/\s*(\/?>)$/, (_, end: string) => written + end);
  }
  return raw.slice(0, start) + changed + raw.slice(start + tag.length);
}

function attribute(name: string, value: string | number | boolean): string {
  const text = typeof value === "boolean" ? (value ? "1" : "0") : String(value);
  return ` ${name}="${escapeAttribute(text)}"`;
}

/** An element; attributes that are null or undefined are left out, and what is empty closes itself. */
export function element(name: string, attributes: Attributes, ...inside: readonly string[]): string {
  const written = Object.entries(attributes)
    .map(([key, value]) => (value === null || value === undefined ? "" : attribute(key, value)))
    .join("");
  const content = inside.join("");
  return content === "" ? `<${name}${written}/>` : `<${name}${written}>${content}</${name}>`;
}

// biome-ignore format: the comment is for this one line.
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that cannot stand in XML.
const UNWRITABLE = /[\u0000-\u0008\u000B-\u001F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

/** A text between tags. Signs that XML cannot hold are written as the file format does, `_x0007_`. */
export const escapeText = (text: string): string =>
  text
    .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_")
    .replace(UNWRITABLE, numbered)
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;");

const numbered = (sign: string): string => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`;

/** In an attribute lines and tabs would be read as spaces: they stand there as programs write them in headings. */
const escapeAttribute = (text: string): string =>
  escapeText(text).replaceAll('"', "&quot;").replaceAll("\t", "_x0009_").replaceAll("\n", "_x000a_");

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

const unescapeXml = (text: string): string =>
  text.replace(/&(?:#x([0-9a-fA-F]+)|#(\d+)|(\w+));/g, (found, hex?: string, decimal?: string, name?: string) => {
    if (name !== undefined) return ENTITIES[name] ?? found;
    return String.fromCodePoint(hex === undefined ? Number(decimal) : Number.parseInt(hex, 16));
  });

/** The text that stands between tags, the format's own signs for what XML cannot hold undone. */
export const unescapeText = (raw: string): string => unescaped(unescapeXml(raw));
