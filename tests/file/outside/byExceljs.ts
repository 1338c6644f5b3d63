import ExcelJS from "exceljs";

/** A workbook as a program writes it that is built on exceljs, with all that this can write. */
export async function byExceljs(): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  Object.assign(book, {
    creator: "A maker",
    created: new Date(Date.UTC(2026, 0, 1)),
    modified: new Date(Date.UTC(2026, 0, 1)),
  });
  const pours = book.addWorksheet("Pours", {
    views: [{ state: "frozen", ySplit: 1, xSplit: 1 }],
    properties: { tabColor: { argb: "FF7A3E06" }, defaultRowHeight: 18 },
    pageSetup: { paperSize: 9, orientation: "landscape", fitToPage: true, fitToHeight: 0, printTitlesRow: "1:1" },
  });
  pours.addTable({
    name: "PoursDone",
    ref: "A1",
    totalsRow: true,
    style: { theme: "TableStyleMedium2", showRowStripes: true },
    columns: [
      { name: "Jar", totalsRowLabel: "All", filterButton: true },
      { name: "Wax (g)", totalsRowFunction: "sum", totalsRowResult: 360.75 } as ExcelJS.TableColumnProperties,
      { name: "On" },
    ],
    rows: [
      ["small", 120.5, new Date(Date.UTC(2026, 10, 1))],
      ["large & tall", 240.25, new Date(Date.UTC(2026, 10, 2))],
    ],
  });
  pours.getCell("C2").numFmt = "yyyy-mm-dd";
  for (let row = 2; row <= 3; row++) {
    pours.getCell(`E${row}`).value =
      row === 2
        ? ({ formula: "B2*2", result: 241, ref: "E2:E3", shareType: "shared" } as ExcelJS.CellFormulaValue)
        : ({ sharedFormula: "E2", result: 480.5 } as ExcelJS.CellSharedFormulaValue);
  }
  pours.getCell("E4").value = { formula: "SUM(E2:E3)", result: 721.5 } as ExcelJS.CellFormulaValue;
  pours.getCell("F2").value = { richText: [{ text: "bold ", font: { bold: true } }, { text: "plain" }] };
  pours.getCell("F3").value = { text: "supplier", hyperlink: "https://example.com/wax" };
  pours.getCell("F4").value = { error: "#N/A" } as ExcelJS.CellErrorValue;
  pours.getCell("F2").note = "a note";
  pours.getCell("G2").fill = { type: "pattern", pattern: "lightGray", fgColor: { argb: "FF00FF00" } };
  pours.getCell("G2").border = { top: { style: "thin" }, left: { style: "double", color: { argb: "FFFF0000" } } };
  pours.getCell("G3").dataValidation = {
    type: "list",
    formulae: ['"Fig,Moss"'],
    allowBlank: true,
    showErrorMessage: true,
  };
  pours.mergeCells("G5:H6");
  pours.getColumn(2).width = 22;
  pours.getColumn(9).hidden = true;
  pours.addConditionalFormatting({
    ref: "B2:B3",
    rules: [{ type: "cellIs", operator: "greaterThan", formulae: [200], priority: 1, style: { font: { bold: true } } }],
  });
  const picture = book.addImage({ base64: PICTURE, extension: "png" });
  pours.addImage(picture, "J2:K6");
  const sums = book.addWorksheet("Sums", { state: "visible" });
  sums.getCell("A1").value = { formula: "SUM(Pours!E2:E3)/2", result: 360.75 } as ExcelJS.CellFormulaValue;
  sums.getCell("A2").value = 0.06;
  sums.getCell("A2").numFmt = "0.0%";
  sums.autoFilter = "A4:B6";
  sums.getCell("A4").value = "Wick";
  book.definedNames.add("Pours!$B$2:$B$3", "Waxes");
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** One pixel. */
const PICTURE = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==";
