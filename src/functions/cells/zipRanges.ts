import { wrong } from "../../core/check/wrong";
import { Fault } from "../../core/fault";
import { type Argument, type Arguments, columnsOf, readCell } from "./argument";
import { basic, isBlank } from "./blank";
import { mayBeBlank } from "./doubt";

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

/**
 * Ranges of as many cells read side by side, cell after cell in reading order: a column beside a row, but no two
 * blocks of different shape. Lines where one of the `skip` arguments (by position) is blank are left out, with
 * `orZero` also those where it is 0, and those where each of them may be. An error stands in its own line: the caller
 * decides what it spoils.
 */
export function zipRanges<V extends unknown[]>(
  args: Arguments<V>,
  skip: readonly number[],
  { orZero = false } = {},
): Line<V>[] {
  const list = args as unknown as readonly Argument<unknown>[];
  const columns = list.map(({ grid }) => grid.flat());
  requireOneSize(list, columns);
  const word = list.some(isWide) ? "cell" : "row";
  const found: Line<V>[] = [];
  for (let i = 0; i < (columns[0]?.length ?? 0); i++) {
    const isLeftOut = (k: number): boolean => {
      const cell = columns[k]?.[i];
      return isBlank(cell) || (orZero && basic(cell) === 0) || (list[k]?.doubt === "blank" && mayBeBlank(cell));
    };
    if (skip.some(isLeftOut)) continue;
    if (skip.length > 0 && skip.every((k) => mayBeBlank(columns[k]?.[i]))) continue;
    const { values, fault } = readLine(list, columns, i);
    found.push({ row: i + 1, where: `${word} ${i + 1}`, values: values as V, fault });
  }
  return found;
}

const isWide = (arg: Argument<unknown>): boolean => columnsOf(arg) > 1;

function requireOneSize(list: readonly Argument<unknown>[], columns: readonly (readonly unknown[])[]): void {
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

/** The values of a line and the first fault among them; what cannot be read is undefined. */
function readLine(list: readonly Argument<unknown>[], columns: readonly (readonly unknown[])[], i: number) {
  let fault: unknown;
  const values = list.map((arg, k) => {
    try {
      return readCell(arg, columns[k]?.[i]);
    } catch (thrown) {
      fault ??= thrown;
      return undefined;
    }
  });
  return { values, fault };
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
