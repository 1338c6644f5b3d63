import { readFileSync } from "node:fs";
import { DOMParser, type Element } from "@xmldom/xmldom";
import { describe, expect, it } from "vitest";
import { writeWorkbook } from "../../src/samples/file/writeWorkbook";
import { SAMPLES } from "../../src/samples/index";
import type { CellRange, Chart } from "../../src/sheet/sheet";
import { attributesOf, partsOf, sharedTexts, sheetsOf } from "./zipped";

/** Any fault in the XML throws. */
const parse = (xml: string) =>
  new DOMParser({
    onError: (level, message) => {
      throw new Error(`${level}: ${message}`);
    },
  }).parseFromString(xml, "text/xml");

const all = (within: Element, name: string): Element[] => Array.from(within.getElementsByTagName(name));
const first = (within: Element, name: string): Element => {
  const found = all(within, name)[0];
  if (!found) throw new Error(`no ${name}`);
  return found;
};
const children = (of: Element): string[] =>
  Array.from(of.childNodes).flatMap((node) => (node.nodeType === 1 ? [node.nodeName] : []));

/** Where a range is, as a chart writes it: `'Line'!$A$13:$A$32`. */
function addressOf({ sheet, row, column, rows, columns }: CellRange): string {
  const corner = (r: number, c: number) => `$${String.fromCharCode(65 + c)}$${r + 1}`;
  const [from, to] = [corner(row, column), corner(row + rows - 1, column + columns - 1)];
  return `'${sheet}'!${from === to ? from : `${from}:${to}`}`;
}

/** The order that ECMA-376 Part 1, 21.2.2, gives the children of each element (from memory). */
const ORDERS: Readonly<Record<string, readonly string[]>> = {
  "c:chartSpace": ["c:roundedCorners", "c:chart", "c:spPr", "c:txPr"],
  "c:chart": ["c:title", "c:autoTitleDeleted", "c:plotArea", "c:legend", "c:plotVisOnly", "c:dispBlanksAs"],
  "c:barChart": ["c:barDir", "c:grouping", "c:varyColors", "c:ser", "c:gapWidth", "c:axId"],
  "c:scatterChart": ["c:scatterStyle", "c:varyColors", "c:ser", "c:axId"],
  "c:ser": "c:idx c:order c:tx c:spPr c:invertIfNegative c:marker c:cat c:xVal c:val c:yVal c:smooth".split(" "),
  "c:catAx":
    "c:axId c:scaling c:delete c:axPos c:majorGridlines c:title c:numFmt c:majorTickMark c:minorTickMark c:tickLblPos c:crossAx c:crosses c:auto c:lblAlgn c:lblOffset c:noMultiLvlLbl".split(
      " ",
    ),
  "c:valAx":
    "c:axId c:scaling c:delete c:axPos c:majorGridlines c:title c:numFmt c:majorTickMark c:minorTickMark c:tickLblPos c:crossAx c:crosses c:crossBetween".split(
      " ",
    ),
};

const withCharts = SAMPLES.flatMap((sample) => {
  const charts = sample.sheets().flatMap((sheet) => (sheet.charts ?? []).map((chart) => ({ sheet, chart })));
  return charts.length > 0 ? [{ file: sample.file, charts }] : [];
});

it("the studio has a chart, and the burn tests one for each vessel", () => {
  expect(withCharts.map(({ file, charts }) => [file, charts.map(({ chart }) => chart.kind)])).toEqual([
    ["1-studio.xlsx", ["bars"]],
    ["2-burn-tests.xlsx", ["bars", "bars"]],
  ]);
});

describe.each(withCharts)("the charts of $file", ({ file, charts }) => {
  const parts = partsOf(new Uint8Array(readFileSync(new URL(`../../sample-workbooks/${file}`, import.meta.url))));
  const sheets = sheetsOf(parts);
  const texts = sharedTexts(parts);
  const chartXml = (i: number): Element => {
    const root = parse(parts[`xl/charts/chart${i + 1}.xml`] ?? "").documentElement;
    if (!root) throw new Error(`no chart ${i + 1}`);
    return root;
  };
  /** What a cell shows, from the sheet's own part; an error is no value. */
  const savedAt = (sheet: string, row: number, column: number): string | undefined => {
    const address = `${String.fromCharCode(65 + column)}${row + 1}`;
    const cell = sheets.find(({ name }) => name === sheet)?.cells.find((one) => one.address === address);
    if (cell?.attributes.t === "e") return undefined;
    return cell?.attributes.t === "s" ? texts[Number(cell.value)] : cell?.value;
  };
  const cellsOf = ({ sheet, row, column, rows }: CellRange) =>
    Array.from({ length: rows }, (_, r) => savedAt(sheet, row + r, column));

  it("refer to the cells they are described with, and keep those cells' values", () => {
    for (const [i, { chart }] of charts.entries()) {
      const series = all(chartXml(i), "c:ser");
      for (const [s, { name }] of chart.series.entries()) {
        const said = first(series[s] as Element, "c:tx");
        const isCell = typeof name !== "string";
        expect(all(said, "c:f").map((f) => f.textContent)).toEqual(isCell ? [addressOf(name)] : []);
        expect(first(said, "c:v").textContent).toBe(isCell ? cellsOf(name)[0] : name);
      }
      expect(series).toHaveLength(chart.series.length);
      for (const [s, { x, y }] of chart.series.entries()) {
        const axes = chart.kind === "bars" ? ["c:cat", "c:val"] : ["c:xVal", "c:yVal"];
        for (const [a, range] of [x, y].entries()) {
          const axis = first(series[s] as Element, axes[a] as string);
          expect(first(axis, "c:f").textContent).toBe(addressOf(range));
          const points = all(axis, "c:pt").map((point) => [
            Number(point.getAttribute("idx")),
            first(point, "c:v").textContent,
          ]);
          // A free row is a bar without a name and without a height.
          const isName = axes[a] === "c:cat";
          const cells = cellsOf(range).flatMap((value = "", idx) => (value === "" && !isName ? [] : [[idx, value]]));
          expect(points).toEqual(cells);
          expect(points.length).toBeGreaterThan(3);
          expect(first(axis, "c:ptCount").getAttribute("val")).toBe(String(range.rows));
        }
      }
    }
  });

  it("draw cells of hidden columns too, and every line with a mark of its own", () => {
    for (const [i, { chart }] of charts.entries()) {
      expect(first(chartXml(i), "c:plotVisOnly").getAttribute("val")).toBe("0");
      const marks = all(chartXml(i), "c:symbol").map((one) => one.getAttribute("val"));
      if (chart.kind === "line-of-points") expect(new Set(marks).size).toBe(chart.series.length);
    }
  });

  it("have their parts in the order of the schema, and two axes that cross each other", () => {
    for (const i of charts.keys()) {
      const root = chartXml(i);
      for (const [name, order] of Object.entries(ORDERS)) {
        for (const element of [root, ...all(root, name)].filter(({ nodeName }) => nodeName === name)) {
          const places = children(element).map((child) => order.indexOf(child));
          expect(places, name).not.toContain(-1);
          expect(places, name).toEqual([...places].sort((a, b) => a - b));
        }
      }
      const axes = [...all(root, "c:catAx"), ...all(root, "c:valAx")];
      const ids = axes.map((axis) => first(axis, "c:axId").getAttribute("val"));
      expect(new Set(ids).size).toBe(2);
      expect(axes.map((axis) => first(axis, "c:crossAx").getAttribute("val"))).toEqual([...ids].reverse());
    }
  });

  it("stand where they are described, with a text for those who do not see them", () => {
    const drawn = [...new Set(charts.map(({ sheet }) => sheet.name))];
    for (const { sheet, chart } of charts) {
      const { row, column, rows, columns } = chart.place;
      // A drawing for each sheet that has charts, in it a frame for each chart.
      const i = drawn.indexOf(sheet.name);
      const all = parse(parts[`xl/drawings/drawing${i + 1}.xml`] ?? "").documentElement as Element;
      const frame = charts.filter((one) => one.sheet === sheet).findIndex((one) => one.chart === chart);
      const drawing = all.getElementsByTagName("xdr:twoCellAnchor")[frame] as Element;
      const corner = (name: string) =>
        ["xdr:row", "xdr:col"].map((part) => Number(first(first(drawing, name), part).textContent));
      expect(corner("xdr:from")).toEqual([row, column]);
      expect(corner("xdr:to")).toEqual([row + rows, column + columns]);
      expect(first(drawing, "xdr:cNvPr").getAttribute("descr")).toContain(chart.title);

      // The sheet names its drawing, the drawing its chart.
      const place = sheets.findIndex(({ name }) => name === sheet.name) + 1;
      const xml = sheets[place - 1]?.xml ?? "";
      const id = attributesOf(/<drawing [^>]*>/.exec(xml)?.[0] ?? "")["r:id"];
      expect(parts[`xl/worksheets/_rels/sheet${place}.xml.rels`]).toMatch(
        new RegExp(`Id="${id}"[^>]*Target="../drawings/drawing${i + 1}.xml"`),
      );
      const order = ["<pageSetup", "<drawing", "<tableParts"].map((tag) => xml.indexOf(tag)).filter((at) => at >= 0);
      expect(order).toEqual([...order].sort((a, b) => a - b));
      const link = first(drawing, "c:chart").getAttribute("r:id");
      expect(parts[`xl/drawings/_rels/drawing${i + 1}.xml.rels`]).toContain(`Id="${link}"`);

      // No cell is hidden under it.
      const covered = sheet.cells.filter(
        (cell) =>
          cell.row >= row &&
          cell.row < row + rows &&
          cell.column < column + columns &&
          cell.column + (cell.across ?? 1) > column,
      );
      expect(covered).toEqual([]);
    }
  });
});

describe("a chart of odd cells", () => {
  const chart: Chart = {
    kind: "bars",
    title: "Wax & <oil>",
    xTitle: "",
    yTitle: "",
    format: "0",
    series: [
      {
        name: 'The "best"',
        x: { sheet: "Tom's <list>", row: 0, column: 26, rows: 3, columns: 1 },
        y: { sheet: "Tom's <list>", row: 0, column: 27, rows: 3, columns: 1 },
      },
    ],
    place: { row: 5, column: 0, rows: 10, columns: 4 },
  };
  const values = [
    [...Array(26).fill(null), "a < b", 1],
    [...Array(26).fill(null), null, { error: "#N/A" }],
    [...Array(26).fill(null), "c", -2],
  ];

  it("escapes names, and leaves out what is no number", async () => {
    const sheet = { name: "Tom's <list>", widths: [10], cells: [], charts: [chart] };
    const parts = partsOf(await writeWorkbook("Test", [sheet], [values]));
    const root = parse(parts["xl/charts/chart1.xml"] ?? "").documentElement as Element;
    expect(first(first(root, "c:cat"), "c:f").textContent).toBe("'Tom''s <list>'!$AA$1:$AA$3");
    expect(all(first(root, "c:cat"), "c:v").map((v) => v.textContent)).toEqual(["a < b", "", "c"]);
    const points = all(first(root, "c:val"), "c:pt");
    expect(points.map((point) => [point.getAttribute("idx"), first(point, "c:v").textContent])).toEqual([
      ["0", "1"],
      ["2", "-2"],
    ]);
    expect(first(root, "a:t").textContent).toBe("Wax & <oil>");
    expect(first(first(root, "c:tx"), "a:t").textContent).toBe("Wax & <oil>");
  });
});
