import { Fault } from "../../core/fault";
import { basic } from "./blank";

const ERRORS = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"];

/** The error a cell holds, whichever way the host passes it: as an error object, a rich value or its text. */
export function errorIn(cell: unknown): CustomFunctions.Error | undefined {
  if (cell instanceof CustomFunctions.Error) return cell;
  const { code = basic(cell), type } = (cell ?? {}) as { readonly code?: unknown; readonly type?: unknown };
  if (ERRORS.includes(code as string)) return new CustomFunctions.Error(code as CustomFunctions.ErrorCode);
  // Kinds such as #SPILL! cannot be handed on as they are.
  return type === "Error" ? toError(new Fault("value", "", `the cell shows ${String(code)}; fix it first`)) : undefined;
}

/** What a cell shows for what was thrown. */
export function toError(thrown: unknown): CustomFunctions.Error {
  if (thrown instanceof CustomFunctions.Error) return thrown;
  const code =
    thrown instanceof Fault && thrown.kind === "none"
      ? CustomFunctions.ErrorCode.notAvailable
      : CustomFunctions.ErrorCode.invalidValue;
  return new CustomFunctions.Error(code, thrown instanceof Error ? thrown.message : String(thrown));
}
