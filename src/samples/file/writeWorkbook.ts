import ExcelJS, { type CellValue as ExcelValue, type Worksheet } from "exceljs";
import { callsOurs } from "../../file/formula/callsOurs";
import { toFileFormula } from "../../file/formula/toFile";
import type { Cell, CellValue, Content, Sheet, SheetValues } from "../../sheet/sheet";
import { excelStyle } from "./excelStyle";
import { finishFile } from "./finishFile";
import { rowHeights } from "./rowHeights";
import { spillSize } from "./spillSize";

/** A fixed day: the file tells what is in it, not when it was made. */
const MADE = new Date(Date.UTC(2026, 0, 1));
const PAPER = { letter: 1, a4: 9 };

/**
 * Margins in inches. A file cannot know its reader's paper: what stands within them is whole on A4 and on Letter,
 * which is 0.7 inches shorter.
 */
const MARGINS = { left: 0.6, right: 0.6, top: 0.7, bottom: 1.4, header: 0.3, footer: 1 };
const LANDSCAPE_MARGINS = { left: 0.95, right: 0.95, top: 0.7, bottom: 0.7, header: 0.3, footer: 0.3 };

/**
 * A workbook file of described sheets. Formulas carry their computed values: without our functions Excel shows these
 * until it has to work a formula out again, and programs that work all out on opening show #NAME?. The same input
 * gives the same bytes.
 * @param values one for each sheet
 */
export async function writeWorkbook(
  title: string,
  sheets: readonly Sheet[],
  values: readonly SheetValues[],
): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  Object.assign(workbook, {
    title,
    creator: "Pourwright",
    lastModifiedBy: "Pourwright",
    created: MADE,
    modified: MADE,
  });
  for (const [i, sheet] of sheets.entries()) addSheet(workbook, sheet, values[i] ?? []);
  return finishFile(new Uint8Array(await workbook.xlsx.writeBuffer()), sheets, values);
}

function addSheet(workbook: ExcelJS.Workbook, sheet: Sheet, values: SheetValues): void {
  const { print, frozenRows = 0 } = sheet;
  const page = workbook.addWorksheet(sheet.name, {
    views: [
      frozenRows > 0
        ? { state: "frozen", ySplit: frozenRows, showGridLines: false }
        : { state: "normal", showGridLines: false },
    ],
    ...(print && {
      pageSetup: {
        paperSize: PAPER[print.paper] as ExcelJS.PaperSize,
        orientation: print.landscape ? "landscape" : "portrait",
        fitToPage: true,
        fitToWidth: 1,
        fitToHeight: 0,
        margins: print.landscape ? LANDSCAPE_MARGINS : MARGINS,
        ...(print.repeatRows && { printTitlesRow: `${print.repeatRows[0] + 1}:${print.repeatRows[1] + 1}` }),
      },
      headerFooter: { oddFooter: "&L&A&R&P / &N" },
    }),
  });
  for (const [i, width] of sheet.widths.entries()) {
    const column = page.getColumn(i + 1);
    if (width === 0) column.hidden = true;
    else column.width = width;
  }
  for (const { name, row, column, headings, rows } of sheet.tables ?? []) {
    page.addTable({
      name,
      ref: page.getCell(row + 1, column + 1).address,
      columns: headings.map((heading) => ({ name: heading })),
      // The cells are written below, all in one way: the table only needs its size here.
      rows: Array.from({ length: rows }, () => []),
      style: { theme: "TableStyleLight1", showRowStripes: false },
    });
  }
  for (const cell of sheet.cells) writeCell(page, sheet, cell, values);
  for (const [row, height] of rowHeights(sheet)) page.getRow(row + 1).height = height;
}

function writeCell(page: Worksheet, sheet: Sheet, cell: Cell, values: SheetValues): void {
  const { row, column, content, across = 1 } = cell;
  const target = page.getCell(row + 1, column + 1);
  target.style = excelStyle(cell);
  if (across > 1) {
    page.mergeCells(row + 1, column + 1, row + 1, column + across);
  }
  if (content && "formula" in content) writeFormula(page, sheet, cell, content.formula, values);
  else if (content) target.value = plainValue(content);
}

const plainValue = (content: Exclude<Content, { formula: string }>): ExcelValue =>
  "text" in content ? content.text : content.number;

function writeFormula(page: Worksheet, sheet: Sheet, cell: Cell, formula: string, values: SheetValues): void {
  const { row, column } = cell;
  const inFile = toFileFormula(formula);
  const valueAt = (r: number, c: number): ExcelValue => cached(values[row + r]?.[column + c] ?? null);
  const target = page.getCell(row + 1, column + 1);
  if (!callsOurs(formula)) {
    target.value = { formula: inFile, result: valueAt(0, 0) } as ExcelValue;
    return;
  }
  const { rows, columns } = spillSize(cell, sheet.cells, values);
  const last = page.getCell(row + rows, column + columns).address;
  const ref = last === target.address ? last : `${target.address}:${last}`;
  target.value = { shareType: "array", ref, formula: inFile, result: valueAt(0, 0) } as ExcelValue;
  for (let r = 0; r < rows; r++) {
    for (let c = r === 0 ? 1 : 0; c < columns; c++) page.getCell(row + 1 + r, column + 1 + c).value = valueAt(r, c);
  }
}

/** A computed value as exceljs keeps it; what a formula leaves blank is an empty text. */
function cached(value: CellValue): ExcelValue {
  if (value === null) return "";
  return typeof value === "object" ? ({ error: value.error } as ExcelValue) : value;
}
