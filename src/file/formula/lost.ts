import { isCalled, joined, operandEnd, sheetName, type Token, tokens } from "./tokens";

/** Sheets and tables that are no longer there. */
export interface Gone {
  readonly sheets: readonly string[];
  readonly tables: readonly string[];
}

const LOST: Token = { kind: "text", text: "#REF!" };

/** A formula with `#REF!` in the place of what it read of sheets and tables that are gone. */
export function withLost(formula: string, { sheets, tables }: Gone): string {
  const all = tokens(formula);
  const isOf = (names: readonly string[], text: string) =>
    names.some((one) => one.toLowerCase() === text.toLowerCase());
  const isGone = ({ kind, text }: Token, at: number): boolean => {
    if (kind === "sheet") return all[at - 1]?.kind !== "brackets" && isOf(sheets, sheetName(text));
    return kind === "word" && !isCalled(all, at) && isOf(tables, text);
  };
  const left: Token[] = [];
  for (let at = 0; at < all.length; ) {
    const piece = all[at] as Token;
    if (isGone(piece, at)) {
      left.push(LOST);
      at = lostEnd(all, at);
    } else {
      left.push(piece);
      at++;
    }
  }
  return joined(left);
}

/** Where a reference ends: `Costs!A1:Costs!B2` is one, and so is `Costs!#REF!`. */
function lostEnd(all: readonly Token[], start: number): number {
  let at = start;
  while (all[at]?.kind === "sheet") at++;
  return all[at]?.text === LOST.text ? at + 1 : (operandEnd(all, at) ?? at);
}
