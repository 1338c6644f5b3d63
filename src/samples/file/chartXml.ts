import { cellsIn, type ReadCell, textOf } from "../../sheet/chart/data";
import { columnLetters } from "../../sheet/columnLetters";
import { escapeXml } from "../../sheet/escapeXml";
import type { CellRange, Chart, Series } from "../../sheet/sheet";
import { quotedName } from "../../sheet/sheetName";
import { SERIES_STYLES, type SeriesStyle } from "../../sheet/styles";

/** The axes' ids within a chart. */
const X = 1;
const Y = 2;

/**
 * A chart as DrawingML, with the values its cells have now; cells of hidden columns and rows are drawn too. The order
 * of the elements is the schema's.
 */
export function chartXml(chart: Chart, read: ReadCell): string {
  const plot = chart.kind === "bars" ? bars(chart, read) : linesOfPoints(chart, read);
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<c:chartSpace xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"><c:roundedCorners val="0"/><c:chart>${title(chart.title, 1200)}<c:autoTitleDeleted val="0"/><c:plotArea><c:layout/>${plot}</c:plotArea><c:legend><c:legendPos val="b"/><c:overlay val="0"/></c:legend><c:plotVisOnly val="0"/><c:dispBlanksAs val="span"/></c:chart><c:spPr><a:solidFill><a:srgbClr val="FFFFFF"/></a:solidFill><a:ln w="9525">${fill("BFB6A8")}</a:ln></c:spPr><c:txPr><a:bodyPr/><a:lstStyle/><a:p><a:pPr><a:defRPr sz="900"/></a:pPr><a:endParaRPr lang="en-US"/></a:p></c:txPr></c:chartSpace>`;
}

function bars({ series, xTitle, yTitle, format }: Chart, read: ReadCell): string {
  const drawn = series.map((one, i) => {
    const look = `<c:spPr>${fill(styleOf(i).color)}</c:spPr><c:invertIfNegative val="0"/>`;
    return `<c:ser>${named(one, i, read)}${look}<c:cat>${texts(one.x, read)}</c:cat><c:val>${numbers(one.y, read)}</c:val></c:ser>`;
  });
  // The first name on top; the scale below all bars.
  const names = `<c:catAx>${axis(X, "l", "maxMin", xTitle, "General")}<c:crossAx val="${Y}"/><c:crosses val="autoZero"/><c:auto val="1"/><c:lblAlgn val="ctr"/><c:lblOffset val="100"/><c:noMultiLvlLbl val="0"/></c:catAx>`;
  const lengths = `<c:valAx>${axis(Y, "b", "minMax", yTitle, format)}<c:crossAx val="${X}"/><c:crosses val="max"/><c:crossBetween val="between"/></c:valAx>`;
  return `<c:barChart><c:barDir val="bar"/><c:grouping val="clustered"/><c:varyColors val="0"/>${drawn.join("")}<c:gapWidth val="40"/>${axisIds}</c:barChart>${names}${lengths}`;
}

function linesOfPoints({ series, xTitle, yTitle, format }: Chart, read: ReadCell): string {
  const drawn = series.map((one, i) => {
    const { color, mark } = styleOf(i);
    const line = `<a:ln w="19050" cap="rnd">${fill(color)}<a:round/></a:ln>`;
    // These marks have no inside: their lines are all there is of them.
    const marker = `<c:marker><c:symbol val="${mark}"/><c:size val="6"/><c:spPr>${["x", "plus", "star"].includes(mark) ? "<a:noFill/>" : fill(color)}<a:ln w="12700">${fill(color)}</a:ln></c:spPr></c:marker>`;
    return `<c:ser>${named(one, i, read)}<c:spPr>${line}</c:spPr>${marker}<c:xVal>${numbers(one.x, read)}</c:xVal><c:yVal>${numbers(one.y, read)}</c:yVal><c:smooth val="0"/></c:ser>`;
  });
  const across = `<c:valAx>${axis(X, "b", "minMax", xTitle, "General")}<c:crossAx val="${Y}"/><c:crosses val="autoZero"/><c:crossBetween val="midCat"/></c:valAx>`;
  const up = `<c:valAx>${axis(Y, "l", "minMax", yTitle, format)}<c:crossAx val="${X}"/><c:crosses val="autoZero"/><c:crossBetween val="midCat"/></c:valAx>`;
  return `<c:scatterChart><c:scatterStyle val="lineMarker"/><c:varyColors val="0"/>${drawn.join("")}${axisIds}</c:scatterChart>${across}${up}`;
}

const axisIds = `<c:axId val="${X}"/><c:axId val="${Y}"/>`;

/** What all axes begin with. The labels of a name stand at the edge, also where its bar goes below 0. */
function axis(id: number, side: "b" | "l", orientation: "minMax" | "maxMin", text: string, format: string): string {
  const labels = orientation === "maxMin" ? "low" : "nextTo";
  const grid =
    id === Y ? `<c:majorGridlines><c:spPr><a:ln w="6350">${fill("D9D1C3")}</a:ln></c:spPr></c:majorGridlines>` : "";
  return `<c:axId val="${id}"/><c:scaling><c:orientation val="${orientation}"/></c:scaling><c:delete val="0"/><c:axPos val="${side}"/>${grid}${text && title(text, 900)}<c:numFmt formatCode="${escapeXml(format)}" sourceLinked="0"/><c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos val="${labels}"/>`;
}

function title(text: string, size: number): string {
  const look = `sz="${size}" b="${size > 1000 ? 1 : 0}"`;
  return `<c:title><c:tx><c:rich><a:bodyPr/><a:lstStyle/><a:p><a:pPr><a:defRPr ${look}/></a:pPr><a:r><a:rPr lang="en-US" ${look}/><a:t>${escapeXml(text)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`;
}

const named = ({ name }: Series, i: number, read: ReadCell): string =>
  `<c:idx val="${i}"/><c:order val="${i}"/><c:tx>${typeof name === "string" ? `<c:v>${escapeXml(name)}</c:v>` : texts(name, read)}</c:tx>`;

const fill = (color: string): string => `<a:solidFill><a:srgbClr val="${color}"/></a:solidFill>`;

const styleOf = (i: number): SeriesStyle => SERIES_STYLES[i % SERIES_STYLES.length] as SeriesStyle;

function numbers(range: CellRange, read: ReadCell): string {
  const cells = cellsIn(range, read);
  const points = cells.map((value, i) => (typeof value === "number" ? point(i, String(value)) : ""));
  return `<c:numRef><c:f>${reference(range)}</c:f><c:numCache><c:formatCode>General</c:formatCode><c:ptCount val="${cells.length}"/>${points.join("")}</c:numCache></c:numRef>`;
}

function texts(range: CellRange, read: ReadCell): string {
  const points = cellsIn(range, read).map((value, i) => point(i, escapeXml(textOf(value))));
  return `<c:strRef><c:f>${reference(range)}</c:f><c:strCache><c:ptCount val="${points.length}"/>${points.join("")}</c:strCache></c:strRef>`;
}

const point = (i: number, value: string): string => `<c:pt idx="${i}"><c:v>${value}</c:v></c:pt>`;

function reference({ sheet, row, column, rows, columns }: CellRange): string {
  const corner = (r: number, c: number): string => `$${columnLetters(c)}$${r + 1}`;
  const name = escapeXml(quotedName(sheet));
  const [from, to] = [corner(row, column), corner(row + rows - 1, column + columns - 1)];
  return `${name}!${from === to ? from : `${from}:${to}`}`;
}
