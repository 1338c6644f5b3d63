import type { ReadCell } from "../../sheet/chart/data";
import { chartText } from "../../sheet/chart/text";
import { escapeXml } from "../../sheet/escapeXml";
import type { Chart, Sheet, SheetValues } from "../../sheet/sheet";
import { chartXml } from "./chartXml";
import { addPart, change, type Parts, relate } from "./parts";

const CHART = "http://schemas.openxmlformats.org/drawingml/2006/chart";
const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
const MAIN = "http://schemas.openxmlformats.org/drawingml/2006/main";
const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/**
 * Puts the sheets' charts into the file, which exceljs cannot: for each sheet with charts a drawing that says where
 * they are, and for each chart a part of its own.
 * @param values one for each sheet; charts keep those of their cells
 */
export function addCharts(parts: Parts, sheets: readonly Sheet[], values: readonly SheetValues[]): void {
  const read: ReadCell = (name, row, column) =>
    values[sheets.findIndex((sheet) => sheet.name === name)]?.[row]?.[column] ?? null;
  let drawings = 0;
  let charts = 0;
  for (const [i, sheet] of sheets.entries()) {
    if (!sheet.charts?.length) continue;
    const drawing = `xl/drawings/drawing${++drawings}.xml`;
    addPart(parts, drawing, "drawing", drawingXml(sheet.charts));
    for (const [c, chart] of sheet.charts.entries()) {
      charts++;
      addPart(parts, `xl/charts/chart${charts}.xml`, "drawingml.chart", chartXml(chart, read));
      relate(parts, drawing, chartId(c), "chart", `../charts/chart${charts}.xml`);
    }
    const page = `xl/worksheets/sheet${i + 1}.xml`;
    relate(parts, page, "rIdDrawing", "drawing", `../drawings/drawing${drawings}.xml`);
    // The order of a sheet's elements is fixed: the drawing stands before the tables.
    change(parts, page, /(?=<tableParts|<\/worksheet>)/, () => `<drawing xmlns:r="${RELATIONS}" r:id="rIdDrawing"/>`);
  }
}

const chartId = (index: number): string => `rId${index + 1}`;

function drawingXml(charts: readonly Chart[]): string {
  const corner = (name: string, row: number, column: number): string =>
    `<xdr:${name}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${name}>`;
  const anchors = charts.map((chart, i) => {
    const { row, column, rows, columns } = chart.place;
    const name = `<xdr:cNvPr id="${i + 2}" name="${escapeXml(chart.title)}" descr="${escapeXml(chartText(chart))}"/>`;
    return `<xdr:twoCellAnchor>${corner("from", row, column)}${corner("to", row + rows, column + columns)}<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr>${name}<xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="${CHART}"><c:chart xmlns:c="${CHART}" xmlns:r="${RELATIONS}" r:id="${chartId(i)}"/></a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>`;
  });
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<xdr:wsDr xmlns:xdr="${DRAWING}" xmlns:a="${MAIN}">${anchors.join("")}</xdr:wsDr>`;
}
