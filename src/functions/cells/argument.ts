import { isKept } from "../../core/check/keptNumber";
import { wrong } from "../../core/check/wrong";
import { type UnitKind, unitsInWords } from "../../core/units/spellings";
import { basic, isBlank } from "./blank";
import { mayBeBlank } from "./doubt";
import { errorIn } from "./errors";
import { readDate, readName, readNumber, readText } from "./readers";

/** What a spreadsheet hands over for an argument: a range, one value, or nothing. */
export type Cells = any;

/**
 * What a 0 is taken for that may be a blank: for neither, so that nothing comes of it; for a blank, where 0 would be no
 * answer; for 0, where both give the same.
 */
type Doubt = "neither" | "blank" | "0";

/** An argument of a function: its cells, how one is read, and whether a blank takes the core's default. */
export interface Argument<T> {
  readonly name: string;
  readonly grid: readonly (readonly unknown[])[];
  readonly optional: boolean;
  readonly doubt: Doubt;
  /** What to do where nothing is given and there is no default. */
  readonly hint: string | undefined;
  readonly read: (name: string, cell: unknown) => T;
}

export type Arguments<V extends unknown[]> = { [K in keyof V]: Argument<V[K]> };

/** An argument of numbers that must be there. */
export const number = (name: string, cells: Cells, doubt?: Doubt): Argument<number> =>
  argument(name, cells, readNumber, false, doubt);
/** An argument of dates that must be there, as the serial numbers a spreadsheet keeps. */
export const date = (name: string, cells: Cells): Argument<number> => argument(name, cells, readDate, false);
/** An argument of texts that must be there. */
export const text = (name: string, cells: Cells): Argument<string> => argument(name, cells, readText, false, "blank");
/** An argument of units that must be there, of one of these kinds. */
export const unit = (name: string, cells: Cells, ...kinds: readonly UnitKind[]): Argument<string> => ({
  ...text(name, cells),
  hint: `write ${unitsInWords(...kinds)}`,
});
/** An argument of numbers where a blank is left to the core. */
export const numberOr = (name: string, cells: Cells, doubt?: Doubt): Argument<number | undefined> =>
  argument<number | undefined>(name, cells, readNumber, true, doubt);
/** An argument of numbers above 0, where a blank is left to the core. */
export const aboveZeroOr = (name: string, cells: Cells): Argument<number | undefined> => numberOr(name, cells, "blank");
/** An argument of numbers where a blank is left to the core, which takes it for 0. */
export const numberOrZero = (name: string, cells: Cells): Argument<number | undefined> => numberOr(name, cells, "0");
/** An argument of names, which stay what they are: a number, a date or a text. */
export const nameOr = (name: string, cells: Cells): Argument<number | string | undefined> =>
  argument<number | string | undefined>(name, cells, readName, true, "blank");
/** An argument of texts where a blank is left to the core. */
export const textOr = (name: string, cells: Cells): Argument<string | undefined> =>
  argument<string | undefined>(name, cells, readText, true, "blank");

function argument<T>(
  name: string,
  cells: Cells,
  read: Argument<T>["read"],
  optional: boolean,
  doubt: Doubt = "neither",
): Argument<T> {
  return { name, grid: gridOf(cells), optional, doubt, hint: undefined, read };
}

/** Rows of cells, at least one cell: hosts hand over a range as rows, a list as one row's cells, or a bare value. */
function gridOf(cells: Cells): Argument<unknown>["grid"] {
  if (!Array.isArray(cells)) return [[cells]];
  if (!cells.every(Array.isArray)) return cells.map((row) => (Array.isArray(row) ? row : [row]));
  return cells[0]?.length ? cells : [[null]];
}

/** What is given for a range beside another; as many blank cells where nothing is. */
export const givenBeside = (cells: Cells, other: Cells): Cells =>
  cells ?? gridOf(other).map((row) => row.map(() => null));

/** How many columns the cells of an argument have. */
export const columnsOf = ({ grid }: Argument<unknown>): number => grid[0]?.length ?? 1;

/** A number that no blank cell is handed over as: most cells hold one. */
export const isPlain = (cell: unknown): cell is number => typeof cell === "number" && cell !== 0;

/** A text that is no error. */
const isPlainText = (cell: unknown): cell is string => typeof cell === "string" && cell !== "" && cell[0] !== "#";

/** The value of a cell that is plainly what the argument takes, as nearly all are; undefined where more is to be asked. */
export function plainly<T>({ read }: Pick<Argument<T>, "read">, cell: unknown): T | undefined {
  const is: unknown = read;
  const isFine = is === readNumber ? isPlain(cell) && isKept(cell) : is === readText && isPlainText(cell);
  return isFine ? (cell as T) : undefined;
}

/** What a cell of an argument gives, undefined for a blank that is left to the core; throws the error it holds. */
export function readCell<T>(arg: Argument<T>, cell: unknown): T | undefined {
  const value = plainly(arg, cell);
  if (value !== undefined) return value;
  const { name, optional, doubt, hint, read } = arg;
  if (isPlain(cell) || isPlainText(cell)) return read(name, cell);
  const error = errorIn(cell);
  if (error) throw error;
  const isDoubtful = doubt !== "0" && mayBeBlank(cell);
  if (isDoubtful && doubt === "neither") {
    throw wrong(name, "0 or blank, which this Excel cannot tell apart; write another number, or update Excel");
  }
  if (!isDoubtful && !isBlank(cell)) return read(name, basic(cell));
  if (optional) return undefined;
  throw wrong(name, hint ? `nothing is given; ${hint}` : "the cell is blank; fill it in");
}
