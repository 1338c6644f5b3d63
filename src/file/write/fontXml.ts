import type { Font } from "../book";
import { element } from "./rawXml";

/**
 * A font as styles (`font`), rich texts (`rPr`) and looks laid over cells (`over`) say it, its children in the order
 * that each of them wants. What is laid over a cell also says what is not to be.
 */
export function fontXml(kind: "font" | "rPr" | "over", font: Partial<Font>): string {
  const { bold, italic, strike, color, size, underline, raised } = font;
  const family = font.name === undefined ? "" : element(kind === "rPr" ? "rFont" : "name", { val: font.name });
  const flag = (tag: string, on: boolean | undefined): string =>
    on ? `<${tag}/>` : on === false && kind === "over" ? `<${tag} val="0"/>` : "";
  const common = flag("b", bold) + flag("i", italic) + flag("strike", strike);
  const colored = color ? element("color", { rgb: `FF${color}` }) : "";
  const sized = size === undefined ? "" : element("sz", { val: size });
  const lined =
    underline && (underline !== "none" || kind === "over")
      ? element("u", underline === "single" ? {} : { val: underline })
      : "";
  const lifted = raised ? element("vertAlign", { val: raised }) : "";
  if (kind === "rPr") return element("rPr", {}, family, common, colored, sized, lined, lifted);
  return element("font", {}, common, lined, lifted, sized, colored, family);
}
