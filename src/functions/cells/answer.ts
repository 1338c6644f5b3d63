import { clean, type Result } from "./clean";
import { toError } from "./errors";
import { ran } from "./ran";

/** One answer, or a block of rows, from a function that works on whole ranges. */
export function answer(work: () => number | string | readonly (readonly Result[])[]): Result[][] {
  ran();
  try {
    const result = work();
    const rows = Array.isArray(result) ? (result as readonly (readonly Result[])[]) : [[result as number | string]];
    return rows.map((row) => row.map(clean));
  } catch (thrown) {
    return [[toError(thrown)]];
  }
}
