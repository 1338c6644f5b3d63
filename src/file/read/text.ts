import type { Font } from "../book";
import { child, type Element } from "../xml/tree";
import { type Colors, partialFont } from "./fonts";

/** A text as cells hold it, with its looks where it has several. */
export interface RichText {
  readonly text: string;
  readonly runs?: readonly { readonly text: string; readonly font: Partial<Font> }[];
}

/** Letters that XML cannot hold stand as `_x000D_`; such a text itself as `_x005F_x000D_`. */
export const unescaped = (text: string): string =>
  text.includes("_x")
    ? text.replace(/_x([0-9a-f]{4})_/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    : text;

/** A shared or inline text, or a comment's. How it is pronounced is left out. */
export function richText(element: Element, colors: Colors): RichText {
  const runs = element.children.flatMap((one) => {
    if (one.name === "t") return [{ text: unescaped(one.text), font: {} }];
    if (one.name !== "r") return [];
    return [{ text: unescaped(child(one, "t")?.text ?? ""), font: partialFont(child(one, "rPr"), colors) }];
  });
  const text = runs.map((run) => run.text).join("");
  return runs.some(({ font }) => Object.keys(font).length > 0) ? { text, runs } : { text };
}
