import type { Cell, Content, Sheet } from "../../sheet/sheet";

type Look = NonNullable<Cell["look"]>;

/** A cell as a row of the page gives it: what it holds, if anything, and how it looks. */
export type PageCell = Partial<Omit<Cell, "row" | "column" | "content">> & {
  readonly text?: string;
  readonly number?: number;
  readonly formula?: string;
  /** A box to tick takes no more room than a line. */
  readonly isTick?: true;
};

/** What stands in hidden columns of a row, by column. */
export type HiddenCells = Readonly<{ [column: number]: PageCell | undefined }>;

/** Heights of rows in points: of the title, of one that is read or ticked, of one that is written in by hand, and between blocks. */
const HEIGHTS = { title: 22, line: 15, box: 17.25, gap: 5 } as const;

/**
 * Places cells row by row. Beside them stand hidden columns, of keys among others: formulas add up by them, however many
 * pots there are, and what is written on the sheet is read back by them, whatever rows were put in between.
 */
export class Page {
  readonly cells: Cell[] = [];
  readonly heights: Record<number, number> = {};

  /**
   * @param widths of the columns that show, in characters
   * @param rows that stand above it
   */
  constructor(
    readonly widths: readonly number[],
    private rows = 0,
  ) {}

  get width(): number {
    return this.widths.length;
  }

  /** The number of the next row as formulas count it, from 1. */
  get next(): number {
    return this.rows + 1;
  }

  skip(): void {
    this.heights[this.rows] = HEIGHTS.gap;
    this.rows += 1;
  }

  /** @param hidden by their columns, texts and formulas that nobody needs to see */
  row(cells: readonly PageCell[], look?: Look, hidden: HiddenCells = {}): void {
    let column = 0;
    let [hasBox, isTitle] = [false, false];
    for (const cell of cells) {
      const own = look && cell.look === undefined ? { ...cell, look } : cell;
      if (Object.keys(own).length > 0) this.put(column, own);
      isTitle ||= own.look === "title";
      hasBox ||= own.look === "blank" && !own.isTick;
      column += cell.across ?? 1;
    }
    for (const [at, cell] of Object.entries(hidden)) if (cell) this.put(Number(at), cell);
    this.heights[this.rows] = HEIGHTS[isTitle ? "title" : hasBox ? "box" : "line"];
    this.rows += 1;
  }

  /** A row of headings, to the full width; all but the first stand over numbers and are centred. */
  headings(texts: readonly PageCell[], hidden?: HiddenCells): void {
    const covered = texts.reduce((sum, { across = 1 }) => sum + across, 0);
    const cells: PageCell[] = [...texts, ...Array.from({ length: this.width - covered }, () => ({}))];
    this.row(
      cells.map((cell, i) => ({ ...cell, ...(i > 0 && cell.text && { align: "center" as const }) })),
      "heading",
      hidden,
    );
  }

  /** One text across the whole page. */
  line(text: string, look: Look): void {
    this.row([{ text, look, across: this.width }]);
  }

  /** Its cells and heights with those of a page below it. */
  with(below: Page): Pick<Sheet, "cells" | "heights"> {
    return { cells: [...this.cells, ...below.cells], heights: { ...this.heights, ...below.heights } };
  }

  private put(column: number, { text, number, formula, isTick: _, ...show }: PageCell): void {
    const content = contentOf(text, number, formula);
    this.cells.push({ row: this.rows, column, ...show, ...(content && { content }) });
  }
}

function contentOf(
  text: string | undefined,
  number: number | undefined,
  formula: string | undefined,
): Content | undefined {
  if (text !== undefined) return { text };
  if (number !== undefined) return { number };
  return formula === undefined ? undefined : { formula };
}
