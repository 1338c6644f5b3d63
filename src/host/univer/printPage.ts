/** A sheet as one page of HTML to print, which needs nothing else: as wide as the paper, and as long as it takes. */

import { escapeXml } from "../../sheet/escapeXml";
import { MARGINS, PAPER_SIZES } from "../../sheet/paper";
import type { Print } from "../../sheet/sheet";
import { LEAST_SIZE, type PrintedRow, pointsOf, tablesHtml, USUAL_SIZE } from "./printTable";

/** What a sheet shows, without the rows and columns that are hidden. */
export interface PrintedSheet {
  readonly name: string;
  readonly paper: Print["paper"];
  /** Left out: landscape where upright the text would be small. */
  readonly landscape?: boolean;
  /** Widths of the columns, in pixels. */
  readonly widths: readonly number[];
  readonly rows: readonly PrintedRow[];
}

/** Narrow, and about as wide on every machine. */
const FONT = 'Arial, "Liberation Sans", Helvetica, sans-serif';

/** CSS pixels of a millimetre. */
const PIXELS = 96 / 25.4;

/**
 * The page: fixed columns in proportion, so that nothing is wider than the paper; rows and short blocks of them
 * unbroken; the sheet's name and "Page x of y" at the foot, where the browser draws margin boxes. All that cells
 * hold is text, and nothing on the page may run or be fetched.
 */
export function printPage({ name, paper, widths, rows, ...sheet }: PrintedSheet): string {
  const width = widths.reduce((sum, one) => sum + one, 0);
  const [short, long] = PAPER_SIZES[paper];
  const scaleOn = (side: number) => Math.min(1, ((side - 2 * MARGINS.side) * PIXELS) / width);
  const landscape = sheet.landscape ?? USUAL_SIZE * scaleOn(short) < LEAST_SIZE;
  const [across, up] = landscape ? [long, short] : [short, long];
  const scale = scaleOn(across);
  const together = (up - MARGINS.top - MARGINS.bottom) * PIXELS;
  return `<!doctype html>
<html>
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escapeXml(name)}</title>
<style>
@page {
  size: ${across}mm ${up}mm;
  margin: ${MARGINS.top}mm ${MARGINS.side}mm ${MARGINS.bottom}mm;
  @bottom-left { content: ${cssText(name)}; font: 8pt ${FONT}; }
  @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 8pt ${FONT}; }
}
html { color-scheme: light; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
body { margin: 0 1px; background: #fff; color: #000; text-rendering: geometricPrecision; font: ${pointsOf(USUAL_SIZE, scale).toFixed(2)}pt/1.25 ${FONT}; }
table { table-layout: fixed; border-collapse: collapse; }
td { padding: 1pt 2.5pt; vertical-align: middle; text-align: start; white-space: pre-wrap; overflow-wrap: anywhere; }
tr, thead, .together { break-inside: avoid; }
.heading { break-after: avoid; }
.page { break-before: page; }
.gap td { padding: 0; line-height: 0; }
</style>
</head>
<body>
${tablesHtml(rows, widths, { scale, together })}
</body>
</html>
`;
}

/** A text as CSS writes one, so that no sign of it can end it. */
const cssText = (text: string) =>
  `"${text.replace(/[^\p{L}\p{N} .-]/gu, (sign) => `\\${(sign.codePointAt(0) ?? 0).toString(16)} `)}"`;
