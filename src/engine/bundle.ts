/**
 * Loads the built functions.js and functions.json, unchanged, the way Excel does: the script finds a
 * `CustomFunctions` object and registers its functions with it by id.
 */

/** An error value of a function: a code such as `#VALUE!`, and what to fix. */
export class CellError {
  constructor(
    readonly code: string,
    readonly message = "",
  ) {}
}

/** The codes by the names that functions use for them. */
const ERROR_CODES = {
  divisionByZero: "#DIV/0!",
  invalidName: "#NAME?",
  invalidNumber: "#NUM!",
  invalidReference: "#REF!",
  invalidValue: "#VALUE!",
  notAvailable: "#N/A",
  nullReference: "#NULL!",
} as const;

export interface Parameter {
  readonly name: string;
  readonly description?: string;
  readonly dimensionality?: "matrix" | "scalar";
  readonly optional?: boolean;
}

export interface SheetFunction {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly parameters: readonly Parameter[];
  /** Called as Excel calls it: ranges as rows of cells, null for what is blank or left out, an invocation object last. */
  readonly call: (...values: unknown[]) => unknown;
}

/** The built files as texts. */
export interface Bundle {
  /** functions.js */
  readonly script: string;
  /** functions.json */
  readonly metadata: string;
}

/** The functions of a bundle. Throws when the two files do not belong together. */
export function loadBundle({ script, metadata }: Bundle): SheetFunction[] {
  const registered = new Map<string, SheetFunction["call"]>();
  const standIn = {
    associate: (id: string, call: SheetFunction["call"]) => registered.set(id, call),
    Error: CellError,
    ErrorCode: ERROR_CODES,
  };
  new Function("CustomFunctions", script)(standIn);

  const { functions } = JSON.parse(metadata) as { functions: Omit<SheetFunction, "call">[] };
  return functions.map((one) => {
    const call = registered.get(one.id);
    if (!call) throw new Error(`functions.js does not register ${one.id}; build it again`);
    return { ...one, call };
  });
}
