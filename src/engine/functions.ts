import { BooleanNumber, type Ctor, type Nullable } from "@univerjs/core";
import {
  type ArrayValueObject,
  BaseFunction,
  type BaseValueObject,
  BooleanValueObject,
  type ErrorType,
  ErrorValueObject,
  FunctionType,
  type IFunctionInfo,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import { arrayOfRows } from "./arrayOfRows";
import { CellError, type SheetFunction } from "./bundle";
import "./constants";
import "./corrections";
import "./counted";
import "./hiddenRows";
import "./lookedAt";
import "./notedOnce";
import "./plainTexts";
import "./summed";
import "./tableParts";

/** What stands before every function's name in a cell. */
export const NAMESPACE = "POUR";

/** What the formula engine needs to compute the functions: for each a class to make one of, and its name. */
export function executors(functions: readonly SheetFunction[]): [Ctor<BaseFunction>, string][] {
  return functions.map((one) => {
    class Executor extends BaseFunction {
      override calculate(...values: BaseValueObject[]): BaseValueObject {
        // An exception that leaves a function would stop all calculation for good.
        try {
          return toEngine(call(one, values));
        } catch (fault) {
          return toEngine(new CellError("#VALUE!", fault instanceof Error ? fault.message : String(fault)));
        }
      }
    }
    return [Executor as unknown as Ctor<BaseFunction>, `${NAMESPACE}.${one.name}`];
  });
}

/** What the formula bar shows while a function is typed. */
export function descriptions(functions: readonly SheetFunction[]): IFunctionInfo[] {
  return functions.map(({ name, description = "", parameters }) => ({
    functionName: `${NAMESPACE}.${name}`,
    functionType: FunctionType.User,
    description,
    abstract: description,
    functionParameter: parameters.map((parameter) => ({
      name: parameter.name,
      detail: parameter.description ?? "",
      example: "",
      require: parameter.optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
      repeat: BooleanNumber.FALSE,
    })),
  }));
}

/** Calls a function with what Excel would pass for these values. */
function call({ name, parameters, call }: SheetFunction, values: readonly BaseValueObject[]): unknown {
  if (values.length > parameters.length) {
    return new CellError(
      "#VALUE!",
      `${NAMESPACE}.${name} takes at most ${parameters.length} arguments; remove the rest`,
    );
  }
  const passed = parameters.map(({ dimensionality }, i) => {
    const value = values[i];
    if (!value) return null;
    const rows = fromEngine(value);
    const single = rows.length === 1 && rows[0]?.length === 1;
    // One value left out between commas is null in any parameter; one cell given as a range is a range.
    if (dimensionality === "matrix") return value.isNull() ? null : rows;
    return single ? rows[0]?.[0] : rows;
  });
  // Excel gives an address only to functions that ask for it, and none does.
  return call(...passed, { functionName: name });
}

function fromEngine(value: BaseValueObject): unknown[][] {
  if (!value.isArray()) return [[cellFromEngine(value)]];
  return (value as ArrayValueObject).getArrayValue().map((row) => Array.from(row, cellFromEngine));
}

function cellFromEngine(value: Nullable<BaseValueObject>): unknown {
  if (!value || value.isNull()) return null;
  if (value.isError()) return new CellError(String(value.getValue()));
  return value.getValue();
}

function toEngine(result: unknown): BaseValueObject {
  if (!Array.isArray(result)) return cellToEngine(result);
  const rows = result.map((row) => (Array.isArray(row) ? row : [row]).map(cellToEngine));
  const columnCount = rows[0]?.length ?? 0;
  if (columnCount === 0) return cellToEngine(null);
  if (rows.length === 1 && columnCount === 1) return rows[0]?.[0] as BaseValueObject;
  return arrayOfRows(rows);
}

/** The message of an error goes along with it into the cell; see problems.ts. */
function cellToEngine(cell: unknown): BaseValueObject {
  if (cell instanceof CellError) {
    return new ErrorValueObject(cell.code as ErrorType, cell.message).withCustomData({ message: cell.message });
  }
  if (typeof cell === "number") {
    if (Number.isFinite(cell)) return NumberValueObject.create(cell);
    return cellToEngine(new CellError("#NUM!", "the answer is too large to write; check the inputs"));
  }
  if (typeof cell === "boolean") return BooleanValueObject.create(cell);
  // Excel shows 0 for it too.
  if (cell === null || cell === undefined) return NumberValueObject.create(0);
  return StringValueObject.create(String(cell));
}
