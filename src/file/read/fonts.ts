import type { Font } from "../book";
import type { Element } from "../xml/tree";
import type { Colors } from "./colors";
import { isOn } from "./values";

export type { Colors } from "./colors";

/** What an element says of a font, and nothing of what it leaves open. */
export function partialFont(element: Element | undefined, colors: Colors): Partial<Font> {
  const said: { -readonly [K in keyof Font]?: Font[K] } = {};
  for (const one of element?.children ?? []) {
    const { val } = one.attributes;
    if ((one.name === "name" || one.name === "rFont") && val) said.name = val;
    else if (one.name === "sz" && Number(val) > 0) said.size = Number(val);
    else if (one.name === "b") said.bold = isOn(val, true);
    else if (one.name === "i") said.italic = isOn(val, true);
    else if (one.name === "strike") said.strike = isOn(val, true);
    else if (one.name === "u") said.underline = underline(val);
    else if (one.name === "color") said.color = colors(one);
    else if (one.name === "vertAlign" && (val === "superscript" || val === "subscript")) said.raised = val;
  }
  return said;
}

function underline(val = "single"): Font["underline"] {
  if (val === "none") return "none";
  return val.startsWith("double") ? "double" : "single";
}
