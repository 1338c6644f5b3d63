import { wrong } from "../../core/check/wrong";
import { type Argument, columnsOf, readCell } from "./argument";

/** The one value of an argument; throws the error it holds. */
export function scalar<T>(arg: Argument<T>): T {
  if (arg.grid.length > 1 || columnsOf(arg) > 1) throw wrong(arg.name, "give one cell, not a range");
  return readCell(arg, arg.grid[0]?.[0]) as T;
}
