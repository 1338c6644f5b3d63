import Papa from "papaparse";
import { sheetName } from "../../sheet/sheetName";
import { COLUMNS, ROWS } from "../addresses";
import type { Book, BookCell, BookRow, CellStyle, Remark } from "../book";
import { emptyBook, emptySheet, PLAIN_STYLE } from "../emptyBook";
import { FileRefused, tooLarge } from "../refused";
import { decodeText } from "./decodeText";
import { findDelimiter } from "./delimiter";
import { type FigureReader, figureReader } from "./figures";
import { figureText, isSpaced, looksLikeFigure } from "./figureText";

const ENDINGS = /\.(?:csv|tsv|tab|txt)$/i;
/** Days whose parts every country has in another order. */
const DOUBTFUL_DAY = /^\d{1,2}[./-]\d{1,2}[./-](?:\d{2}|\d{4})$/;
/** A text that would become something else if it were typed. */
const READS_OTHERWISE = /^\s*(?:[=+\-@'.,]|\d|(?:true|false)\s*$|#)/i;

/** A list in plain text as a workbook of one sheet, which is called after the file. Texts stay texts, `=1` too. */
export function readCsv(bytes: Uint8Array, name: string): { book: Book; remarks: Remark[] } {
  const text = decodeText(bytes);
  checkKind(text, name);
  const { delimiter, list } = findDelimiter(text);
  const { data, errors } = Papa.parse<string[]>(list, { delimiter });
  if (data.length > ROWS || data.some((row) => row.length > COLUMNS)) {
    throw tooLarge(`A sheet has ${ROWS.toLocaleString("en-US")} rows and ${COLUMNS.toLocaleString("en-US")} columns.`);
  }
  const sheet = sheetName(name.replace(/^.*[\\/]/, "").replace(ENDINGS, ""), []);
  const styles: CellStyle[] = [PLAIN_STYLE];
  const figures = figureReader(data, delimiter);
  const rows = data.flatMap((row, at) => bookRow(at, row, figures, styles));
  const remarks = remarksOn(sheet, rows, figures);
  const open = errors.find(({ type }) => type === "Quotes");
  if (open) {
    const where = `a quotation mark out of place in row ${(open.row ?? 0) + 1}`;
    remarks.push({ sheet, what: where, consequence: "Cells may have run together there: look at that row and below." });
  }
  return { book: bookOf(sheet, rows, styles), remarks };
}

function checkKind(text: string, name: string): void {
  const start = text.slice(0, 1000).trimStart();
  if (start === "") throw new FileRefused("This file is empty. Choose the workbook that has your figures.");
  if (/^<(?:!doctype html|html|head|body|table|meta)|<html[\s>]/i.test(start)) {
    throw new FileRefused(
      "This is a web page, whatever it is called. Open it in a spreadsheet program, save it there as an .xlsx workbook, and open that here.",
    );
  }
  if (start.startsWith("<")) {
    throw new FileRefused(
      "This file is XML, not an .xlsx workbook. Open it in the program that made it, save it there as an .xlsx workbook, and open that here.",
    );
  }
  if (/^(?:\{\s*"|\[\s*[{["])/.test(start)) {
    throw new FileRefused("This file is data for a program (JSON). Export it as .csv or .xlsx, and open that here.");
  }
  if (!ENDINGS.test(name)) {
    throw new FileRefused(
      "This file is plain text, no workbook. If it is a list with commas, semicolons or tabs between its cells, give it a name that ends in .csv and open it again.",
    );
  }
}

function bookRow(row: number, texts: readonly string[], figures: FigureReader, styles: CellStyle[]): BookRow[] {
  const cells = texts.flatMap((text, column): BookCell[] => {
    if (text === "") return [];
    const figure = figures.read(text, column);
    if (figure) return [{ column, value: figure.number, style: styleOf(figure.format, styles) }];
    return [{ column, value: text, style: 0, ...(READS_OTHERWISE.test(text) && { quoted: true as const }) }];
  });
  return cells.length > 0 ? [{ row, cells }] : [];
}

function styleOf(format: string, styles: CellStyle[]): number {
  const known = styles.findIndex((style) => style.format === format);
  return known >= 0 ? known : styles.push({ ...PLAIN_STYLE, format }) - 1;
}

/** Says which texts may have been meant as numbers or days. */
function remarksOn(sheet: string, rows: readonly BookRow[], figures: FigureReader): Remark[] {
  const texts = rows.flatMap(({ cells }) =>
    cells.flatMap(({ value }) => (typeof value === "string" ? [value.trim()] : [])),
  );
  const remark = (kind: string, some: readonly string[], consequence: string): Remark[] =>
    some.length === 0 ? [] : [{ sheet, what: `${kind} such as ${examplesOf(some)}`, consequence }];
  const left = texts.filter((text) => looksLikeFigure(text) && !figures.isDoubtful(text));
  return [
    ...remark("figures", texts.filter(figures.isDoubtful), "They can be read in two ways and were left as text."),
    ...remark(
      "figures",
      left.filter((text) => isSpaced(figureText(text))),
      "They were left as text: select those that are numbers and choose Text to Number in the toolbar.",
    ),
    ...remark(
      "figures",
      left.filter((text) => !isSpaced(figureText(text))),
      "They were left as text: type them as plain numbers, such as -1250.5, to compute with them.",
    ),
    ...remark(
      "days",
      texts.filter((text) => DOUBTFUL_DAY.test(text)),
      "They were left as text: write them as 2026-11-26 to compute with them.",
    ),
  ];
}

/** The first one of each way in which these texts are written, up to three. */
function examplesOf(texts: readonly string[]): string {
  const ways = new Map<string, string>();
  for (const text of texts) {
    const way = text.replace(/\d+/g, "0");
    if (!ways.has(way)) ways.set(way, text);
  }
  return new Intl.ListFormat("en-GB").format([...ways.values()].slice(0, 3));
}

const bookOf = (name: string, rows: BookRow[], styles: CellStyle[]): Book => ({
  ...emptyBook(),
  sheets: [{ ...emptySheet("1", name), rows }],
  styles,
});
