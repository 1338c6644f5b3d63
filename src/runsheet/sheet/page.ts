import type { Cell, Content } from "../../sheet/sheet";

type Look = NonNullable<Cell["look"]>;

/** A cell as a row of the page gives it: what it holds, if anything, and how it looks. */
export type PageCell = Partial<Omit<Cell, "row" | "column" | "content">> & {
  readonly text?: string;
  readonly number?: number;
  readonly formula?: string;
};

/**
 * Places cells row by row. Beside them stands a hidden column of keys: formulas add up by them, however many pots
 * there are, and what is written on the sheet is read back by them, whatever rows were put in between.
 */
export class Page {
  readonly cells: Cell[] = [];
  private rows = 0;

  /** @param widths of the columns, in characters */
  constructor(readonly widths: readonly number[]) {}

  get width(): number {
    return this.widths.length;
  }

  /** The number of the next row as formulas count it, from 1. */
  get next(): number {
    return this.rows + 1;
  }

  skip(): void {
    this.rows += 1;
  }

  row(cells: readonly PageCell[], look?: Look, key?: string): void {
    let column = 0;
    for (const { text, number, formula, ...show } of cells) {
      const content = contentOf(text, number, formula);
      const own = look && show.look === undefined ? { ...show, look } : show;
      if (content || Object.keys(own).length > 0) {
        this.cells.push({ row: this.rows, column, ...own, ...(content && { content }) });
      }
      column += show.across ?? 1;
    }
    if (key !== undefined) this.cells.push({ row: this.rows, column: this.width, content: { text: key } });
    this.rows += 1;
  }

  /** A row of headings, to the full width; all but the first stand over numbers and are centred. */
  headings(texts: readonly string[], key?: string): void {
    const cells = Array.from({ length: this.width }, (_, i) =>
      texts[i] ? { text: texts[i], ...(i > 0 && { align: "center" as const }) } : {},
    );
    this.row(cells, "heading", key);
  }

  /** One text across the whole page. */
  line(text: string, look: Look): void {
    this.row([{ text, look, across: this.width }]);
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
