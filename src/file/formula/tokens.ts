/**
 * A piece of a formula:
 * - `text`: a text in quotes, or an error such as `#REF!`
 * - `sheet`: the name of a sheet or of sheets, quoted or not, up to its `!`
 * - `columns`: a table reference's part in brackets, or another workbook's number
 * - `word`: a name, a reference, a function's name, a number
 * - `sign`: one other character
 * The pieces joined are the formula.
 */
export interface Token {
  readonly kind: "text" | "sheet" | "brackets" | "word" | "sign";
  readonly text: string;
}

const PIECES =
  /(?<text>"(?:[^"]|"")*"?|#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|GETTING_DATA|SPILL!|CALC!|FIELD!|BLOCKED!|CONNECT!|BUSY!|UNKNOWN!))|(?<sheet>'(?:[^']|'')*'!|[\p{L}\p{N}_.\\]+(?::[\p{L}\p{N}_.\\]+)?!)|(?<bracket>\[)|(?<word>\d+(?:\.\d*)?E[+-]?\d+|[\p{L}\p{N}_.\\$?]+)|(?<sign>.)/gisuy;

export function tokens(formula: string): Token[] {
  const found: Token[] = [];
  PIECES.lastIndex = 0;
  for (let match = PIECES.exec(formula); match; match = PIECES.exec(formula)) {
    const { text, sheet, bracket, word, sign } = match.groups as Record<string, string | undefined>;
    if (bracket) {
      const end = bracketsEnd(formula, match.index);
      found.push({ kind: "brackets", text: formula.slice(match.index, end) });
      PIECES.lastIndex = end;
    } else if (text !== undefined) found.push({ kind: "text", text });
    else if (sheet !== undefined) found.push({ kind: "sheet", text: sheet });
    else if (word !== undefined) found.push({ kind: "word", text: word });
    else found.push({ kind: "sign", text: sign as string });
  }
  return found;
}

/** Whether a formula looks into another workbook: `[1]Prices!A1`, `'[2]My prices'!A1`. */
export const looksElsewhere = (formula: string): boolean =>
  formula.includes("[") &&
  tokens(formula).some(
    ({ kind, text }, at, all) =>
      /^'?\[[1-9]\d*\]/.test(text) && (kind === "sheet" || (kind === "brackets" && all[at - 1]?.kind !== "word")),
  );

export const joined = (pieces: readonly Token[]): string => pieces.map(({ text }) => text).join("");

/** Where brackets end that begin here; an apostrophe takes the meaning from what follows it. */
function bracketsEnd(formula: string, start: number): number {
  let depth = 0;
  for (let at = start; at < formula.length; at++) {
    const sign = formula[at];
    if (sign === "'") at++;
    else if (sign === "[") depth++;
    else if (sign === "]" && --depth === 0) return at + 1;
  }
  return formula.length;
}

/** The name of the sheet that a piece of that kind says. */
export const sheetName = (text: string): string =>
  text
    .slice(0, -1)
    .replace(/^'(.*)'$/s, "$1")
    .replaceAll("''", "'");

const is = (token: Token | undefined, text: string): boolean => token?.kind === "sign" && token.text === text;

/** Where the parenthesis is closed that opens at a place; the end when it is not. */
export function closing(pieces: readonly Token[], open: number): number {
  let depth = 0;
  for (let at = open; at < pieces.length; at++) {
    if (is(pieces[at], "(")) depth++;
    else if (is(pieces[at], ")") && --depth === 0) return at;
  }
  return pieces.length;
}

/** Whether the word at a place is a function that is called. */
export const isCalled = (pieces: readonly Token[], at: number): boolean => is(pieces[at + 1], "(");

/**
 * Where the one thing ends that begins at a place: a reference, also to a spill (`A1#`), a name with its brackets, a
 * call, what stands in parentheses. Undefined where no such thing begins.
 */
export function operandEnd(pieces: readonly Token[], start: number): number | undefined {
  let at = start;
  if (pieces[at]?.kind === "brackets") at++;
  if (pieces[at]?.kind === "sheet") at++;
  if (is(pieces[at], "(")) return closing(pieces, at) + 1;
  if (pieces[at]?.kind === "word") at++;
  else if (at === start) return undefined;
  if (is(pieces[at], "(")) return closing(pieces, at) + 1;
  if (pieces[at]?.kind === "brackets") at++;
  if (is(pieces[at], ":") && pieces[at + 1]?.kind === "word") at += 2;
  return is(pieces[at], "#") ? at + 1 : at;
}

/** Where the one thing begins that ends before a place: a reference, a name with its brackets, a call. */
export function operandStart(pieces: readonly Token[], end: number): number {
  let at = end - 1;
  if (is(pieces[at], ")")) {
    for (let depth = 0; at > 0; at--) {
      if (is(pieces[at], ")")) depth++;
      else if (is(pieces[at], "(") && --depth === 0) break;
    }
    return pieces[at - 1]?.kind === "word" ? at - 1 : at;
  }
  if (pieces[at]?.kind === "brackets" && pieces[at - 1]?.kind === "word") at--;
  if (pieces[at - 1]?.kind === "sheet") at--;
  return pieces[at - 1]?.kind === "brackets" && pieces[at]?.kind === "sheet" ? at - 1 : at;
}
