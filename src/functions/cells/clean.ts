import { Fault } from "../../core/fault";
import { toError } from "./errors";

/** What a cell of an answer holds. */
export type Result = number | string | CustomFunctions.Error;

/** A result as a cell may hold it: never NaN, Infinity or -0. */
export function clean(result: Result): Result {
  if (typeof result !== "number") return result;
  if (Number.isFinite(result)) return result + 0;
  return toError(new Fault("value", "", "the answer is too large to write; check the inputs"));
}
