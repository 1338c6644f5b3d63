import { columnLetters, columnNumber } from "../../sheet/columnLetters";
import { COLUMNS, ROWS } from "../addresses";
import { isCalled, type Token, tokens } from "./tokens";

const CELL = /^(\$?)([A-Z]{1,3})(\$?)([1-9]\d{0,6})$/i;
const COLUMN = /^(\$?)([A-Z]{1,3})$/i;
const ROW = /^(\$?)([1-9]\d{0,6})$/;
const LOST = "#REF!";

/**
 * A formula as it reads so many rows further down and columns further right: what is not held by a `$` moves along.
 * What would stand outside of the sheet becomes `#REF!`.
 */
export function formulaMover(formula: string): (rows: number, columns: number) => string {
  const pieces = splitAtReferences(tokens(formula));
  return (rows, columns) => pieces.map((piece) => (typeof piece === "string" ? piece : piece(rows, columns))).join("");
}

type Piece = string | ((rows: number, columns: number) => string);

function splitAtReferences(all: readonly Token[]): Piece[] {
  const pieces: Piece[] = [];
  for (let at = 0; at < all.length; at++) {
    const { kind, text } = all[at] as Token;
    if (kind !== "word" || isCalled(all, at) || all[at + 1]?.kind === "brackets") {
      pieces.push(text);
      continue;
    }
    const ends = all[at + 1]?.text === ":" && all[at + 2]?.kind === "word" ? (all[at + 2] as Token).text : undefined;
    const whole = ends === undefined ? undefined : wholeLines(text, ends);
    if (whole) {
      pieces.push(whole);
      at += 2;
    } else pieces.push(cell(text) ?? text);
  }
  return pieces;
}

function cell(text: string): Piece | undefined {
  const [, heldColumn = "", letters = "", heldRow = "", digits = ""] = CELL.exec(text) ?? [];
  const column = columnNumber(letters);
  const row = Number(digits);
  if (letters === "" || column >= COLUMNS || row > ROWS) return undefined;
  return (rows, columns) => {
    const newColumn = heldColumn ? column : column + columns;
    const newRow = heldRow ? row : row + rows;
    if (newColumn < 0 || newColumn >= COLUMNS || newRow < 1 || newRow > ROWS) return LOST;
    return `${heldColumn}${columnLetters(newColumn)}${heldRow}${newRow}`;
  };
}

/** `A:C` and `2:5`. */
function wholeLines(first: string, last: string): Piece | undefined {
  const pairs: readonly [RegExp, number, number, (text: string) => number, (n: number) => string][] = [
    [COLUMN, 0, COLUMNS - 1, columnNumber, columnLetters],
    [ROW, 1, ROWS, Number, String],
  ];
  for (const [pattern, least, most, read, write] of pairs) {
    const ends = [pattern.exec(first), pattern.exec(last)].map((found) =>
      found ? { held: found[1] ?? "", at: read(found[2] ?? "") } : undefined,
    );
    if (!ends.every((end) => end && end.at <= most)) continue;
    return (rows, columns) => {
      const by = pattern === COLUMN ? columns : rows;
      const moved = ends.map((end) => (end?.held ? end.at : (end?.at ?? 0) + by));
      if (moved.some((at) => at < least || at > most)) return LOST;
      return moved.map((at, i) => `${ends[i]?.held}${write(at)}`).join(":");
    };
  }
  return undefined;
}
