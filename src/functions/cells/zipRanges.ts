import { wrong } from "../../core/check/wrong";
import { Fault } from "../../core/fault";
import { type Argument, type Arguments, columnsOf, isPlain, readCell } from "./argument";
import { basic, isBlank } from "./blank";
import { mayBeBlank } from "./doubt";

/** A line of ranges read side by side: its values, or what is wrong with it. */
export class Line<V extends unknown[]> {
  constructor(
    /** Its place in reading order, from 1. */
    readonly row: number,
    private readonly word: "row" | "cell",
    readonly values: V,
    /** The error that came in, or a fault; undefined in a good line. */
    readonly fault: unknown,
  ) {}

  /** Its place in words: `row 2`, or `cell 2` of a range that lies in a row. */
  get where(): string {
    return `${this.word} ${this.row}`;
  }
}

type Visit<V extends unknown[]> = (row: number, values: V, fault: unknown) => void;

/** Which lines are left out: those where one of these arguments (by position) is blank, and with `orZero` 0. */
export interface LeftOut {
  readonly skip: readonly number[];
  readonly orZero?: boolean;
}

/**
 * Ranges of as many cells read side by side, cell after cell in reading order: a column beside a row, but no two
 * blocks of different shape. Lines where one of the `skip` arguments is blank are left out, with `orZero` also those
 * where it is 0, and those where each of them may be. An error stands in its own line: the caller decides what it
 * spoils.
 */
export function zipRanges<V extends unknown[]>(
  args: Arguments<V>,
  skip: readonly number[],
  { orZero = false } = {},
): Line<V>[] {
  const word = (args as unknown as readonly Argument<unknown>[]).some(isWide) ? "cell" : "row";
  const found: Line<V>[] = [];
  eachLine(args, { skip, orZero }, (row, values, fault) => found.push(new Line(row, word, values, fault)));
  return found;
}

/** The same line by line, none of which is kept. Plain loops: this is what a column of thousands of cells waits for. */
export function eachLine<V extends unknown[]>(args: Arguments<V>, leftOut: LeftOut, visit: Visit<V>): void {
  const list = args as unknown as readonly Argument<unknown>[];
  const columns = list.map(cellsOf);
  requireOneSize(list, columns);
  for (let i = 0; i < (columns[0]?.length ?? 0); i++) {
    if (isLeftOut(list, columns, i, leftOut)) continue;
    let fault: unknown;
    const values = new Array<unknown>(list.length);
    for (let k = 0; k < list.length; k++) {
      try {
        values[k] = readCell(list[k] as Argument<unknown>, columns[k]?.[i]);
      } catch (thrown) {
        fault ??= thrown;
      }
    }
    visit(i + 1, values as V, fault);
  }
}

/** In reading order. Array.flat takes several times as long. */
function cellsOf({ grid }: Argument<unknown>): unknown[] {
  const cells: unknown[] = [];
  for (const row of grid) for (const cell of row) cells.push(cell);
  return cells;
}

type Columns = readonly (readonly unknown[])[];

function isLeftOut(
  list: readonly Argument<unknown>[],
  columns: Columns,
  i: number,
  { skip, orZero }: LeftOut,
): boolean {
  let areDoubtful = skip.length > 0;
  for (const k of skip) {
    const cell = columns[k]?.[i];
    const isDoubtful = !isPlain(cell) && mayBeBlank(cell);
    areDoubtful &&= isDoubtful;
    if (isPlain(cell)) continue;
    if (isBlank(cell) || (orZero && basic(cell) === 0) || (list[k]?.doubt === "blank" && isDoubtful)) return true;
  }
  return areDoubtful;
}

const isWide = (arg: Argument<unknown>): boolean => columnsOf(arg) > 1;

function requireOneSize(list: readonly Argument<unknown>[], columns: Columns): void {
  const length = columns[0]?.length;
  const block = list.find((arg) => isWide(arg) && arg.grid.length > 1)?.grid.length;
  for (const [i, arg] of list.entries()) {
    const [cells, rows] = [columns[i]?.length, arg.grid.length];
    if (cells !== length) throw wrong(arg.name, `${cells} cells beside ${length}; give ranges of the same size`);
    if (block !== undefined && isWide(arg) && rows > 1 && rows !== block) {
      throw wrong(arg.name, `${rows} rows beside ${block}; give ranges of the same shape`);
    }
  }
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
  error instanceof Fault ? new Fault(error.kind, `${where} of the range`, error.message) : error;
