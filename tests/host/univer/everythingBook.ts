import type { Book, BookSheet, CellStyle } from "../../../src/file/book";
import { emptySheet, PLAIN_FONT, PLAIN_STYLE } from "../../../src/file/emptyBook";

/** A workbook with at least one of everything that a file's data can say, numbers and names invented. */
export function everythingBook(): Book {
  return {
    sheets: [candles(), hidden()],
    styles: STYLES,
    names: NAMES,
    active: 0,
    from1904: true,
    settings: { pourwright: '{"unit":"g"}' },
  };
}

const STYLES: CellStyle[] = [
  PLAIN_STYLE,
  { ...PLAIN_STYLE, font: { ...PLAIN_FONT, bold: true, size: 14.5, color: "8A1C0B", underline: "double" } },
  {
    ...PLAIN_STYLE,
    format: "0.0%",
    fill: "FFF9E3",
    align: { horizontal: "right", vertical: "top", wrap: true, indent: 2 },
  },
  {
    ...PLAIN_STYLE,
    border: { top: { style: "thin", color: "000000" }, left: { style: "mediumDashDot", color: null } },
  },
  { ...PLAIN_STYLE, align: { horizontal: "centerContinuous", rotation: 45, shrink: true }, unlocked: true },
  {
    ...PLAIN_STYLE,
    align: { rotation: "stacked", vertical: "justify" },
    font: { ...PLAIN_FONT, strike: true, raised: "subscript" },
  },
  { ...PLAIN_STYLE, format: "yyyy-mm-dd" },
  // Looks as the first one does, but may be changed on a protected sheet.
  { ...PLAIN_STYLE, unlocked: true },
];

const NAMES: Book["names"] = [
  { name: "Load", formula: "=Candles!$B$2", sheet: null, hidden: false, comment: "of wax" },
  { name: "Twice", formula: "=SUM(Candles!$B$2:$B$3)*2", sheet: null, hidden: true, comment: null },
  { name: "Here", formula: "='Kept aside'!$A$1", sheet: "7", hidden: false, comment: null },
];

function candles(): BookSheet {
  return {
    ...emptySheet("3", "Candles"),
    frozen: { rows: 1, columns: 2 },
    showsGrid: false,
    tabColor: "D9822B",
    defaultWidth: 10.7109375,
    defaultHeight: 16.5,
    print: { paper: "a4", landscape: true, repeatRows: [0, 0] },
    columns: [
      { first: 0, last: 1, width: 12.7109375, style: 1 },
      { first: 2, last: 2, width: 12.72, hidden: true },
      { first: 3, last: 16383, width: 9.140625, style: 2 },
    ],
    merges: [{ row: 20, column: 0, rows: 2, columns: 3 }],
    rows: [
      {
        row: 0,
        height: 31.2,
        style: 3,
        cells: ["Vessel", "Water (g)", "Fill, g", "No. #1"].map((value, column) => ({ column, value, style: 1 })),
      },
      {
        row: 1,
        cells: [
          { column: 0, value: "Jar", style: 0 },
          { column: 1, value: 250, style: 0 },
          { column: 2, value: 215, formula: "=ROUND(Jars[[#This Row],[Water (g)]]*0.86,0)", style: 2 },
          { column: 3, value: 0.1, style: 0 },
        ],
      },
      {
        row: 2,
        hidden: true,
        cells: [
          { column: 0, value: "Tin", style: 0 },
          { column: 1, value: 100.5, style: 0 },
          { column: 2, value: 86, formula: "=ROUND(Jars[[#This Row],[Water (g)]]*0.86,0)", style: 2 },
          { column: 3, value: 12345678.9, style: 0 },
        ],
      },
      {
        row: 3,
        cells: [
          { column: 0, value: "Total", style: 1 },
          { column: 1, value: 350.5, formula: "=SUM(Jars[Water (g)])", style: 0 },
          { column: 2, value: null, style: 4 },
        ],
      },
      {
        row: 5,
        cells: [
          { column: 0, value: "=1+1", style: 0, quoted: true },
          { column: 1, value: "007", style: 0 },
          { column: 2, value: "'tis", style: 5 },
          { column: 3, value: true, style: 0 },
          { column: 4, value: { error: "#N/A" }, style: 0 },
          { column: 5, value: "#N/A", style: 0 },
          { column: 6, value: 44561.25, style: 6 },
          { column: 7, value: "two\nlines", style: 2 },
          { column: 8, value: "", style: 0 },
        ],
      },
      {
        row: 7,
        cells: [
          {
            column: 0,
            value: "Soy wax\n6 %",
            style: 1,
            runs: [
              { text: "Soy ", font: {} },
              { text: "wax", font: { bold: false, color: "235E53" } },
              {
                text: "\n6 %",
                font: { italic: true, underline: "single", name: "Arial", size: 9, raised: "superscript" },
              },
            ],
          },
          { column: 1, value: "papers", style: 0 },
          { column: 2, value: 5, style: 0 },
          { column: 3, value: 350.5, formula: "=SUM(Jars[[#Totals],[Water (g)]])", style: 0 },
        ],
      },
      {
        row: 9,
        cells: [
          { column: 0, value: 1, formula: "=SEQUENCE(2,2)", spill: { rows: 2, columns: 2, dynamic: true }, style: 0 },
          { column: 1, value: 2, spilled: true, style: 3 },
          {
            column: 3,
            value: 215,
            formula: "=POUR.FILLWEIGHT(B2,0.86)",
            spill: { rows: 1, columns: 1, dynamic: true },
            style: 0,
          },
        ],
      },
      {
        row: 10,
        cells: [
          { column: 0, value: 3, spilled: true, style: 0 },
          { column: 1, value: 4, spilled: true, style: 0 },
        ],
      },
      {
        row: 12,
        cells: [
          { column: 0, value: 500, formula: "=B2:B3*2", spill: { rows: 2, columns: 1, dynamic: false }, style: 0 },
          { column: 2, value: 1, formula: "=COUNTA(Jars[[#Headers],[Water (g)]])", style: 0 },
          { column: 3, value: 652, formula: "=ROUND(SUM(Jars[[Water (g)]:[Fill, g]]),0)", style: 0 },
        ],
      },
      { row: 13, cells: [{ column: 0, value: 201, spilled: true, style: 0 }] },
      { row: 15, height: 20.25, hidden: true, cells: [] },
    ],
    tables: [
      {
        name: "Jars",
        area: { row: 0, column: 0, rows: 4, columns: 4 },
        hasHeadings: true,
        hasTotals: true,
        columns: [
          { heading: "Vessel", total: { label: "Total" } },
          { heading: "Water (g)", total: { function: "sum", formula: "=SUM(Jars[Water (g)])" } },
          { heading: "Fill, g", formula: "=ROUND(Jars[[#This Row],[Water (g)]]*0.86,0)" },
          { heading: "No. #1" },
        ],
        filter: { area: { row: 0, column: 0, rows: 3, columns: 4 }, columns: [{ column: 0, values: ["Jar"] }] },
        look: "TableStyleMedium2",
        stripes: true,
      },
    ],
    validations: [
      {
        areas: [{ row: 1, column: 0, rows: 2, columns: 1 }],
        kind: "list",
        operator: "between",
        formulas: ['="Jar,Tin"'],
        allowsBlank: true,
        showsList: true,
        onWrong: "stop",
        prompt: { title: "Vessel", text: "Choose one" },
        error: { title: "", text: "Not known" },
      },
      {
        areas: [
          { row: 0, column: 1, rows: 1048576, columns: 1 },
          { row: 5, column: 5, rows: 1, columns: 2 },
        ],
        kind: "decimal",
        operator: "greaterThan",
        formulas: ["=0"],
        allowsBlank: false,
        showsList: true,
        onWrong: "none",
      },
      {
        areas: [{ row: 1, column: 3, rows: 1, columns: 1 }],
        kind: "list",
        operator: "between",
        formulas: ["=$A$2:$A$3"],
        allowsBlank: true,
        showsList: false,
        onWrong: "warning",
      },
    ],
    conditions: [
      condition({ kind: "cellIs", operator: "greaterThan", formulas: ["=100"], priority: 4 }),
      condition({ kind: "cellIs", operator: "between", formulas: ["=$B$2", "=$B$3"], priority: 1, stops: true }),
      condition({ kind: "expression", formulas: ['=$A2="Jar"'], priority: 2 }),
      condition({ kind: "containsText", formulas: ['=NOT(ISERROR(SEARCH("ar",A2)))'], text: "ar", priority: 3 }),
      condition({ kind: "top10", rank: { count: 10, percent: true, bottom: false }, priority: 5 }),
      condition({ kind: "aboveAverage", average: { above: true, orEqual: false, deviations: 1 }, priority: 6 }),
      condition({ kind: "somethingNewer", priority: 7 }),
      condition({ kind: "duplicateValues", priority: 8 }),
      condition({
        kind: "colorScale",
        priority: 9,
        look: undefined,
        stopsAt: [
          { kind: "min", color: "F8696B" },
          { kind: "percentile", value: "50", color: "FFEB84" },
          { kind: "max", color: "63BE7B" },
        ],
      }),
      condition({
        kind: "dataBar",
        priority: 10,
        look: undefined,
        stopsAt: [{ kind: "min", color: "638EC6" }, { kind: "max" }],
      }),
      condition({
        kind: "iconSet",
        priority: 11,
        look: undefined,
        stopsAt: [
          { kind: "percent", value: "0" },
          { kind: "percent", value: "33" },
          { kind: "percent", value: "67" },
        ],
        icons: { set: "3TrafficLights1", reversed: true, hidesValue: false },
      }),
      condition({ kind: "timePeriod", period: "lastWeek", formulas: ["=A1<TODAY()"], priority: 12 }),
    ],
    notes: [
      { row: 1, column: 1, text: "weighed\ntwice", author: "Maker" },
      { row: 0, column: 0, text: "no author", author: "" },
    ],
    links: [
      link(7, 1, { address: "https://example.com/papers?a=1&b=2", tip: "the papers" }),
      link(7, 2, { place: "'Kept aside'!A1" }),
      link(8, 0, { address: "javascript:alert(1)" }),
      link(1, 0, { place: "Load" }),
      { area: { row: 5, column: 7, rows: 2, columns: 1 }, address: "mailto:a@example.com", place: null, tip: null },
    ],
  };
}

function link(
  row: number,
  column: number,
  of: { address?: string; place?: string; tip?: string },
): BookSheet["links"][number] {
  const { address = null, place = null, tip = null } = of;
  return { area: { row, column, rows: 1, columns: 1 }, address, place, tip };
}

type Condition = BookSheet["conditions"][number];

function condition(of: Partial<Condition> & Pick<Condition, "kind" | "priority">): Condition {
  const { look, ...rest } = { look: { font: { bold: true, color: "FF0000" }, fill: "FFEEEE" }, ...of };
  return {
    areas: [{ row: 1, column: 1, rows: 2, columns: 2 }],
    stops: false,
    formulas: [],
    ...rest,
    ...(look && { look }),
  };
}

function hidden(): BookSheet {
  const cell = (column: number, value: string | number) => ({ column, value, style: 0 });
  return {
    ...emptySheet("7", "Kept aside"),
    state: "veryHidden",
    rows: [
      { row: 0, cells: [cell(0, "Scent"), cell(1, "Drops")] },
      { row: 1, cells: [cell(0, "Fig"), cell(1, 3)] },
      { row: 2, hidden: true, cells: [cell(0, "Rose"), cell(1, 1)] },
      { row: 4, hidden: true, cells: [cell(0, "outside")] },
    ],
    filter: {
      area: { row: 0, column: 0, rows: 3, columns: 2 },
      columns: [
        { column: 0, other: true },
        { column: 1, custom: { and: true, rules: [{ operator: "greaterThan", value: "2" }] } },
      ],
    },
  };
}
