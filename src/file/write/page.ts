import type { Print } from "../../sheet/sheet";
import type { PackageEdit } from "./packageEdit";
import { attributeOf, type Cut, cut, element, join, withAttributes } from "./rawXml";
import { put, rawOf } from "./sheetOrder";

const PAPER = { letter: 1, a4: 9 } as const;

/**
 * Margins in inches. A file cannot know its reader's paper: what stands within them is whole on A4 and on Letter,
 * which is 0.7 inches shorter.
 */
const MARGINS = { left: 0.6, right: 0.6, top: 0.7, bottom: 1.4, header: 0.3, footer: 1 };
const LANDSCAPE_MARGINS = { left: 0.95, right: 0.95, top: 0.7, bottom: 0.7, header: 0.3, footer: 0.3 };

/** Paper and its direction. A sheet without a set-up gets one that fits its width on a page; another keeps all else. */
export function putPage(file: PackageEdit, path: string, sheet: Cut, now: Print | null): void {
  const raw = rawOf(sheet, "pageSetup");
  if (!now) return;
  const said = { paperSize: PAPER[now.paper], orientation: now.landscape ? "landscape" : "portrait" };
  if (raw !== undefined) {
    // The settings of a printer say the paper once more, and they would win.
    const printer = attributeOf(raw, "id");
    if (printer) file.unrelate(path, printer);
    put(sheet, "pageSetup", withAttributes(raw, { ...said, "r:id": null }));
    return;
  }
  put(sheet, "pageSetup", element("pageSetup", { ...said, fitToHeight: 0 }));
  if (rawOf(sheet, "pageMargins") === undefined)
    put(sheet, "pageMargins", element("pageMargins", now.landscape ? LANDSCAPE_MARGINS : MARGINS));
  if (rawOf(sheet, "headerFooter") === undefined)
    put(
      sheet,
      "headerFooter",
      element("headerFooter", {}, element("oddFooter", {}, "&amp;L&amp;A&amp;R&amp;P / &amp;N")),
    );
  const { head, pieces, tail } = cut(rawOf(sheet, "sheetPr") ?? "<sheetPr/>");
  const others = pieces.filter(({ name }) => name !== "pageSetUpPr");
  const fits = { name: "pageSetUpPr", raw: element("pageSetUpPr", { fitToPage: true }) };
  put(sheet, "sheetPr", join({ head, pieces: [...others, fits], tail }));
}
