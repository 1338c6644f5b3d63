import { columnLetters } from "../../sheet/columnLetters";
import type { Cell, Look, Sheet } from "../../sheet/sheet";
import { LINE, STYLES } from "../../sheet/styles";
import type { Layout } from "./layOut";
import { address, addressLists, type Rectangle, rectangles } from "./rectangles";
import { rowHeights } from "./rowHeights";
import { type Slice, slicesOf } from "./slices";

/** What makes two cells look the same. */
type Drawn = { readonly look: Look; readonly align: Cell["align"] };

/** Queues a part of what fills an empty worksheet. */
export type Step = (worksheet: Excel.Worksheet) => void;

/**
 * What fills an empty worksheet, but for its page set-up, in steps that are to be queued in their order. No step is too
 * long for a request: throws where a single row would be. Tables are made after the constants, which hold their
 * headings, and before the formulas, which may name them; rows are fitted when all of it stands.
 */
export function stepsOf(sheet: Sheet, layout: Layout): Step[] {
  const slices = slicesOf(sheet, layout);
  const ofEach = (write: (worksheet: Excel.Worksheet, layout: Layout, slice: Slice) => void): Step[] =>
    slices.map(
      (slice): Step =>
        (worksheet) =>
          write(worksheet, layout, slice),
    );
  return [
    (worksheet) => setUp(worksheet, sheet),
    ...ofEach(fill),
    (worksheet) => makeTables(worksheet, sheet),
    ...(layout.formulas ? ofEach(writeFormulas) : []),
    (worksheet) => fitRows(worksheet, layout, rowHeights(sheet)),
  ];
}

function setUp(worksheet: Excel.Worksheet, { widths, frozenRows }: Sheet): void {
  worksheet.showGridlines = false;
  for (const [width, columns] of groupBy(widths.entries())) {
    const addresses = columns.map((column) => `${columnLetters(column)}:${columnLetters(column)}`);
    if (width === 0) {
      for (const one of addresses) worksheet.getRange(one).columnHidden = true;
      continue;
    }
    for (const list of addressLists(addresses)) {
      worksheet.getRanges(list).format.columnWidth = points(width);
    }
  }
  if (frozenRows) worksheet.freezePanes.freezeRows(frozenRows);
}

function fill(worksheet: Excel.Worksheet, { columns, formats, constants }: Layout, { from, to, cells }: Slice): void {
  const range = worksheet.getRangeByIndexes(from, 0, to - from, columns);
  if (formats) range.numberFormat = formats.slice(from, to);
  range.values = constants.slice(from, to);
  draw(worksheet, cells);
  for (const merged of mergesOf(worksheet, cells)) merged.merge(true);
}

function makeTables(worksheet: Excel.Worksheet, { tables = [] }: Sheet): void {
  for (const { name, row, column, headings, rows } of tables) {
    const range = worksheet.getRangeByIndexes(row, column, rows + 1, headings.length);
    const table = worksheet.tables.add(range, true);
    table.name = name;
    table.style = "TableStyleLight1";
    table.showBandedRows = false;
  }
}

function writeFormulas(worksheet: Excel.Worksheet, { formulas, columns }: Layout, { from, to }: Slice): void {
  if (formulas) worksheet.getRangeByIndexes(from, 0, to - from, columns).formulas = formulas.slice(from, to);
}

function draw(worksheet: Excel.Worksheet, cells: readonly Cell[]): void {
  const marked = cells.flatMap(({ row, column, across = 1, look = "body", align }) => {
    const kind = JSON.stringify({ look, align } satisfies Drawn);
    return Array.from({ length: across }, (_, i) => ({ row, column: column + i, kind }));
  });
  for (const [kind, blocks] of rectangles(marked)) {
    const { look, align } = JSON.parse(kind) as Drawn;
    const style = STYLES[look];
    if (!align && Object.keys(style).length === 0) continue;
    forAll(worksheet, blocks, ({ format }) => {
      if (style.bold) format.font.bold = true;
      if (style.italic) format.font.italic = true;
      if (style.size) format.font.size = style.size;
      if (style.color) format.font.color = `#${style.color}`;
      if (style.fill) format.fill.color = `#${style.fill}`;
      if (style.wrap) {
        format.wrapText = true;
        format.verticalAlignment = "Top";
      }
      if (align) format.horizontalAlignment = align === "left" ? "Left" : align === "center" ? "Center" : "Right";
    });
    for (const edge of style.border ? EDGES[style.border] : []) {
      const having = blocks.filter((block) => hasEdge(block, edge));
      forAll(worksheet, having, ({ format }) => {
        const line = format.borders.getItem(edge);
        line.style = "Continuous";
        line.color = `#${LINE}`;
      });
    }
  }
}

/** The edges of a block that give each of its cells the border. */
const EDGES = {
  top: ["EdgeTop", "InsideHorizontal"],
  bottom: ["EdgeBottom", "InsideHorizontal"],
  all: ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight", "InsideHorizontal", "InsideVertical"],
} as const;

/** Whether a block has such an edge: a single row has none between its rows. */
function hasEdge({ rows, columns }: Rectangle, edge: string): boolean {
  return (edge !== "InsideHorizontal" || rows > 1) && (edge !== "InsideVertical" || columns > 1);
}

function forAll(
  worksheet: Excel.Worksheet,
  blocks: readonly Rectangle[],
  paint: (areas: Excel.RangeAreas) => void,
): void {
  for (const list of addressLists(blocks.map(address))) paint(worksheet.getRanges(list));
}

/** The ranges to merge row by row: cells of one width below each other go together. */
function mergesOf(worksheet: Excel.Worksheet, cells: readonly Cell[]): Excel.Range[] {
  const wide = cells.filter(({ across = 1 }) => across > 1);
  const blocks = rectangles(wide.map(({ row, column, across }) => ({ row, column, kind: String(across) })));
  return [...blocks].flatMap(([across, list]) =>
    list.map(({ row, column, rows }) => worksheet.getRangeByIndexes(row, column, rows, Number(across))),
  );
}

function fitRows(worksheet: Excel.Worksheet, { rows, columns }: Layout, heights: ReadonlyMap<number, number>): void {
  worksheet.getRangeByIndexes(0, 0, rows, columns).format.autofitRows();
  for (const [height, those] of groupBy(heights)) {
    for (const list of addressLists(those.map((row) => `${row + 1}:${row + 1}`))) {
      worksheet.getRanges(list).format.rowHeight = height;
    }
  }
}

/** The places of each value. */
function groupBy(entries: Iterable<readonly [number, number]>): Map<number, number[]> {
  const groups = new Map<number, number[]>();
  for (const [at, value] of entries) {
    const places = groups.get(value) ?? [];
    groups.set(value, places);
    places.push(at);
  }
  return groups;
}

/** A width in characters as Excel's points: a digit of the default font is 7 pixels, 5 more are padding. */
const points = (characters: number): number => (7 * characters + 5) * 0.75;
