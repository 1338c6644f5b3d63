/**
 * The one place where cells become values and values become cells: reading, blanks, errors, broadcasting,
 * and the cleaning of results. The function files only name their arguments and the core function they expose.
 */

import { plain } from "../core/check/plain";
import { wrong } from "../core/check/wrong";
import { Fault } from "../core/fault";
import { type UnitKind, unitsInWords } from "../core/units/spellings";

/** What a spreadsheet hands over for an argument: a range, one value, or nothing. */
export type Cells = any;
/** What a function hands back: rows of numbers, texts and `CustomFunctions.Error`. */
export type Rows = any[][];

type Result = number | string | CustomFunctions.Error;
/** A cell as read: a value, nothing (blank), or what is thrown for it: the error that came in, or a fault. */
type Read<T> = { readonly value: T | undefined } | { readonly fault: unknown };

/** An argument of a function: its cells, how one is read, and whether a blank takes the core's default. */
interface Argument<T> {
  readonly name: string;
  readonly grid: readonly (readonly unknown[])[];
  readonly optional: boolean;
  /** What to do where nothing is given and there is no default. */
  readonly hint?: string;
  readonly read: (name: string, cell: unknown) => T;
}

type Arguments<V extends unknown[]> = { readonly [K in keyof V]: Argument<V[K]> };

// --- arguments -------------------------------------------------------------------------------------------------

/** An argument of numbers that must be there. */
export const number = (name: string, cells: Cells): Argument<number> => argument(name, cells, readNumber, false);
/** An argument of dates that must be there, as the serial numbers a spreadsheet keeps. */
export const date = (name: string, cells: Cells): Argument<number> => argument(name, cells, readDate, false);
/** An argument of texts that must be there. */
export const text = (name: string, cells: Cells): Argument<string> => argument(name, cells, readText, false);
/** An argument of units that must be there, of one of these kinds. */
export const unit = (name: string, cells: Cells, ...kinds: readonly UnitKind[]): Argument<string> => ({
  ...text(name, cells),
  hint: `write ${unitsInWords(...kinds)}`,
});
/** An argument of numbers where a blank is left to the core. */
export const numberOr = (name: string, cells: Cells): Argument<number | undefined> =>
  argument<number | undefined>(name, cells, readNumber, true);
/** An argument of names, which stay what they are: a number, a date or a text. */
export const nameOr = (name: string, cells: Cells): Argument<number | string | undefined> =>
  argument<number | string | undefined>(name, cells, readName, true);
/** An argument of texts where a blank is left to the core. */
export const textOr = (name: string, cells: Cells): Argument<string | undefined> =>
  argument<string | undefined>(name, cells, readText, true);

function argument<T>(name: string, cells: Cells, read: Argument<T>["read"], optional: boolean): Argument<T> {
  const grid = Array.isArray(cells) ? cells.map((row) => (Array.isArray(row) ? row : [row])) : [[cells]];
  return { name, grid: grid.length > 0 && grid[0]?.length ? grid : [[null]], optional, read };
}

// --- reading one cell ------------------------------------------------------------------------------------------

const ERRORS = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"];
/** A spreadsheet keeps 15 digits: beyond them a number is a slip, and its products would run out of range. */
const LARGEST = 1e15;

/** A rich value stands for its basic one: `{ type: "Double", basicValue: 12 }` is 12. */
function basic(cell: unknown): unknown {
  return typeof cell === "object" && cell !== null && "basicValue" in cell ? cell.basicValue : cell;
}

/** The error a cell holds, whichever way the host passes it: as an error object, a rich value or its text. */
function errorIn(cell: unknown): CustomFunctions.Error | undefined {
  if (cell instanceof CustomFunctions.Error) return cell;
  const code = typeof cell === "object" && cell !== null && "code" in cell ? cell.code : basic(cell);
  if (typeof code === "string" && ERRORS.includes(code)) {
    return new CustomFunctions.Error(code as CustomFunctions.ErrorCode);
  }
  const isRich = typeof cell === "object" && cell !== null && "type" in cell && cell.type === "Error";
  // Kinds such as #SPILL! cannot be handed on as they are.
  return isRich ? toError(new Fault("value", `the cell shows ${String(code)}; fix it first`)) : undefined;
}

function readNumber(name: string, cell: unknown): number {
  if (typeof cell === "number" && Math.abs(cell) <= LARGEST) return cell;
  if (typeof cell === "number" && Number.isFinite(cell))
    throw wrong(name, `${plain(cell)} is too large; check its digits`);
  if (typeof cell === "string") {
    if (cell.trim() === "") throw wrong(name, "the cell holds only spaces; clear it or write a number");
    throw wrong(name, `"${cell.slice(0, 40)}" is text; write a plain number`);
  }
  const shown = typeof cell === "boolean" ? String(cell).toUpperCase() : "this kind of cell";
  throw wrong(name, `${shown} is not a number; write a plain number`);
}

function readDate(name: string, cell: unknown): number {
  if (typeof cell !== "string" || cell.trim() === "") return readNumber(name, cell);
  throw wrong(name, `"${cell.slice(0, 40)}" is text; write it as a date, such as =DATE(2026,11,26)`);
}

function readText(name: string, cell: unknown): string {
  if (typeof cell === "object" || (typeof cell === "number" && !Number.isFinite(cell))) {
    throw wrong(name, "this kind of cell cannot be read; write plain text");
  }
  return typeof cell === "number" ? plain(cell) : String(cell);
}

const readName = (name: string, cell: unknown): number | string =>
  typeof cell === "number" && Number.isFinite(cell) ? cell : readText(name, cell);

function readCell<T>({ name, optional, hint, read }: Argument<T>, cell: unknown): Read<T> {
  const error = errorIn(cell);
  if (error) return { fault: error };
  const value = basic(cell);
  if (isBlank(cell)) {
    return optional
      ? { value: undefined }
      : { fault: wrong(name, hint ? `nothing is given; ${hint}` : "the cell is blank; fill it in") };
  }
  try {
    return { value: read(name, value) };
  } catch (fault) {
    return { fault };
  }
}

function isBlank(cell: unknown): boolean {
  const value = basic(cell);
  return value === null || value === undefined || value === "";
}

// --- results ---------------------------------------------------------------------------------------------------

export function toError(fault: unknown): CustomFunctions.Error {
  if (fault instanceof CustomFunctions.Error) return fault;
  const code =
    fault instanceof Fault && fault.kind === "none"
      ? CustomFunctions.ErrorCode.notAvailable
      : CustomFunctions.ErrorCode.invalidValue;
  return new CustomFunctions.Error(code, fault instanceof Error ? fault.message : String(fault));
}

/** A result as a cell may hold it: never NaN, Infinity or -0. */
function clean(result: number | string): Result {
  if (typeof result === "string") return result;
  if (Number.isFinite(result)) return result + 0;
  return toError(new Fault("value", "the answer is too large to write; check the inputs"));
}

function attempt(work: () => readonly (number | string)[]): Result[] | CustomFunctions.Error {
  try {
    return work().map(clean);
  } catch (fault) {
    return toError(fault);
  }
}

// --- the ways a function works on its cells ----------------------------------------------------------------------

/**
 * Works cell by cell and broadcasts: one row or one column is repeated to the size of the largest argument, and
 * a cell beyond a shorter one is #N/A. Where the first argument (or `key`, -1 for none) is blank the result is blank.
 * `work` may give several values: they stand side by side.
 */
export function eachCell<V extends unknown[]>(
  args: Arguments<V>,
  work: (...values: V) => number | string | readonly (number | string)[],
  { width = 1, key = 0 } = {},
): Rows {
  const list = args as unknown as readonly Argument<unknown>[];
  const tall = Math.max(...list.map(({ grid }) => grid.length));
  const wide = Math.max(...list.map(({ grid }) => grid[0]?.length ?? 1));
  const cellOf = ({ grid }: Argument<unknown>, r: number, c: number): unknown => {
    const row = grid[grid.length === 1 ? 0 : r];
    return row?.length === 1 ? row[0] : row?.[c];
  };
  const isBeyond = ({ grid }: Argument<unknown>, r: number, c: number): boolean =>
    (grid.length !== 1 && r >= grid.length) || (grid[0]?.length !== 1 && c >= (grid[0]?.length ?? 1));

  const oneCell = (r: number, c: number): Result[] => {
    const same = (result: Result): Result[] => Array<Result>(width).fill(result);
    const first = list[key];
    if (first && !isBeyond(first, r, c) && isBlank(cellOf(first, r, c))) return same("");
    const short = list.find((arg) => isBeyond(arg, r, c));
    if (short) {
      return same(toError(new Fault("none", `${short.name}: the range ends here; give it the size of the others`)));
    }
    const values: unknown[] = [];
    for (const arg of list) {
      const read = readCell(arg, cellOf(arg, r, c));
      if ("fault" in read) return same(toError(read.fault));
      values.push(read.value);
    }
    const results = attempt(() => {
      const result = work(...(values as V));
      return Array.isArray(result) ? result : [result as number | string];
    });
    return Array.isArray(results) ? results : same(results);
  };
  return Array.from({ length: tall }, (_, r) => Array.from({ length: wide }, (_, c) => oneCell(r, c)).flat());
}

/** The one value of an argument; throws the error it holds. */
export function one<T>(arg: Argument<T>): T {
  if (arg.grid.length > 1 || (arg.grid[0]?.length ?? 1) > 1) throw wrong(arg.name, "give one cell, not a range");
  const read = readCell(arg, arg.grid[0]?.[0]);
  if ("fault" in read) throw read.fault;
  return read.value as T;
}

/** A line of ranges read side by side: its values, or what is wrong with it. */
export interface Line<V extends unknown[]> {
  /** Its place in reading order, from 1. */
  readonly row: number;
  /** The same in words: `row 2`, or `cell 2` of a range that lies in a row. */
  readonly where: string;
  readonly values: V;
  /** The error that came in, or a fault; undefined in a good line. */
  readonly fault: unknown;
}

const isWide = ({ grid }: Argument<unknown>): boolean => (grid[0]?.length ?? 1) > 1;

/**
 * Ranges of as many cells read side by side, cell after cell in reading order: a column beside a row, but no two
 * blocks of different shape. Lines where one of the `skip` arguments (by position) is blank are left out, with
 * `orZero` also those where it is 0. An error stands in its own line: the caller decides what it spoils.
 */
export function lines<V extends unknown[]>(
  args: Arguments<V>,
  skip: readonly number[],
  { orZero = false } = {},
): Line<V>[] {
  const list = args as unknown as readonly Argument<unknown>[];
  const columns = list.map(({ grid }) => grid.flat());
  const [length = 0] = columns.map((column) => column.length);
  const block = list.find((arg) => isWide(arg) && arg.grid.length > 1)?.grid.length;
  for (const [i, arg] of list.entries()) {
    const [cells, rows] = [columns[i]?.length, arg.grid.length];
    if (cells !== length) throw wrong(arg.name, `${cells} cells beside ${length}; give ranges of the same size`);
    if (block !== undefined && isWide(arg) && rows > 1 && rows !== block) {
      throw wrong(arg.name, `${rows} rows beside ${block}; give ranges of the same shape`);
    }
  }
  const word = list.some(isWide) ? "cell" : "row";
  const found: Line<V>[] = [];
  for (let i = 0; i < length; i++) {
    const cells = columns.map((column) => column[i]);
    if (skip.some((k) => isBlank(cells[k]) || (orZero && basic(cells[k]) === 0))) continue;
    const reads = list.map((arg, k) => readCell(arg, cells[k]));
    const bad = reads.find((read) => "fault" in read);
    found.push({
      row: i + 1,
      where: `${word} ${i + 1}`,
      values: reads.map((read) => ("value" in read ? read.value : undefined)) as V,
      fault: bad && "fault" in bad ? bad.fault : undefined,
    });
  }
  return found;
}

/** What `work` makes of lines that must all be good; throws the first fault among them, with its row. */
export function valuesOf<V extends unknown[], T>(found: readonly Line<V>[], work: (...values: V) => T): T[] {
  return found.map(({ where, values, fault }) => {
    try {
      if (fault) throw fault;
      return work(...values);
    } catch (error) {
      throw inRow(where, error);
    }
  });
}

/** What is wrong with a line, with its place. An error that came in stays as it is. */
export const inRow = (where: string, error: unknown): unknown =>
  error instanceof Fault ? new Fault(error.kind, `${where} of the range: ${error.message}`) : error;

/**
 * Works on the lines of ranges together and puts each result where the line's first cell stood. A line with a blank
 * in a `skip` argument stays blank, and a bad one keeps its own error: one that cannot be read, or that `check`
 * refuses. `work` sees what `check` made of the good ones (and the rows of the bad ones), and a fault it throws
 * stands in each good one. With `always` it is called without any line too; its fault then stands in every cell.
 */
export function inPlace<V extends unknown[], T>(
  args: Arguments<V>,
  check: (...values: V) => T,
  work: (good: readonly T[], badRows: readonly number[]) => readonly (number | string)[],
  { skip = [0], always = false }: { readonly skip?: readonly number[]; readonly always?: boolean } = {},
): Rows {
  const first = (args as unknown as readonly Argument<unknown>[])[0] as Argument<unknown>;
  const byRow = new Map<number, Result>();
  let elsewhere: Result = "";
  const results = attempt(() => {
    const found = lines(args, skip);
    const good = found.flatMap(({ row, values, fault }) => {
      try {
        if (fault) throw fault;
        return [{ row, value: check(...values) }];
      } catch (error) {
        byRow.set(row, toError(error));
        return [];
      }
    });
    if (good.length === 0 && !(always && found.length === 0)) return [];
    const bad = [...byRow.keys()];
    const done = attempt(() =>
      work(
        good.map(({ value }) => value),
        bad,
      ),
    );
    for (const [i, { row }] of good.entries()) byRow.set(row, Array.isArray(done) ? (done[i] as Result) : done);
    if (good.length === 0 && !Array.isArray(done)) elsewhere = done;
    return [];
  });
  let row = 0;
  return first.grid.map((cells) =>
    cells.map((cell) => {
      row++;
      if (!Array.isArray(results)) return isBlank(cell) ? "" : results;
      return byRow.get(row) ?? elsewhere;
    }),
  );
}

/** One answer, or a block of rows, from a function that works on whole ranges. */
export function answer(work: () => number | string | Rows): Rows {
  try {
    const result = work();
    const rows: Rows = Array.isArray(result) ? result : [[result]];
    return rows.map((row) => row.map((cell) => (cell instanceof CustomFunctions.Error ? cell : clean(cell))));
  } catch (fault) {
    return [[toError(fault)]];
  }
}
