import type { CellValue } from "../../sheet/sheet";
import { areaOf, COLUMNS, cellPlace, ROWS } from "../addresses";
import type { BookCell, BookRow, CellStyle } from "../book";
import { DAYS_TO_1904, isDayFormat } from "../days";
import { damaged, tooLarge } from "../refused";
import type { Attributes, Handler } from "../xml/translator";
import { type Element, TreeHandler } from "../xml/tree";
import type { Colors } from "./colors";
import { type FormulaBudget, Formulas } from "./formulas";
import { dayNumber } from "./isoDay";
import { Spills } from "./spills";
import { type RichText, richText, unescaped } from "./text";
import { isOn, numberIn, said } from "./values";

/** What cells refer to, and what is counted over all sheets. */
export interface CellContext {
  readonly texts: readonly RichText[];
  readonly styles: readonly CellStyle[];
  readonly quoted: readonly boolean[];
  readonly colors: Colors;
  readonly from1904: boolean;
  /** Whether the number that a cell's `cm` gives marks its formula as one that spills by itself. */
  readonly isDynamic: (cm: string | undefined) => boolean;
  readonly formulas: FormulaBudget;
  readonly cells: { count: number };
}

const MOST_CELLS = 3_000_000;

type Growing<T> = { -readonly [K in keyof T]: T[K] };

/** Reads what stands between `sheetData` and its end. */
export class CellsHandler implements Handler {
  readonly rows: BookRow[] = [];
  /** Data tables, whose formulas stand nowhere. */
  dataTables = 0;
  /** Formulas that point to one which the sheet does not have. */
  lostFormulas = 0;
  outlined = false;
  readonly #context: CellContext;
  readonly formulas: Formulas;
  readonly #spills = new Spills();
  #row: Growing<BookRow> & { cells: BookCell[] } = { row: -1, cells: [] };
  #column = -1;
  #cell: Attributes = {};
  #formula: Attributes | undefined;
  #formulaText = "";
  #value = "";
  #hasValue = false;
  #inline: RichText | undefined;
  #collects: "formula" | "value" | "inline" | undefined;
  readonly #tree: TreeHandler;

  constructor(context: CellContext) {
    this.#context = context;
    this.formulas = new Formulas(context.formulas);
    this.#tree = new TreeHandler((element: Element) => {
      this.#inline = richText(element, context.colors);
      this.#collects = undefined;
    });
  }

  open(name: string, attributes: Attributes): void {
    if (this.#collects === "inline") this.#tree.open(name, attributes);
    else if (name === "c") this.#beginCell(attributes);
    else if (name === "row") this.#beginRow(attributes);
    else if (name === "v") {
      this.#hasValue = true;
      this.#collects = "value";
    } else if (name === "f") {
      this.#formula = attributes;
      this.#collects = "formula";
    } else if (name === "is") {
      this.#collects = "inline";
      this.#tree.open(name, attributes);
    }
  }

  text(text: string): void {
    if (this.#collects === "value") this.#value += text;
    else if (this.#collects === "formula") this.#formulaText += text;
    else if (this.#collects === "inline") this.#tree.text(text);
  }

  close(name: string): void {
    if (this.#collects === "inline") this.#tree.close();
    else if (name === "c") this.#endCell();
    else if (name === "row") this.#endRow();
    else if (name === "v" || name === "f") this.#collects = undefined;
  }

  #beginRow(attributes: Attributes): void {
    const { r, ht, hidden, s, customFormat, outlineLevel } = attributes;
    const row = r === undefined ? this.#row.row + 1 : Number(r) - 1;
    if (!Number.isInteger(row) || row < 0 || row >= ROWS)
      throw damaged(`A row has the number "${r}", which none can have.`);
    if (outlineLevel !== undefined && outlineLevel !== "0") this.outlined = true;
    this.#column = -1;
    this.#row = {
      row,
      cells: [],
      ...said({
        height: numberIn(ht),
        hidden: isOn(hidden) || undefined,
        style: isOn(customFormat) && s !== undefined ? this.#style(s) : undefined,
      }),
    };
  }

  #endRow(): void {
    const { row, cells, ...look } = this.#row;
    if (cells.length > 0 || Object.keys(look).length > 0)
      this.rows.push({ ...look, row, cells: inOrder(cells, "column") });
  }

  #beginCell(attributes: Attributes): void {
    const { r } = attributes;
    const place = r === undefined ? undefined : cellPlace(r);
    if (r !== undefined && place?.row !== this.#row.row)
      throw damaged(`A cell is called "${r}" in row ${this.#row.row + 1}.`);
    this.#column = place ? place.column : this.#column + 1;
    if (this.#column >= COLUMNS) throw damaged("A row has more cells than a sheet has columns.");
    if (++this.#context.cells.count > MOST_CELLS) {
      throw tooLarge(`It has more than ${MOST_CELLS / 1_000_000} million cells.`);
    }
    this.#cell = attributes;
    this.#formula = undefined;
    this.#formulaText = "";
    this.#value = "";
    this.#hasValue = false;
    this.#inline = undefined;
  }

  #endCell(): void {
    const { row } = this.#row;
    const column = this.#column;
    const style = this.#style(this.#cell.s);
    const rich = this.#richText();
    const value = rich ? rich.text : this.#plainValue(style);
    const formula = this.#formula && this.formulas.read(this.#formula, this.#formulaText, row, column);
    if (this.#formula?.t === "dataTable") this.dataTables++;
    if (this.#formula?.t === "shared" && formula === undefined) this.lostFormulas++;
    const spilled = this.#spills.covers(row, column);
    const cell: Growing<BookCell> = { column, value, style };
    if (formula !== undefined && !spilled) {
      cell.formula = formula;
      const spill = this.#spill(row, column);
      if (spill) cell.spill = spill;
    }
    if (spilled) cell.spilled = true;
    if (rich?.runs && formula === undefined) cell.runs = rich.runs;
    if (typeof value === "string" && formula === undefined && this.#context.quoted[style]) cell.quoted = true;
    this.#row.cells.push(cell);
  }

  #spill(row: number, column: number): BookCell["spill"] {
    if (this.#formula?.t !== "array") return undefined;
    const area = areaOf(this.#formula.ref ?? "") ?? { row, column, rows: 1, columns: 1 };
    if (area.row !== row || area.column !== column)
      throw damaged(`The cell ${this.#cell.r} fills an area that begins elsewhere.`);
    this.#spills.add(area);
    return { rows: area.rows, columns: area.columns, dynamic: this.#context.isDynamic(this.#cell.cm) };
  }

  #style(number = "0"): number {
    const style = Number(number);
    if (!this.#context.styles[style])
      throw damaged(`A cell looks like number ${number} of its looks, which are missing.`);
    return style;
  }

  #richText(): RichText | undefined {
    if (this.#cell.t === "inlineStr") return this.#inline ?? { text: "" };
    if (this.#cell.t !== "s" || this.#value.trim() === "") return undefined;
    const text = this.#context.texts[Number(this.#value)];
    if (!text) throw damaged(`The cell ${this.#cell.r ?? ""} holds a text that is missing in the file.`);
    return text;
  }

  #plainValue(style: number): CellValue {
    const { t = "n", r = "" } = this.#cell;
    if (t === "str") return this.#hasValue ? unescaped(this.#value) : null;
    const text = this.#value.trim();
    if (text === "") return null;
    if (t === "e") return { error: text };
    if (t === "b") return text === "1" || text === "true";
    const number = t === "d" ? dayNumber(text) : Number(text);
    if (number === undefined || !Number.isFinite(number)) throw damaged(`The cell ${r} holds a number that is none.`);
    const { from1904, styles } = this.#context;
    const isMoved = t !== "d" && from1904 && isDayFormat(styles[style]?.format ?? "", number);
    return isMoved ? number + DAYS_TO_1904 : number;
  }
}

/** As they should stand; of two in one place the later one counts. */
export function inOrder<K extends string, T extends { readonly [key in K]: number }>(list: readonly T[], key: K): T[] {
  const isInOrder = list.every((one, i) => i === 0 || (list[i - 1] as T)[key] < one[key]);
  if (isInOrder) return list as T[];
  return [...new Map(list.map((one) => [one[key], one])).values()].sort((a, b) => a[key] - b[key]);
}
