import { readFileSync } from "node:fs";
import { dist } from "../dist";
import { CellError, registeredFrom, type Work } from "./registered";

export { CellError };

/** The built files, and the functions as they register themselves. */

export const script = readFileSync(new URL("functions.js", dist), "utf8");
export const metadataText = readFileSync(new URL("functions.json", dist), "utf8");

export interface Parameter {
  readonly name: string;
  readonly description?: string;
  readonly dimensionality?: "matrix";
  readonly optional?: boolean;
}

export const metadata = JSON.parse(metadataText) as {
  readonly allowErrorForDataTypeAny: boolean;
  readonly functions: readonly {
    readonly id: string;
    readonly name: string;
    readonly description?: string;
    readonly helpUrl?: string;
    readonly parameters: readonly Parameter[];
    readonly result: { readonly dimensionality?: "matrix" };
  }[];
};

export type Value = number | string | boolean | null | CellError | object;

/** The functions as they register themselves on a page where this is given. */
export const registeredBeside = (page: object): ReadonlyMap<string, Work> => registeredFrom(script, page);

export const registered = registeredBeside({});

/**
 * Calls a function as Excel does: ranges as rows of cells, a single cell given to a range as [[value]], null for
 * what is left out, and an invocation object at the end.
 */
export function call(id: string, ...args: (Value | Value[][] | undefined)[]): Value[][] {
  const declared = metadata.functions.find((one) => one.id === id);
  const work = registered.get(id);
  if (!declared || !work) throw new Error(`${id} is not among the built functions`);
  const passed = declared.parameters.map(({ dimensionality }, i) => {
    const value = args[i];
    if (value === undefined) return null;
    return dimensionality === "matrix" && !Array.isArray(value) ? [[value]] : value;
  });
  return work(...passed, { address: "Sheet1!A1", functionName: id });
}

/** The only cell of an answer. */
export function cell(id: string, ...args: (Value | Value[][] | undefined)[]): Value {
  const rows = call(id, ...args);
  if (rows.length !== 1 || rows[0]?.length !== 1) throw new Error(`${id} gave ${JSON.stringify(rows)}`);
  return rows[0][0] as Value;
}

/** The message of a cell that must be an error of this code. */
export function messageOf(value: Value | undefined, code = "#VALUE!"): string {
  if (!(value instanceof CellError) || value.code !== code) {
    throw new Error(`expected ${code}, got ${JSON.stringify(value)}`);
  }
  return value.message;
}

/** A column of cells. */
export const down = (...values: Value[]): Value[][] => values.map((value) => [value]);
