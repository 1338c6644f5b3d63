import { callsOurs } from "./callsOurs";
import { isCalled, tokens } from "./tokens";

/** Functions that came with dynamic arrays or after them: whoever writes one of them means all cells of its ranges. */
const YOUNG =
  /^(FILTER|UNIQUE|SORT|SORTBY|SEQUENCE|RANDARRAY|LET|LAMBDA|MAP|REDUCE|SCAN|BYROW|BYCOL|MAKEARRAY|XMATCH|XLOOKUP|[HV]STACK|TO(ROW|COL)|WRAP(ROWS|COLS)|TAKE|DROP|EXPAND|CHOOSE(ROWS|COLS)|TEXTSPLIT)$/i;

/** Whether a formula as it is typed is a dynamic array in the file, also where it fills its own cell alone. */
export const isDynamic = (formula: string): boolean =>
  callsOurs(formula) ||
  tokens(formula).some(({ kind, text }, at, pieces) => kind === "word" && YOUNG.test(text) && isCalled(pieces, at));
