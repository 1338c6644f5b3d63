/**
 * The one place where cells become values and values become cells. A function file names its arguments, says by which
 * of four ways it meets its ranges, and hands over to the core:
 * `mapCells` cell by cell, `wholeRange` each result where its cell stood, `zipRanges` and `scalar` within `answer`.
 */

export { answer } from "./answer";
export {
  type Arguments,
  aboveZeroOr,
  date,
  givenBeside,
  nameOr,
  number,
  numberOr,
  numberOrZero,
  text,
  textOr,
  unit,
} from "./argument";
export { toError } from "./errors";
export { mapCells } from "./mapCells";
export { scalar } from "./scalar";
export { wholeRange } from "./wholeRange";
export { inRow, valuesOf, zipRanges } from "./zipRanges";
