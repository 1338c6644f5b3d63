/** Corrections of how the formula engine, version 0.25.1, reads numbers and arrays that stand in a formula itself. */

import {
  type BaseValueObject,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  NumberValueObject,
  StringValueObject,
  ValueNodeFactory,
} from "@univerjs/engine-formula";
import { arrayOfRows } from "./arrayOfRows";

const UNSIGNED = String.raw`(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`;
const PLAIN_NUMBER = new RegExp(`^[+-]?${UNSIGNED}$`);
const NUMBER = String.raw`[+-]?\s*${UNSIGNED}%?`;
/** The engine has made one of two quotes already. */
const TEXT = String.raw`"((?:[^"]|"(?!\s*(?:[,;]|$)))*)"`;
/** A constant, and what parts it from the next one. */
const PIECE = new RegExp(String.raw`\s*(?:${TEXT}|(${NUMBER})|(true|false)|(#[A-Z0-9/!?]+))\s*([,;]|$)`, "iy");

interface Node {
  execute(): void;
  setValue(value: BaseValueObject): void;
}
const factory = ValueNodeFactory.prototype as unknown as { create(token: string): Node };

// A number that could be written shorter it would take for a text: 1.0=1 would be false. An array it would cut at each
// comma, also within a text, and take what is written longer for texts there too, which no sum adds up.
const create = factory.create;
factory.create = function (token) {
  const text = token.trim();
  if (text.startsWith("{")) {
    const node = create.call(this, text);
    node.execute = () => node.setValue(arrayOf(text));
    return node;
  }
  if (!PLAIN_NUMBER.test(text)) return create.call(this, token);
  const number = Number(text);
  return create.call(this, Number.isFinite(number) ? String(number) : ErrorType.NUM);
};

/** An array in braces; an error where something else than constants stands in it, or its rows differ in length. */
function arrayOf(braced: string): BaseValueObject {
  const inner = braced.slice(1, -1);
  const rows: BaseValueObject[][] = [[]];
  for (let at = 0; ; ) {
    PIECE.lastIndex = at;
    const [whole, text, number, logical, error, parting] = PIECE.exec(inner) ?? [];
    if (whole === undefined) return ErrorValueObject.create(ErrorType.VALUE);
    rows.at(-1)?.push(constant({ text, number, logical, error }));
    if (!parting) break;
    if (parting === ";") rows.push([]);
    at += whole.length;
  }
  const columnCount = rows[0]?.length ?? 0;
  if (rows.some((row) => row.length !== columnCount)) return ErrorValueObject.create(ErrorType.VALUE);
  return arrayOfRows(rows);
}

interface Constant {
  readonly text?: string | undefined;
  readonly number?: string | undefined;
  readonly logical?: string | undefined;
  readonly error?: string | undefined;
}

function constant({ text, number, logical, error }: Constant): BaseValueObject {
  if (text !== undefined) return StringValueObject.create(text);
  if (logical) return BooleanValueObject.create(logical.toLowerCase() === "true");
  if (error) return ErrorValueObject.create(error.toUpperCase() as ErrorType);
  const plain = Number((number ?? "").replace(/[\s%]/g, ""));
  if (!Number.isFinite(plain)) return ErrorValueObject.create(ErrorType.NUM);
  return NumberValueObject.create(number?.endsWith("%") ? plain / 100 : plain);
}
