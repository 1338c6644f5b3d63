import fc from "fast-check";
import { isSaid } from "../isSaid";
import { CellError, type Value } from "./built";

/** Cells and ranges for the functions, and what every answer of theirs must be. */

/** Cells of every kind of which most are wrong in most places. */
export const WRONG_CELLS: readonly Value[] = [
  null,
  "",
  " ",
  "text",
  "of wax",
  "g",
  "12",
  true,
  false,
  0,
  -1,
  0.5,
  1,
  6,
  1e308,
  -1e308,
  5e-324,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  new CellError("#DIV/0!"),
  { type: "Error", basicValue: "#NUM!" },
  { type: "Entity", basicValue: "#VALUE!" },
  {},
];

/** Up to four rows of up to four cells. */
export const grid = (value: fc.Arbitrary<Value>): fc.Arbitrary<Value[][]> =>
  fc
    .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }))
    .chain(([rows, columns]) =>
      fc.array(fc.array(value, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }),
    );

/** Whether a cell may hold this as an answer: a number, a text or an error of the host's. */
export const isGood = (value: unknown, CellErrors: abstract new (...given: never[]) => object = CellError): boolean =>
  (typeof value === "string" && isSaid(value)) ||
  (typeof value === "number" && Number.isFinite(value)) ||
  (value instanceof CellErrors && isSaid((value as CellError).message ?? ""));

/** What is wrong with an answer, cell by cell; undefined where it is rows of one length of what cells may hold. */
export function faultIn(answer: unknown, CellErrors?: Parameters<typeof isGood>[1]): string | undefined {
  if (!Array.isArray(answer) || answer.length === 0) return `gave ${String(answer)} and no rows`;
  const width = (answer[0] as unknown[]).length;
  for (const row of answer as unknown[][]) {
    if (width === 0 || row.length !== width) return "gave rows of different lengths";
    for (const value of row) if (!isGood(value, CellErrors)) return `gave ${shown(value)} in a cell`;
  }
  return undefined;
}

const shown = (value: unknown): string => (typeof value === "object" ? JSON.stringify(value) : String(value));
