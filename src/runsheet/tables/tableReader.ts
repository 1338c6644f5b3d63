import { plain } from "../../core/check/plain";
import { Fault } from "../../core/fault";
import type { CellValue } from "../../sheet/sheet";
import { bracketed } from "./headings/tidyHeading";
import { type Columns, type KindName, type Role, roleName } from "./kinds";

/** Rows of a table and the columns that were matched or chosen. */
export interface TableRows<K extends KindName> {
  readonly kind: K;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
  readonly columns: Columns<K>;
  /** Headings the maker said to leave out: they are not asked about. */
  readonly leftOut?: readonly string[];
  /** Rows that are not shown, from 0. */
  readonly hidden?: readonly number[] | undefined;
  /** Rows right below it that are no part of it, and whether the maker said to leave them out. */
  readonly below?: { readonly rows: number; readonly isLeftOut: boolean } | undefined;
}

/** Something to fix (`stops`) or to look at before pouring. */
export interface Problem {
  /** The table it is in; the one poured from when left out. */
  readonly kind?: KindName;
  /** The row below the heading, from 0. */
  readonly row?: number;
  readonly role?: Role;
  /** The heading of a column that nobody reads, where the problem asks about it. */
  readonly unread?: string;
  readonly text: string;
  readonly stops: boolean;
  /** Whether someone may be hurt: it stands before all others and is never cut. */
  readonly safety?: true;
  /** How many rows stand right below the table that this speaks of, to be taken in or left out. */
  readonly below?: number;
}

/** The core's names of arguments that are called otherwise here. */
const ROLE_OF: Readonly<Record<string, string>> = { waxFactor: "factor", weight: "fill" };

/** Reads the cells of one row by role and gathers what is wrong with them. */
export class RowReader<K extends KindName> {
  readonly wrong: Problem[] = [];

  constructor(
    private readonly table: TableRows<K>,
    readonly row: number,
  ) {}

  stop(role: Role<K>, text: string): void {
    if (this.wrong.some((one) => one.role === role)) return; // one sentence a cell is enough
    const { kind } = this.table;
    this.wrong.push({ kind, row: this.row, role, text: `${roleName(kind, role)}: ${text}`, stops: true });
  }

  /** Something of this row to look at, to be put beside what it concerns. */
  look(role: Role<K>, text: string): Problem {
    return { kind: this.table.kind, row: this.row, role, text, stops: false };
  }

  /** What the core makes of the cells; its fault is put under the column it speaks of. */
  check<T>(work: () => T): T | undefined {
    try {
      return work();
    } catch (fault) {
      const [, name, sentence] = (fault instanceof Fault && /^(\w+): (.*)$/s.exec(fault.message)) || [];
      if (name === undefined || sentence === undefined) throw fault;
      this.stop((ROLE_OF[name] ?? name) as Role<K>, sentence);
      return undefined;
    }
  }

  /** Whether the table has a column for it. */
  has(role: Role<K>): boolean {
    return columnOf(this.table, role) !== undefined;
  }

  isBlank(role: Role<K>): boolean {
    const cell = this.cellOf(role);
    return cell === null || (typeof cell === "string" && cell.trim() === "");
  }

  /** The number in a cell; undefined when it is blank, or wrong and noted. */
  number(role: Role<K>): number | undefined {
    const cell = this.cellOf(role);
    if (typeof cell === "number") return cell;
    if (this.isBlank(role) || this.isError(role, cell)) return undefined;
    const shown = String(cell).trim().slice(0, 40);
    const isLike = /^[-+]?(\d+\.?\d*|\.\d+)\s*%?$/.test(shown);
    this.stop(
      role,
      isLike
        ? `"${shown}" is kept as text; type it again; if it stays text, give the cell another number format first`
        : `"${shown}" is not a number; write a plain number`,
    );
    return undefined;
  }

  /** The text in a cell, without the spaces around it; empty when it is blank, or an error and noted. */
  text(role: Role<K>): string {
    const cell = this.cellOf(role);
    if (cell === null || this.isError(role, cell)) return "";
    return typeof cell === "number" ? plain(cell) : String(cell).trim();
  }

  /** What stands in brackets in the heading of a role, as a rule its unit: `C` of `Pour at (C)`; empty when none. */
  unit(role: Role<K>): string {
    return bracketed(headingOf(this.table, role))[0] ?? "";
  }

  /** The code of the error that a cell shows, such as `#N/A`; empty when it shows none. */
  errorOf(role: Role<K>): string {
    const cell = this.cellOf(role);
    return typeof cell === "object" && cell !== null ? cell.error : "";
  }

  private cellOf(role: Role<K>): CellValue {
    const column = columnOf(this.table, role);
    return column === undefined ? null : (this.table.rows[this.row]?.[column] ?? null);
  }

  private isError(role: Role<K>, cell: CellValue): boolean {
    if (cell === null || typeof cell !== "object") return false;
    this.stop(role, `the cell shows ${cell.error}; fix it first`);
    return true;
  }
}

/** The heading of a role's column; empty where it has none. */
export function headingOf<K extends KindName>(table: TableRows<K>, role: Role<K>): string {
  const column = columnOf(table, role);
  return (column !== undefined && table.headings[column]) || "";
}

function columnOf<K extends KindName>({ columns }: TableRows<K>, role: Role<K>): number | undefined {
  return (columns as Readonly<Record<string, number | undefined>>)[role];
}

/** A reader for each row of a table. */
export function readersOf<K extends KindName>(table: TableRows<K>): RowReader<K>[] {
  return table.rows.map((_, row) => new RowReader(table, row));
}

/** Names are the same whatever their case, the spaces around them, and how many of what sort stand between words. */
export const sameName = (name: string): string =>
  name
    .normalize("NFC")
    .replace(/[\s\u200b\u2060]+/g, " ")
    .trim()
    .toLowerCase();
