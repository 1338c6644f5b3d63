import { pagesOfRows } from "../../sheet/pageBreaks";
import { MARGINS as BENCH } from "../../sheet/paper";
import type { Print } from "../../sheet/sheet";
import { EXCEL } from "../../sheet/textLines";
import { COLUMNS } from "../addresses";
import type { BookSheet } from "../book";
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

/**
 * Paper and its direction. A sheet without a set-up gets one, that fits its width on a page and, where blocks are to
 * stay whole, says where pages end; another keeps all else.
 */
export function putPage(file: PackageEdit, path: string, sheet: Cut, now: BookSheet): void {
  const raw = rawOf(sheet, "pageSetup");
  const { print } = now;
  if (!print) return;
  const said = { paperSize: PAPER[print.paper], orientation: print.landscape ? "landscape" : "portrait" };
  if (raw !== undefined) {
    // The settings of a printer say the paper once more, and they would win.
    const printer = attributeOf(raw, "id");
    if (printer) file.unrelate(path, printer);
    put(sheet, "pageSetup", withAttributes(raw, { ...said, "r:id": null }));
    return;
  }
  put(sheet, "pageSetup", element("pageSetup", { ...said, fitToHeight: 0 }));
  fitToPage(sheet);
  putBreaks(sheet, now, print);
  if (rawOf(sheet, "pageMargins") === undefined) put(sheet, "pageMargins", element("pageMargins", marginsOf(print)));
  if (rawOf(sheet, "headerFooter") === undefined)
    put(
      sheet,
      "headerFooter",
      element("headerFooter", {}, element("oddFooter", {}, "&amp;L&amp;A&amp;R&amp;P / &amp;N")),
    );
}

function fitToPage(sheet: Cut): void {
  const { head, pieces, tail } = cut(rawOf(sheet, "sheetPr") ?? "<sheetPr/>");
  const others = pieces.filter(({ name }) => name !== "pageSetUpPr");
  const fits = { name: "pageSetUpPr", raw: element("pageSetUpPr", { fitToPage: true }) };
  put(sheet, "sheetPr", join({ head, pieces: [...others, fits], tail }));
}

function marginsOf({ wholeBlocks, landscape }: Print): typeof MARGINS {
  if (!wholeBlocks) return landscape ? LANDSCAPE_MARGINS : MARGINS;
  const [side, top, bottom] = [BENCH.side, BENCH.top, BENCH.bottom].map(inches) as [number, number, number];
  return { left: side, right: side, top, bottom, header: top / 2, footer: bottom / 2 };
}

const inches = (millimetres: number): number => Math.round((millimetres / 25.4) * 1e3) / 1e3;

/**
 * Breaks before the rows that begin a page, among them the blocks that would not be whole on theirs. The width is fitted
 * all the same: no program knows how wide another one prints its columns, and breaks are left out only in the direction
 * that is fitted (LibreOffice, tried; Excel, from memory). What is fitted is never larger than reckoned with here, so
 * that blocks stay whole.
 */
function putBreaks(sheet: Cut, now: BookSheet, print: Print): void {
  const { wholeBlocks, newPages = [] } = print;
  const rows = wholeBlocks ? pagesOfRows({ print, width: widthOf(now), ...rowsOf(now) }).breaks : newPages;
  // A break stands below the row that it names, counted from 1.
  const each = rows.map((row) => element("brk", { id: row, max: COLUMNS - 1, man: true }));
  const count = each.length;
  put(sheet, "rowBreaks", count === 0 ? "" : element("rowBreaks", { count, manualBreakCount: count }, ...each));
}

/** Points of a row for which neither it nor its sheet says any. */
const ROW = 15;

function rowsOf({ rows, defaultHeight }: BookSheet) {
  const known = new Map(rows.map(({ row, height, hidden }) => [row, hidden ? 0 : height]));
  return {
    filled: rows.filter(({ cells }) => cells.length > 0).map(({ row }) => row),
    heightOf: (row: number) => known.get(row) ?? defaultHeight ?? ROW,
  };
}

/** Pixels of the columns that show, up to the last one that holds anything. */
function widthOf({ columns, rows, defaultWidth }: BookSheet): number {
  const last = rows.reduce((most, { cells }) => Math.max(most, cells.at(-1)?.column ?? 0), 0);
  let width = 0;
  for (let column = 0; column <= last; column++) {
    const own = columns.find((one) => one.first <= column && column <= one.last);
    if (!own?.hidden) width += Math.trunc((own?.width ?? defaultWidth ?? EXCEL.width + 5 / 7) * 7);
  }
  return width;
}
