import { HyperFormula } from "hyperformula";

type Value = string | number | null;

/** A table of a second calculation: what its columns work out, and the rows with what is typed into them. */
export interface Sums {
  /** By heading: a formula, or nothing where it is typed. */
  readonly columns: Readonly<Record<string, string | null>>;
  readonly rows: readonly Readonly<Record<string, Value>>[];
}

/**
 * Tables of plain formulas, worked out by a general spreadsheet engine. In a formula `{Count}` is the cell of its own
 * row, `{^Count}` the column above it, and `Lines[Count]` a whole column of a table, or its cell where there is one row.
 */
export class PlainSums {
  private readonly engine: HyperFormula;

  constructor(private readonly tables: Readonly<Record<string, Sums>>) {
    const sheets = Object.entries(tables).map(([name, { columns, rows }]) => {
      const body = rows.map((row, r) =>
        Object.entries(columns).map(([heading, formula]) => {
          if (row[heading] !== undefined) return row[heading];
          return formula === null ? null : this.formula(name, formula, r + 2);
        }),
      );
      return [name, [Object.keys(columns), ...body]] as [string, Value[][]];
    });
    this.engine = HyperFormula.buildFromSheets(Object.fromEntries(sheets), {
      licenseKey: "gpl-v3",
      // Numbers as they are: its ten digits would hide the rest.
      smartRounding: false,
    });
  }

  /** The number in a column of the one row that has these values. */
  of(table: string, where: Readonly<Record<string, Value>>, heading: string): number {
    const [value, ...more] = this.all(table, where, heading);
    if (value === undefined || more.length > 0) {
      throw new Error(`${more.length + 1} rows of ${table} for ${JSON.stringify(where)}`);
    }
    return value;
  }

  /** The numbers in a column of all rows that have these values. */
  all(table: string, where: Readonly<Record<string, Value>>, heading: string): number[] {
    const { rows } = this.table(table);
    return rows.flatMap((row, r) => {
      if (!Object.entries(where).every(([key, value]) => row[key] === value)) return [];
      const place = { sheet: this.engine.getSheetId(table) as number, row: r + 1, col: this.columnOf(table, heading) };
      const value = this.engine.getCellValue(place);
      if (typeof value !== "number") throw new Error(`${table}, ${heading}, row ${r + 2}: ${JSON.stringify(value)}`);
      return value;
    });
  }

  private formula(own: string, text: string, row: number): string {
    const inRow = text
      .replace(
        /\{\^(\w+)\}/g,
        (_, heading: string) => `${this.letter(own, heading)}$1:${this.letter(own, heading)}${row - 1}`,
      )
      .replace(/\{(\w+)\}/g, (_, heading: string) => `${this.letter(own, heading)}${row}`);
    return inRow.replace(/(\w+)\[(\w+)\]/g, (_, table: string, heading: string) => {
      const [letter, last] = [this.letter(table, heading), this.table(table).rows.length + 1];
      return last === 2 ? `${table}!$${letter}$2` : `${table}!$${letter}$2:$${letter}$${last}`;
    });
  }

  private table(name: string): Sums {
    const table = this.tables[name];
    if (!table) throw new Error(`no table ${name}`);
    return table;
  }

  private columnOf(table: string, heading: string): number {
    const column = Object.keys(this.table(table).columns).indexOf(heading);
    if (column < 0) throw new Error(`no column ${heading} in ${table}`);
    return column;
  }

  private letter(table: string, heading: string): string {
    return String.fromCharCode(65 + this.columnOf(table, heading));
  }
}
