/** Fonts of a file as Univer's text styles, and back. */

import type { IStyleBase, Nullable } from "@univerjs/core";
import type { Font } from "../../../file/book";
import { keyOf, NO, ON_THE_LINE, RAISED, UNDERLINE, YES } from "./codes";

type TextStyle = Pick<IStyleBase, "ff" | "fs" | "it" | "bl" | "ul" | "st" | "cl" | "va">;

/** All that is said of a font is said, also that it is not bold: what Univer lays below it would show through. */
export function fontData(font: Partial<Font>): TextStyle {
  const data: TextStyle = {};
  if (font.name !== undefined) data.ff = font.name;
  if (font.size !== undefined) data.fs = font.size;
  if (font.bold !== undefined) data.bl = font.bold ? YES : NO;
  if (font.italic !== undefined) data.it = font.italic ? YES : NO;
  if (font.underline !== undefined) {
    data.ul = font.underline === "none" ? { s: NO } : { s: YES, t: UNDERLINE[font.underline] };
  }
  if (font.strike !== undefined) data.st = { s: font.strike ? YES : NO };
  if (font.color) data.cl = { rgb: `#${font.color}` };
  if (font.raised) data.va = RAISED[font.raised];
  return data;
}

/** What a text style says of a font. */
export function fontOf(data: TextStyle): Partial<Font> {
  const color = colorOf(data.cl?.rgb);
  const raised = data.va && data.va !== ON_THE_LINE ? keyOf(RAISED, data.va) : undefined;
  return {
    ...(data.ff && { name: data.ff }),
    ...(data.fs && { size: data.fs }),
    ...(data.bl !== undefined && data.bl !== null && { bold: data.bl === YES }),
    ...(data.it !== undefined && data.it !== null && { italic: data.it === YES }),
    ...(data.ul && { underline: underlineOf(data.ul) }),
    ...(data.st && { strike: data.st.s === YES }),
    ...(color && { color }),
    ...(raised && { raised }),
  };
}

const underlineOf = (line: { s: number; t?: number }): Font["underline"] => {
  if (line.s !== YES) return "none";
  return line.t === UNDERLINE.double ? "double" : "single";
};

/** Six hex digits in capitals of any way in which Univer writes a colour; null for none or one it does not know. */
export function colorOf(text: Nullable<string>): string | null {
  if (!text) return null;
  const hex = /^#([0-9a-f]{6})$/i.exec(text)?.[1];
  if (hex) return hex.toUpperCase();
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(text);
  if (short) return [1, 2, 3].map((i) => `${short[i]}${short[i]}`.toUpperCase()).join("");
  const parts = /^rgba?\(\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)/i.exec(text);
  if (!parts) return null;
  return [1, 2, 3].map((i) => Math.min(255, Number(parts[i])).toString(16).padStart(2, "0").toUpperCase()).join("");
}
