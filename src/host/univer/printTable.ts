/** Rows of a sheet as an HTML table to print. */

import { escapeXml } from "../../sheet/escapeXml";
import { fittedNumber } from "./printNumber";

export interface PrintedRow {
  /** Pixels. */
  readonly height: number;
  /** Whether it stands at the head of each page. */
  readonly repeats?: boolean;
  /** Whether a new page begins with it, and with it a block. */
  readonly beginsPage?: boolean;
  /** By column; nothing where a merged cell lies over it. */
  readonly cells: readonly (PrintedCell | undefined)[];
}

/** What a cell shows. Colours and borders are CSS. */
export interface PrintedCell {
  readonly text: string;
  /** Columns and rows that it covers, itself included. */
  readonly across?: number;
  readonly down?: number;
  /** Left out: where its text begins to be read. */
  readonly align?: "left" | "center" | "right";
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** Points. */
  readonly size?: number;
  readonly line?: "underline" | "line-through";
  readonly wrap?: boolean;
  /** Whether it is a number, and one with a format of its own. */
  readonly number?: "formatted" | "plain";
  readonly color?: string;
  readonly fill?: string;
  readonly borders?: Partial<Record<"top" | "right" | "bottom" | "left", string>>;
}

/** How a table fits its page. */
export interface Fit {
  /** What its sizes are multiplied by, at most 1. */
  readonly scale: number;
  /** Rows that belong together move to the next page together, up to this height in pixels. */
  readonly together: number;
}

/** Points: the size of text that has none of its own, and the least that can still be read at the bench. */
export const USUAL_SIZE = 11;
export const LEAST_SIZE = 8;

/** Pixels beside what a cell says, both sides together, by the page's style. */
const BESIDE = (2 * 2.5 * 96) / 72;

/** Pixels: a row in which one can write by hand. */
const ROOM_TO_WRITE = 24;
/** Pixels: a row of one line, and one that only parts others. */
const LINE = 20;
const GAP = 8;

/** Tables of these rows, as wide as the columns or as the page. */
export function tablesHtml(rows: readonly PrintedRow[], widths: readonly number[], fit: Fit): string {
  const width = widths.reduce((sum, one) => sum + one, 0);
  const style = fit.scale < 1 ? "width:100%" : `width:${width}px`;
  const columns = widths.map((one) => `<col style="width:${((one / width) * 100).toFixed(3)}%">`).join("");
  const begin = `<table style="${style}"><colgroup>${columns}</colgroup>`;
  const html = (some: readonly PrintedRow[]) => some.map((row) => rowHtml(row, widths, fit.scale)).join("");
  const bodies = (some: readonly PrintedRow[]) =>
    blocksOf(some)
      .map((block) => {
        const height = block.reduce((sum, row) => sum + heightOf(row, fit.scale), 0);
        const kinds = [height <= fit.together && "together", block[0]?.beginsPage && "page"].filter(Boolean);
        return `<tbody${kinds.length > 0 ? ` class="${kinds.join(" ")}"` : ""}>${html(block)}</tbody>`;
      })
      .join("");

  const [above, head, below] = splitAtHead(rows);
  if (head.length === 0) return `${begin}${bodies(below)}</table>`;
  const once = above.length > 0 ? `${begin}${bodies(above)}</table>` : "";
  // Without a row between the two, the lines above the first row below would stand under the head of every page.
  const gap = `<tbody><tr class="gap"><td colspan="${widths.length}"></td></tr></tbody>`;
  return `${once}${begin}<thead>${html(head)}</thead>${gap}${bodies(below)}</table>`;
}

/** The rows above those that repeat, those, and the rest. Where a merged cell would be torn, none repeats. */
function splitAtHead(
  rows: readonly PrintedRow[],
): readonly [above: PrintedRow[], head: PrintedRow[], below: PrintedRow[]] {
  const first = rows.findIndex(({ repeats }) => repeats);
  const after = rows.findIndex(({ repeats }, i) => i > first && !repeats);
  const torn = tornRows(rows);
  if (first < 0 || after < 0 || torn.has(first) || torn.has(after)) return [[], [], [...rows]];
  return [rows.slice(0, first), rows.slice(first, after), rows.slice(after)];
}

/** The rows in blocks: each ends with the empty rows that part it from the next one. */
function blocksOf(rows: readonly PrintedRow[]): (readonly PrintedRow[])[] {
  const blocks: PrintedRow[][] = [];
  const torn = tornRows(rows);
  for (const [i, row] of rows.entries()) {
    const before = rows[i - 1];
    const begins = row.beginsPage || (before && isEmpty(before) && !isEmpty(row));
    if (!before || (begins && !torn.has(i))) blocks.push([]);
    blocks.at(-1)?.push(row);
  }
  return blocks;
}

/** The rows that a merged cell comes into from above. */
function tornRows(rows: readonly PrintedRow[]): ReadonlySet<number> {
  const torn = new Set<number>();
  for (const [i, { cells }] of rows.entries()) {
    const down = cells.reduce((most, cell) => Math.max(most, cell?.down ?? 1), 1);
    for (let below = i + 1; below < i + down; below++) torn.add(below);
  }
  return torn;
}

const isEmpty = ({ cells }: PrintedRow) => cells.every((cell) => cell && showsNothing(cell));

export const showsNothing = (cell: PrintedCell) => cell.text === "" && isBare(cell);

const isBare = ({ fill, borders }: PrintedCell) => fill === undefined && borders === undefined;

/** A row of headings: all that it says is bold and on a fill. */
function isHeading({ cells }: PrintedRow): boolean {
  const texts = cells.filter((cell) => cell && cell.text !== "");
  return texts.length > 0 && texts.every((cell) => cell?.bold && cell.fill !== undefined);
}

function rowHtml(row: PrintedRow, widths: readonly number[], scale: number): string {
  let html = "";
  for (let column = 0; column < row.cells.length; column++) {
    const cell = row.cells[column];
    if (!cell) continue;
    let across = cell.across ?? 1;
    // As on the screen, a text runs on over the empty cells beside it.
    if (cell.text !== "" && !cell.wrap && isBare(cell) && (cell.align ?? "left") === "left") {
      let next = row.cells[column + across];
      while (next && showsNothing(next)) {
        across += next.across ?? 1;
        next = row.cells[column + across];
      }
    }
    const width = widths.slice(column, column + across).reduce((sum, one) => sum + one, 0);
    html += cellHtml(cell, { across, width }, scale);
    column += across - 1;
  }
  return `<tr${isHeading(row) ? ' class="heading"' : ""} style="height:${heightOf(row, scale)}px">${html}</tr>`;
}

function cellHtml(
  cell: PrintedCell,
  { across, width }: { readonly across: number; readonly width: number },
  scale: number,
): string {
  const { down = 1, align, bold, italic, size = USUAL_SIZE, line, color, fill, borders = {}, number } = cell;
  const usual = { text: cell.text, points: pointsOf(size, scale) };
  const { text, points } = number
    ? fittedNumber(cell.text, number === "plain", usual.points, width * scale - BESIDE)
    : usual;
  const css = [
    number && "white-space:nowrap",
    align && `text-align:${align}`,
    bold && "font-weight:bold",
    italic && "font-style:italic",
    points !== pointsOf(USUAL_SIZE, scale) && `font-size:${points.toFixed(2)}pt`,
    line && `text-decoration:${line}`,
    color && `color:${color}`,
    fill && `background:${fill}`,
    ...Object.entries(borders).map(([side, border]) => `border-${side}:${border}`),
  ].filter(Boolean);
  const spans = `${across > 1 ? ` colspan="${across}"` : ""}${down > 1 ? ` rowspan="${down}"` : ""}`;
  const style = css.length > 0 ? ` style="${escapeXml(css.join(";"))}"` : "";
  return `<td${spans}${text ? ' dir="auto"' : ""}${style}>${escapeXml(text)}</td>`;
}

/**
 * Rows shrink with their texts; but not those with an empty box, in which someone is to write. Text that wraps makes its
 * row as high as it takes on paper, and where it may come to stand and nothing does, the row is a gap.
 */
function heightOf({ height, cells }: PrintedRow, scale: number): number {
  const hasBox = cells.some((cell) => cell?.text === "" && cell.borders?.bottom);
  if (hasBox) return Math.round(Math.max(Math.min(height, ROOM_TO_WRITE), height * scale));
  if (!cells.some((cell) => cell?.wrap)) return Math.round(height * scale);
  const isSilent = cells.every((cell) => (cell?.text ?? "") === "");
  return Math.round(Math.min(height, isSilent ? GAP : LINE) * scale);
}

/** A size of text on the page, from the sheet's; both in points. */
export const pointsOf = (size: number, scale: number): number => Math.max(Math.min(size, LEAST_SIZE), size * scale);
