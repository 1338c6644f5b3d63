import { columnLetters } from "../../../src/sheet/columnLetters";

/** A workbook as the stand-in keeps it, and what Excel does to what is put into its cells. */

export class OfficeError extends Error {
  constructor(
    readonly code: string,
    message = `Office says ${code}.`,
  ) {
    super(message);
  }
}

export type Value = string | number | boolean;

export interface CellModel {
  readonly formula: string | null;
  readonly value: Value;
  readonly type: "String" | "Double" | "Boolean" | "Error";
  /** What a formula gives when it is more than one cell; its first is the cell's own. */
  readonly spill?: readonly (readonly Value[])[];
}

export interface TableModel {
  readonly id: string;
  name: string;
  style: string;
  showBandedRows: boolean;
  showHeaders: boolean;
  showTotals: boolean;
  isFiltered: boolean;
  /** The whole table, heading and total row included. */
  area: Area;
}

/** A block of cells of a sheet. */
export interface Area {
  readonly sheet: SheetModel;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export class SheetModel {
  readonly cells = new Map<string, CellModel>();
  readonly tables: TableModel[] = [];
  /** What each cell looks like: `font.bold`, `border.top`, `numberFormat` and so on, by cell. */
  readonly looks = new Map<string, Record<string, unknown>>();
  readonly widths = new Map<number, number>();
  readonly hidden = new Set<number>();
  readonly hiddenRows = new Set<number>();
  readonly heights = new Map<number, number>();
  merges: string[] = [];
  readonly page: Record<string, unknown> = {};
  frozenRows = 0;
  showGridlines = true;
  protected = false;
  isFiltered = false;

  constructor(
    readonly book: Book,
    readonly id: string,
    public name: string,
  ) {}

  cell(row: number, column: number): CellModel | undefined {
    return this.cells.get(`${row},${column}`);
  }

  look(row: number, column: number): Record<string, unknown> {
    return this.looks.get(`${row},${column}`) ?? {};
  }

  paint(row: number, column: number, what: string, value: unknown): void {
    this.looks.set(`${row},${column}`, { ...this.look(row, column), [what]: value });
  }

  /** All that the sheet shows: what stands in its cells, and what spills into those that are empty. */
  shown(): Map<string, CellModel> {
    const shown = new Map(this.cells);
    for (const [key, cell] of this.cells) {
      if (!cell.spill) continue;
      const [row, column] = key.split(",").map(Number) as [number, number];
      const spilled = cell.spill.flatMap((values, r) =>
        values.map((value, c) => [`${row + r},${column + c}`, result(null, value)] as const),
      );
      if (spilled.slice(1).some(([at]) => this.cells.has(at))) shown.set(key, { ...cell, ...result(null, "#SPILL!") });
      else for (const [at, one] of spilled.slice(1)) shown.set(at, one);
    }
    return shown;
  }

  /** Puts a cell's content in as if it were typed: null leaves it, "" clears it. */
  enter(row: number, column: number, input: unknown): void {
    if (input === null) return;
    const key = `${row},${column}`;
    if (input === "") this.cells.delete(key);
    else this.cells.set(key, this.book.typed(input));
  }

  /** A cell's content with the references of its formula told from where it stands. */
  r1c1(row: number, column: number): string {
    const { formula, value = "" } = this.cell(row, column) ?? {};
    if (!formula) return String(value);
    return formula.replace(A1, (_, fixedColumn, letters, fixedRow, digits) => {
      const [r, c] = [Number(digits) - 1, columnOf(letters)];
      return `R${fixedRow ? r + 1 : `[${r - row}]`}C${fixedColumn ? c + 1 : `[${c - column}]`}`;
    });
  }

  /** As `enter`, with the references told from where the cell stands. */
  enterR1C1(row: number, column: number, input: unknown): void {
    const content =
      typeof input !== "string" || !input.startsWith("=")
        ? input
        : input.replace(R1C1, (_, r: string, c: string) => {
            const at = (text: string, from: number) =>
              text.startsWith("[") ? from + Number(text.slice(1, -1)) : Number(text) - 1;
            const [toRow, toColumn] = [at(r, row), at(c, column)];
            return `${c.startsWith("[") ? "" : "$"}${columnLetters(toColumn)}${r.startsWith("[") ? "" : "$"}${toRow + 1}`;
          });
    this.enter(row, column, content);
  }

  /**
   * Moves the cells in a table's columns from a row on, down or up, as Excel does when the table grows or shrinks.
   * It refuses to tear another table or merged cells apart, and to push anything off the sheet.
   */
  shift(growing: Area, row: number, by: number): void {
    const { column, columns } = growing;
    const isMoved = (r: number, c: number): boolean => r >= row && c >= column && c < column + columns;
    const isMovedWhole = (at: Omit<Area, "sheet">): boolean => {
      const corners = [isMoved(at.row, at.column), isMoved(at.row + at.rows - 1, at.column + at.columns - 1)];
      const touches = at.row + at.rows > row && at.column < column + columns && column < at.column + at.columns;
      if (touches && corners.includes(false)) throw new OfficeError("InsertDeleteConflict");
      return touches;
    };
    const merges = this.merges.map((merge) => {
      const [r, c, rows, across] = (merge.match(/\d+/g) ?? []).map(Number) as [number, number, number, number];
      const isWhole = isMovedWhole({ row: r, column: c, rows, columns: across });
      return isWhole ? merge.replace(/^\d+/, String(r + by)) : merge;
    });
    const tables = this.tables.filter(({ area }) => area !== growing && isMovedWhole(area));
    for (const map of [this.cells, this.looks] as Map<string, unknown>[]) {
      const entries = [...map].map(([key, value]) => {
        const [r, c] = key.split(",").map(Number) as [number, number];
        if (isMoved(r, c) && r + by >= ROWS) throw new OfficeError("NonBlankCellOffSheet");
        return [isMoved(r, c) ? `${r + by},${c}` : key, value] as const;
      });
      map.clear();
      for (const [key, value] of entries) map.set(key, value);
    }
    this.merges = merges;
    for (const table of tables) table.area = { ...table.area, row: table.area.row + by };
  }
}

const ROWS = 1_048_576;
/** References to single cells, as the tests write them. */
const A1 = /(?<![A-Za-z\d[])(\$?)([A-Z]{1,2})(\$?)(\d+)(?![\w(])/g;
const R1C1 = /(?<![A-Za-z\d])R(\[-?\d+\]|\d+)C(\[-?\d+\]|\d+)/g;

/** A column from 0 by its letters. */
export const columnOf = (letters: string): number =>
  [...letters].reduce((sum, one) => sum * 26 + one.charCodeAt(0) - 64, 0) - 1;

export class Book {
  readonly sheets: SheetModel[] = [];
  readonly names: string[] = [];
  readonly settings = new Map<string, unknown>();
  /** How many want to be told of each event. */
  readonly told = new Map<string, number>();
  /** How they are told. */
  onEvent: (event: string) => Promise<void> = async () => {};
  /** The selected blocks of the active sheet. */
  selected: Omit<Area, "sheet">[] = [{ row: 0, column: 0, rows: 1, columns: 1 }];
  active = 0;
  protected = false;
  calculationMode: "Automatic" | "AutomaticExceptTables" | "Manual" = "Automatic";
  calculationState: "Done" | "Calculating" | "Pending" = "Done";
  from1904 = false;
  /** Until the end of a sync: formulas that are entered meanwhile show 0 until somebody asks for a calculation. */
  isSuspended = false;
  /** The events this Excel is too old to know. */
  readonly unknown = new Set<string>();
  /** Without one Excel may refuse to set pages up. */
  hasPrinter = true;
  /** Whether what a formula gives comes late: until then its cell keeps what it shows, and says nothing of it. */
  isLate: (formula: string) => boolean = () => false;
  /**
   * What Excel does of its own in a table's columns, when the table grows and all cells have one formula, and when a
   * formula is entered: it fills the blank cells, or all of them, as desktop Excel may; or nothing, where the user has
   * switched that off.
   */
  fills: "blank" | "all" | "none" = "blank";
  /** What a formula gives; Excel calculates, the stand-in is told. Rows of values spill. */
  answer: (formula: string) => Value | Value[][] = () => 0;
  /** Whether the add-in starts with the workbook, in Excel's words. */
  startState = "Inactive";
  private made = 0;

  add(name: string): SheetModel {
    this.checkName(name);
    const sheet = new SheetModel(this, `{${++this.made}}`, name);
    this.sheets.push(sheet);
    return sheet;
  }

  /** Excel's rules for a sheet's name. */
  checkName(name: string, own?: SheetModel): void {
    const taken = this.sheets.some((sheet) => sheet !== own && sheet.name.toLowerCase() === name.toLowerCase());
    if (taken) throw new OfficeError("ItemAlreadyExists");
    const allowed = /^(?!')[^:\\/?*[\]]{1,31}(?<!')$/.test(name) && name.toLowerCase() !== "history";
    if (!allowed) throw new OfficeError("InvalidArgument", `A sheet cannot be named "${name}".`);
  }

  /** Works all formulas out again, as F9 does; those that come late keep what they show. */
  calculate(): void {
    this.workOut((formula) => !this.isLate(formula));
  }

  /** What comes late has come. */
  deliver(): Promise<void> {
    this.workOut(this.isLate);
    return this.fire("worksheets.onCalculated");
  }

  private workOut(isDue: (formula: string) => boolean): void {
    for (const { cells } of this.sheets) {
      for (const [key, { formula }] of cells)
        if (formula !== null && isDue(formula)) cells.set(key, this.formula(formula));
    }
  }

  /** Fills the columns of tables into which formulas were entered, but for cells that were entered along with them. */
  fillColumns(area: Area, entered: (row: number, column: number) => unknown): void {
    const { sheet } = area;
    for (const table of sheet.tables) {
      const body = this.body(table);
      const isEntered = (row: number, column: number): boolean =>
        overlap(area, at(sheet, row, column)) && entered(row, column) !== null;
      for (let column = body.column; column < body.column + body.columns; column++) {
        const rows = Array.from({ length: body.rows }, (_, i) => body.row + i);
        const first = rows.find((row) => isEntered(row, column) && sheet.cell(row, column)?.formula);
        const rest = rows.filter((row) => !isEntered(row, column));
        const isBlank = rest.every((row) => !sheet.cell(row, column));
        if (first === undefined || this.fills === "none" || (this.fills === "blank" && !isBlank)) continue;
        for (const row of rest) sheet.enterR1C1(row, column, sheet.r1c1(first, column));
      }
    }
  }

  tell(event: string): void {
    if (this.unknown.has(event)) throw new OfficeError("ApiNotFound");
    this.told.set(event, (this.told.get(event) ?? 0) + 1);
  }

  tellNoMore(event: string): void {
    this.told.set(event, (this.told.get(event) ?? 1) - 1);
  }

  /** Something has happened: tells those who want to know. */
  async fire(event: string): Promise<void> {
    if (this.told.get(event)) await this.onEvent(event);
  }

  find(nameOrId: string): SheetModel | null {
    const wanted = nameOrId.toLowerCase();
    return this.sheets.find(({ name, id }) => name.toLowerCase() === wanted || id === nameOrId) ?? null;
  }

  tables(): TableModel[] {
    return this.sheets.flatMap(({ tables }) => tables);
  }

  addTable(area: Area, name = `Table${this.tables().length + 1}`): TableModel {
    if (this.tables().some((table) => overlap(table.area, area))) throw new OfficeError("MergedRangeConflict");
    const table: TableModel = {
      id: `{T${++this.made}}`,
      name,
      area,
      style: "TableStyleMedium2",
      showBandedRows: true,
      showHeaders: true,
      showTotals: false,
      isFiltered: false,
    };
    area.sheet.tables.push(table);
    return table;
  }

  /** The rows of a table between its heading and its total. */
  body({ area, showHeaders, showTotals }: TableModel): Area {
    const head = showHeaders ? 1 : 0;
    return { ...area, row: area.row + head, rows: area.rows - head - (showTotals ? 1 : 0) };
  }

  /**
   * Adds a row at the end of a table. Without values it gets the formula of each column whose cells all have the
   * same; with values it gets those, and null, of which the documents say nothing here, leaves a cell blank.
   */
  addRow(table: TableModel, values?: readonly unknown[]): void {
    const { sheet } = table.area;
    if (sheet.protected) throw new OfficeError("AccessDenied");
    if (table.isFiltered) throw new OfficeError("FilteredRangeConflict");
    const { row: top, column, rows, columns } = this.body(table);
    if (values && values.length !== columns) throw new OfficeError("InvalidArgument");
    const row = top + rows;
    sheet.shift(table.area, row, 1);
    table.area = { ...table.area, rows: table.area.rows + 1 };
    for (let c = column; c < column + columns; c++) {
      const above = Array.from({ length: rows }, (_, i) => sheet.cell(top + i, c)?.formula);
      const formula = above.every((one) => one === above[0]) ? above[0] : undefined;
      sheet.enter(row, c, values ? values[c - column] : (formula ?? null));
      const look = sheet.looks.get(`${row - 1},${c}`);
      if (look) sheet.looks.set(`${row},${c}`, look);
    }
  }

  /** Lets a table end elsewhere; nothing moves. */
  resize(table: TableModel, to: Area): void {
    const { sheet, row, column, columns } = table.area;
    if (sheet.protected) throw new OfficeError("AccessDenied");
    const isFitting = to.sheet === sheet && to.row === row && to.column === column && to.columns === columns;
    if (!isFitting || table.showTotals) throw new OfficeError("InvalidArgument");
    if (this.tables().some((one) => one !== table && overlap(one.area, to))) throw new OfficeError("InvalidArgument");
    const { row: top, rows } = this.body(table);
    table.area = to;
    for (let c = column; c < column + columns; c++) {
      const above = Array.from({ length: rows }, (_, i) => sheet.r1c1(top + i, c));
      const [formula] = above;
      if (this.fills === "none" || !above.every((one) => one === formula && one.startsWith("="))) continue;
      for (let r = top + rows; r < to.row + to.rows; r++) {
        if (this.fills === "all" || !sheet.cell(r, c)) sheet.enterR1C1(r, c, formula);
      }
    }
  }

  /** Deletes a row of a table; what stands below moves up. */
  deleteRow(table: TableModel, index: number): void {
    const { sheet, row, column, rows, columns } = this.body(table);
    if (sheet.protected) throw new OfficeError("AccessDenied");
    if (index < 0 || index >= rows || rows === 1) throw new OfficeError("InvalidArgument");
    for (let c = column; c < column + columns; c++) {
      sheet.cells.delete(`${row + index},${c}`);
      sheet.looks.delete(`${row + index},${c}`);
    }
    sheet.shift(table.area, row + index + 1, -1);
    table.area = { ...table.area, rows: table.area.rows - 1 };
  }

  renameTable(table: TableModel, name: string): void {
    const used = [
      ...this.tables()
        .filter((one) => one !== table)
        .map((one) => one.name),
      ...this.names,
    ];
    if (used.some((one) => one.toLowerCase() === name.toLowerCase())) throw new OfficeError("InvalidArgument");
    table.name = name;
  }

  /** What becomes of something typed into a cell of General format. */
  typed(input: unknown): CellModel {
    if (typeof input === "number") {
      if (!Number.isFinite(input)) throw new OfficeError("InvalidArgument");
      return { formula: null, value: input, type: "Double" };
    }
    if (typeof input === "boolean") return { formula: null, value: input, type: "Boolean" };
    const text = String(input);
    if (text.length > 32_767) throw new OfficeError("InvalidArgument", "The text is too long.");
    if (text.startsWith("'")) return { formula: null, value: text.slice(1), type: "String" };
    const number = Number(text.replace(/%$/, ""));
    if (text.trim() !== "" && Number.isFinite(number)) return { formula: null, value: number, type: "Double" };
    if (/^[=+\-@]/.test(text)) return this.formula(text.startsWith("=") ? text : `=${text}`);
    if (/^\d+[/-]\d+([/-]\d+)?$/.test(text)) return { formula: null, value: 46_000, type: "Double" };
    if (/^(true|false)$/i.test(text)) return { formula: null, value: /^true$/i.test(text), type: "Boolean" };
    if (/^#(N\/A|NAME\?|VALUE!|REF!|NUM!|NULL!|DIV\/0!)$/.test(text)) {
      return { formula: null, value: text, type: "Error" };
    }
    return { formula: null, value: text, type: "String" };
  }

  private formula(formula: string): CellModel {
    const known = new Set(this.tables().map(({ name }) => name.toLowerCase()));
    for (const [, name = ""] of formula.matchAll(/(\w+)\[/g)) {
      if (!known.has(name.toLowerCase())) throw new OfficeError("InvalidArgument", `No table ${name}.`);
    }
    const value = this.isSuspended ? 0 : this.answer(formula);
    if (!Array.isArray(value)) return result(formula, value);
    return { ...result(formula, value[0]?.[0] ?? 0), spill: value };
  }

  /** All that a user could see or lose, for comparing. */
  snapshot(): unknown {
    return structuredClone({
      sheets: this.sheets.map(({ book: _, tables, ...sheet }) => ({
        ...sheet,
        tables: tables.map(({ area: { sheet: __, ...area }, ...table }) => ({ ...table, area })),
      })),
      names: this.names,
      settings: this.settings,
      active: this.sheets[this.active]?.id,
    });
  }
}

/** A cell that shows a formula's result. */
function result(formula: string | null, value: Value): CellModel {
  if (typeof value === "number") return { formula, value, type: "Double" };
  if (typeof value === "boolean") return { formula, value, type: "Boolean" };
  return { formula, value, type: value.startsWith("#") ? "Error" : "String" };
}

const at = (sheet: SheetModel, row: number, column: number): Area => ({ sheet, row, column, rows: 1, columns: 1 });

const overlap = (a: Area, b: Area): boolean =>
  a.sheet === b.sheet &&
  a.row < b.row + b.rows &&
  b.row < a.row + a.rows &&
  a.column < b.column + b.columns &&
  b.column < a.column + a.columns;
