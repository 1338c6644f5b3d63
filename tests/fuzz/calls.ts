import fc from "fast-check";
import type { metadata, Parameter } from "../functions/built";
import type { Call } from "../host/excel/client/functionsRuntime";
import { anyNumber, anyText, ERROR_CODES, typed } from "./texts";

/** Calls of the functions as Excel makes them. */

type Declared = (typeof metadata.functions)[number];

/** A cell as Excel hands it over: objects are errors, or rich values as texts; where any is rich, errors are too. */
type Cell = number | string | boolean | null | object;
const rich = (value: object): Cell => ({ value: JSON.stringify(value) });
const plainError = (code: string): Cell => ({ type: "CustomFunctionError", code });
const richError = (basicValue: string): Cell => rich({ type: "Error", basicType: "Error", basicValue });

const richCell: fc.Arbitrary<Cell> = fc.oneof(
  anyNumber.map((basicValue) =>
    rich({ type: "FormattedNumber", basicType: "Double", basicValue, numberFormat: '0.0" g"' }),
  ),
  anyText.map((basicValue) => rich({ type: "String", basicType: "String", basicValue })),
  fc.constantFrom(...ERROR_CODES, "#SPILL!", "#CALC!", "#BUSY!").map(richError),
  anyText.map((text) => rich({ type: "Entity", text, basicType: "Error", basicValue: "#VALUE!", properties: {} })),
  fc.constantFrom(rich({ type: "Empty", basicType: "Empty", basicValue: "" }), rich({}), rich([])),
);

const plainCell: fc.Arbitrary<Cell> = fc.oneof(
  fc.constant(null),
  fc.constantFrom<Cell>("", 0, true, false, -1, "12"),
  anyNumber,
  anyText,
);
const PLAIN = fc.oneof({ weight: 5, arbitrary: plainCell }, fc.constantFrom(...ERROR_CODES).map(plainError));
const RICH = fc.oneof({ weight: 2, arbitrary: plainCell }, richCell);

const UNITS = ["g", "kg", "oz", "lb", "ml", "l", "floz", "in3", "cm3", "mm", "cm", "in", "C", "F"] as const;

/** What fits a parameter, by what its description says of it. */
function fittingCell({ name, description = "" }: Parameter): fc.Arbitrary<Cell> {
  const words = [...description.matchAll(/"([^"]+)"/g)].map(([, word = ""]) => word);
  if (words.length > 0) return typed(fc.constantFrom(...words));
  if (/^Unit /.test(description)) {
    const listed = description.split(": ")[1]?.split(";")[0] ?? UNITS.join(" ");
    return typed(fc.constantFrom(...UNITS.filter((unit) => listed.match(new RegExp(`\\b${unit}\\b`)))));
  }
  if (/percentage/.test(description)) {
    return fc.oneof(fc.constantFrom(0, 0.03, 0.06, 0.1, 0.5, 0.95), fc.double({ min: 0, max: 0.999, noNaN: true }));
  }
  if (/^Date/.test(description)) return fc.integer({ min: 61, max: 60_000 });
  if (/whole number|^How many|^Number of/.test(description)) return fc.integer({ min: 0, max: 60 });
  if (/factor$/i.test(name) || name === "density") return fc.integer({ min: 50, max: 130 }).map((one) => one / 100);
  if (/^Name|^Wick|^Text/.test(description)) return fc.oneof(fc.constantFrom("Tin", "Bowl", "Jar 8"), fc.nat(9));
  return fc.oneof(
    { weight: 3, arbitrary: fc.integer({ min: 1, max: 900 }) },
    { weight: 2, arbitrary: fc.integer({ min: 1, max: 50_000 }).map((one) => one / 10) },
    fc.double({ min: 0, max: 5000, noNaN: true }),
  );
}

/** How the cells of a parameter are given: most as a column, as if filled down. */
const FORMS = ["column", "column", "column", "column", "one", "row", "short", "block", "bare", "none"] as const;
type Form = (typeof FORMS)[number];

/** A parameter's cells as Excel hands them over. */
function given(column: readonly Cell[], form: Form, { dimensionality, optional }: Parameter): unknown {
  const [first = null] = column;
  if (form === "none" && (optional || column.length > 3)) return null;
  if (dimensionality !== "matrix") return first;
  const rows = column.map((cell) => [cell]);
  if (form === "one" || form === "none") return [[first]];
  if (form === "row") return [column];
  if (form === "short") return rows.slice(0, Math.ceil(rows.length / 2));
  if (form === "block") return column.map((cell, i) => [cell, column[column.length - 1 - i]]);
  return form === "bare" ? first : rows;
}

/** A call, and whether Excel says beside it that its objects are rich values. */
export interface ExcelCall {
  readonly call: Call;
  readonly isRich: boolean;
}

/** Calls of a function, from those that fit to those that nobody would make; the rows of all ranges stay beside each other. */
export function callOf({ id, parameters }: Declared): fc.Arbitrary<ExcelCall> {
  const fitting = parameters.map(fittingCell);
  const mixed = (any: fc.Arbitrary<Cell>) =>
    fitting.map((cell) => fc.oneof({ weight: 7, arbitrary: cell }, { weight: 1, arbitrary: any }));
  const rowsOf = (cells: fc.Arbitrary<Cell>[], maxLength: number) =>
    fc.array(fc.tuple(...cells), { minLength: 1, maxLength, size: "max" });
  const forms = fc.oneof(
    fc.constant(parameters.map((): Form => "column")),
    fc.tuple(...parameters.map(() => fc.constantFrom(...FORMS))),
  );
  const calls = (rows: fc.Arbitrary<Cell[][]>, isRich: boolean) =>
    fc.tuple(rows, forms).map(([cells, how]): ExcelCall => {
      const args = parameters.map((parameter, i) =>
        given(
          cells.map((row) => row[i] as Cell),
          how[i] as Form,
          parameter,
        ),
      );
      return { call: [id, ...args], isRich };
    });
  return fc.oneof(
    { weight: 5, arbitrary: calls(rowsOf(fitting, 6), false) },
    { weight: 4, arbitrary: calls(rowsOf(mixed(PLAIN), 6), false) },
    { weight: 2, arbitrary: calls(rowsOf(mixed(RICH), 6), true) },
    {
      weight: 2,
      arbitrary: calls(
        rowsOf(
          parameters.map(() => PLAIN),
          4,
        ),
        false,
      ),
    },
    { weight: 1, arbitrary: calls(rowsOf(mixed(PLAIN), 40), false) },
  );
}
