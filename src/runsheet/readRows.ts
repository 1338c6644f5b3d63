import { aboveZero } from "../core/check/aboveZero";
import { plain } from "../core/check/plain";
import { rate } from "../core/check/rate";
import { Fault } from "../core/fault";
import { fillWeight } from "../core/fill/fillWeight";
import { type Basis, basisOf } from "../core/scent/basis";
import type { CellValue } from "../sheet/sheet";
import { type Columns, ROLE_NAMES, type Role } from "./columns";
import type { Settings } from "./settings";

/** A row of the table that is to be poured. */
export interface PourRow {
  /** Its place below the heading, from 0. */
  readonly row: number;
  readonly vessel: string;
  readonly quantity: number;
  readonly fill: number;
  /** Empty when the candle has no scent. */
  readonly scent: string;
  readonly load: number;
  readonly basis: Basis;
}

/** Something to mend (`stops`) or to look at before pouring. */
export interface Problem {
  readonly row?: number;
  readonly role?: Role;
  readonly text: string;
  readonly stops: boolean;
}

/** The rows of a table that are to be poured, and what is wrong with the others. Rows with no quantity are left out. */
export function readRows(
  rows: readonly (readonly CellValue[])[],
  columns: Columns,
  settings: Settings,
): { rows: PourRow[]; problems: Problem[] } {
  const good: PourRow[] = [];
  const problems: Problem[] = [];
  for (const [row, cells] of rows.entries()) {
    const reader = new RowReader(cells, columns);
    if (reader.isBlank("quantity") || reader.number("quantity") === 0) continue;
    const found = readRow(reader, columns, settings);
    if (found) good.push({ row, ...found });
    problems.push(...reader.wrong.map(({ role, text }) => ({ row, role, text, stops: true })));
  }
  return { rows: good, problems };
}

function readRow(reader: RowReader, columns: Columns, settings: Settings): Omit<PourRow, "row"> | undefined {
  const vessel = reader.text("vessel");
  if (vessel === "") reader.stop("vessel", "the cell is blank; give the vessel a name");
  const quantity = reader.number("quantity");
  if (quantity !== undefined && !(Number.isInteger(quantity) && quantity > 0)) {
    reader.stop("quantity", `${plain(quantity)} is not a whole number above 0`);
  }
  const fill = fillOf(reader, settings);
  const scent = reader.text("scent");
  // A row that names no scent where others do is poured without: a load is never guessed onto it.
  const usual = columns.scent !== undefined && scent === "" ? 0 : settings.load;
  const load = reader.check(() => rate("load", reader.number("load") ?? usual));
  const basis = reader.check(() => basisOf("basis", reader.text("basis") || settings.basis));
  if (reader.wrong.length > 0) return undefined;
  if (quantity === undefined || fill === undefined || load === undefined || basis === undefined) return undefined;
  return { vessel, quantity, fill, scent, load, basis };
}

/** The fill of a row: its own fill weight, else its water weight times its own or the usual factor. */
function fillOf(reader: RowReader, settings: Settings): number | undefined {
  if (reader.isBlank("fill") && reader.isBlank("water")) {
    reader.stop("fill", "neither a fill weight nor a water weight is given; weigh the water the vessel holds");
    return undefined;
  }
  if (!reader.isBlank("fill")) {
    const fill = reader.number("fill");
    return fill === undefined ? undefined : reader.check(() => aboveZero("fill", fill));
  }
  const [water, factor] = [reader.number("water"), reader.number("factor") ?? settings.waxFactor];
  return water === undefined ? undefined : reader.check(() => fillWeight(aboveZero("water", water), factor));
}

/** The core's names of arguments that are called otherwise here. */
const ROLE_OF: Readonly<Record<string, Role>> = { waxFactor: "factor" };

/** Reads the cells of one row by role and gathers what is wrong with them. */
class RowReader {
  readonly wrong: { readonly role: Role; readonly text: string }[] = [];

  constructor(
    private readonly cells: readonly CellValue[],
    private readonly columns: Columns,
  ) {}

  stop(role: Role, text: string): void {
    if (this.wrong.some((one) => one.role === role)) return; // one sentence a cell is enough
    this.wrong.push({ role, text: `${ROLE_NAMES[role]}: ${text}` });
  }

  /** What the core makes of the cells; its fault is put under the column it speaks of. */
  check<T>(work: () => T): T | undefined {
    try {
      return work();
    } catch (fault) {
      const [, name, sentence] = (fault instanceof Fault && /^(\w+): (.*)$/s.exec(fault.message)) || [];
      if (name === undefined || sentence === undefined) throw fault;
      this.stop(ROLE_OF[name] ?? (name as Role), sentence);
      return undefined;
    }
  }

  isBlank(role: Role): boolean {
    const cell = this.cellOf(role);
    return cell === null || (typeof cell === "string" && cell.trim() === "");
  }

  /** The number in a cell; undefined when it is blank, or wrong and noted. */
  number(role: Role): number | undefined {
    const cell = this.cellOf(role);
    if (typeof cell === "number") return cell;
    if (this.isBlank(role) || this.isError(role, cell)) return undefined;
    this.stop(role, `"${String(cell).slice(0, 40)}" is not a number; write a plain number`);
    return undefined;
  }

  /** The text in a cell, without the spaces around it; empty when it is blank, or an error and noted. */
  text(role: Role): string {
    const cell = this.cellOf(role);
    return cell === null || this.isError(role, cell) ? "" : String(cell).trim();
  }

  private cellOf(role: Role): CellValue {
    const column = this.columns[role];
    return column === undefined ? null : (this.cells[column] ?? null);
  }

  private isError(role: Role, cell: CellValue): boolean {
    if (cell === null || typeof cell !== "object") return false;
    this.stop(role, `the cell shows ${cell.error}; mend it first`);
    return true;
  }
}
