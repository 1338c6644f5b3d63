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
}

export interface TableModel {
  name: string;
  style: string;
  showBandedRows: boolean;
  showHeaders: boolean;
  showTotals: boolean;
  /** The whole table, heading and total row included. */
  readonly area: Area;
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
  readonly heights = new Map<number, number>();
  readonly merges: string[] = [];
  readonly page: Record<string, unknown> = {};
  frozenRows = 0;
  showGridlines = true;
  protected = false;

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

  /** Puts a cell's content in as if it were typed: null leaves it, "" clears it. */
  enter(row: number, column: number, input: unknown): void {
    if (input === null) return;
    const key = `${row},${column}`;
    if (input === "") this.cells.delete(key);
    else this.cells.set(key, this.book.typed(input));
  }
}

export class Book {
  readonly sheets: SheetModel[] = [];
  readonly names: string[] = [];
  readonly settings = new Map<string, unknown>();
  readonly listeners = new Map<string, Set<() => Promise<void>>>();
  /** The selected blocks of the active sheet. */
  selected: Omit<Area, "sheet">[] = [{ row: 0, column: 0, rows: 1, columns: 1 }];
  active = 0;
  protected = false;
  /** What a formula gives; Excel calculates, the stand-in is told. */
  answer: (formula: string) => Value = () => 0;
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
      name,
      area,
      style: "TableStyleMedium2",
      showBandedRows: true,
      showHeaders: true,
      showTotals: false,
    };
    area.sheet.tables.push(table);
    return table;
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
    const value = this.answer(formula);
    const type =
      typeof value === "number"
        ? "Double"
        : typeof value === "boolean"
          ? "Boolean"
          : value.startsWith("#")
            ? "Error"
            : "String";
    return { formula, value, type };
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

const overlap = (a: Area, b: Area): boolean =>
  a.sheet === b.sheet &&
  a.row < b.row + b.rows &&
  b.row < a.row + a.rows &&
  a.column < b.column + b.columns &&
  b.column < a.column + a.columns;
