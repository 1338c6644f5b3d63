import { element } from "./rawXml";

/** Plain colours: the file's own are written out in its cells. */
const COLORS: Readonly<Record<string, string>> = {
  dk1: "000000",
  lt1: "FFFFFF",
  dk2: "3F3A33",
  lt2: "EFEAE0",
  accent1: "7A3E06",
  accent2: "C07F1A",
  accent3: "235E53",
  accent4: "8A78C8",
  accent5: "9C2F2F",
  accent6: "4F7A1E",
  hlink: "1F4E8C",
  folHlink: "5B3A7A",
};

const FILL = `<a:solidFill><a:schemeClr val="phClr"/></a:solidFill>`;
const EFFECT = "<a:effectStyle><a:effectLst/></a:effectStyle>";

/** The theme of a new workbook, which drawings in it begin with. */
export function theme(font: string): string {
  const colors = Object.entries(COLORS).map(([name, val]) => element(`a:${name}`, {}, element("a:srgbClr", { val })));
  const face = `${element("a:latin", { typeface: font })}<a:ea typeface=""/><a:cs typeface=""/>`;
  const lines = [6350, 12700, 19050].map((w) => element("a:ln", { w }, FILL));
  return `<a:theme xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" name="Pourwright"><a:themeElements><a:clrScheme name="Pourwright">${colors.join("")}</a:clrScheme><a:fontScheme name="Pourwright"><a:majorFont>${face}</a:majorFont><a:minorFont>${face}</a:minorFont></a:fontScheme><a:fmtScheme name="Pourwright"><a:fillStyleLst>${FILL.repeat(3)}</a:fillStyleLst><a:lnStyleLst>${lines.join("")}</a:lnStyleLst><a:effectStyleLst>${EFFECT.repeat(3)}</a:effectStyleLst><a:bgFillStyleLst>${FILL.repeat(3)}</a:bgFillStyleLst></a:fmtScheme></a:themeElements></a:theme>`;
}
