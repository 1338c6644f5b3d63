import { closing, isCalled, joined, operandEnd, operandStart, type Token, tokens } from "./tokens";
import { markedName } from "./younger";

/**
 * A formula as a workbook file holds it: without its `=`, `POUR.X(` as `_xldudf_POUR_X(`, the name that Excel keeps for
 * an add-in's function, marks on functions that are younger than the file format and on the names that LET and LAMBDA
 * give, `SINGLE(x)` for `@x` and `ANCHORARRAY(x)` for `x#`.
 */
export function toFileFormula(formula: string): string {
  return joined(withoutSigns(markedFunctions(markedNames(tokens(formula.replace(/^=/, "")), new Set()))));
}

const OURS = /^POUR\.([A-Z0-9]+)$/i;

const markedFunctions = (pieces: readonly Token[]): Token[] =>
  pieces.map((piece, at) => {
    if (piece.kind !== "word" || !isCalled(pieces, at)) return piece;
    const [, id] = OURS.exec(piece.text) ?? [];
    return { ...piece, text: id === undefined ? markedName(piece.text) : `_xldudf_POUR_${id.toUpperCase()}` };
  });

/** Marks names that LET and LAMBDA give, within their parentheses. */
function markedNames(pieces: readonly Token[], given: ReadonlySet<string>): Token[] {
  const result: Token[] = [];
  for (let at = 0; at < pieces.length; at++) {
    const piece = pieces[at] as Token;
    const called = piece.kind === "word" && isCalled(pieces, at);
    result.push(
      piece.kind === "word" && given.has(piece.text.toUpperCase()) ? { ...piece, text: `_xlpm.${piece.text}` } : piece,
    );
    if (!called || !/^(?:LET|LAMBDA)$/i.test(piece.text)) continue;
    const end = closing(pieces, at + 1);
    const inside = pieces.slice(at + 2, end);
    const names = namesIn(inside, piece.text.toUpperCase() === "LET");
    result.push(...pieces.slice(at + 1, at + 2), ...markedNames(inside, new Set([...given, ...names])));
    at = end - 1;
  }
  return result;
}

/** In LET every other argument is a name, in LAMBDA every one; the last is what is worked out. */
function namesIn(inside: readonly Token[], everyOther: boolean): string[] {
  const starts = [0];
  for (let at = 0; at < inside.length; at++) {
    if (inside[at]?.text === "(") at = closing(inside, at);
    else if (inside[at]?.text === ",") starts.push(at + 1);
  }
  return starts.slice(0, -1).flatMap((start, i) => {
    if (everyOther && i % 2 === 1) return [];
    const argument = inside.slice(start, (starts[i + 1] as number) - 1).filter(({ text }) => text.trim() !== "");
    return argument.length === 1 && argument[0]?.kind === "word" ? [argument[0].text.toUpperCase()] : [];
  });
}

/** Writes `@x` and `x#` as calls. */
function withoutSigns(pieces: readonly Token[]): Token[] {
  const result: Token[] = [];
  for (let at = 0; at < pieces.length; at++) {
    const piece = pieces[at] as Token;
    const end = piece.kind === "sign" && piece.text === "@" ? operandEnd(pieces, at + 1) : undefined;
    if (end !== undefined) {
      const operand = pieces.slice(at + 1, end);
      result.push(...call("_xlfn.SINGLE", withoutSigns(operand)));
      at += operand.length;
    } else if (piece.kind === "sign" && piece.text === "#" && result.length > 0) {
      const start = operandStart(result, result.length);
      result.push(...call("_xlfn.ANCHORARRAY", result.splice(start)));
    } else result.push(piece);
  }
  return result;
}

function call(name: string, operand: readonly Token[]): Token[] {
  const bare = operand[0]?.text === "(" && closing(operand, 0) === operand.length - 1;
  const sign = (text: string): Token => ({ kind: "sign", text });
  return [{ kind: "word", text: name }, ...(bare ? operand : [sign("("), ...operand, sign(")")])];
}
