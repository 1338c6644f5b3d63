import { closing, isCalled, joined, operandEnd, type Token, tokens } from "./tokens";
import { plainName } from "./younger";

const OURS = /^_xldudf_pour_([a-z0-9]+)$/i;
/** The names that LET and LAMBDA give, as the file marks them. */
const GIVEN = /^_xlpm\./i;

/**
 * A formula of a file, with or without its `=`, as it is typed: with `=`, our functions as `POUR.X(`, younger
 * functions without marks, `@x` for `SINGLE(x)` and `x#` for `ANCHORARRAY(x)`.
 */
export function fromFileFormula(inFile: string): string {
  const formula = inFile.replace(/^=/, "");
  // Most formulas have none of the file's marks.
  return /_xl/i.test(formula) ? `=${joined(typed(tokens(formula)))}` : `=${formula}`;
}

function typed(pieces: readonly Token[]): Token[] {
  const result: Token[] = [];
  for (let at = 0; at < pieces.length; at++) {
    const piece = pieces[at] as Token;
    if (piece.kind !== "word") {
      result.push(piece);
      continue;
    }
    const name = isCalled(pieces, at) ? plainName(piece.text) : piece.text;
    const marked = name !== piece.text;
    if (marked && /^(?:SINGLE|ANCHORARRAY)$/i.test(name)) {
      const end = closing(pieces, at + 1);
      result.push(...signed(name.toUpperCase(), typed(pieces.slice(at + 2, end))));
      at = end;
    } else
      result.push({
        ...piece,
        text: name.replace(GIVEN, "").replace(OURS, (_, id: string) => `POUR.${id.toUpperCase()}`),
      });
  }
  return result;
}

const sign = (text: string): Token => ({ kind: "sign", text });

function signed(name: string, inside: readonly Token[]): Token[] {
  const whole = operandEnd(inside, 0) === inside.length ? inside : [sign("("), ...inside, sign(")")];
  return name === "SINGLE" ? [sign("@"), ...whole] : [...whole, sign("#")];
}
