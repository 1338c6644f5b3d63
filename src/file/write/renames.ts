import { quotedName } from "../../sheet/sheetName";
import { joined, sheetName, tokens } from "../formula/tokens";

/** Sheets or tables that are called another way now, new names by old ones. */
export type Renames = Pick<ReadonlyMap<string, string>, "get" | "size">;

/** Finds a name in whatever capitals it is written, as spreadsheet programs do. */
export function inAnyCase(pairs: readonly (readonly [string, string])[]): Renames {
  const found = new Map(pairs.map(([old, now]) => [old.toLowerCase(), now]));
  return { size: found.size, get: (name) => found.get(name.toLowerCase()) };
}

/** A formula with sheets and tables by their new names. */
export const renamedIn = (formula: string, sheets: Renames, tables: Renames = new Map()): string =>
  joined(
    tokens(formula).map((piece, at, pieces) => {
      const isElsewhere = pieces[at - 1]?.kind === "brackets";
      const sheet = piece.kind === "sheet" && !isElsewhere ? sheets.get(sheetName(piece.text)) : undefined;
      const isTable = piece.kind === "word" && pieces[at + 1]?.kind === "brackets";
      const table = isTable ? tables.get(piece.text) : undefined;
      if (table !== undefined) return { ...piece, text: table };
      return sheet === undefined ? piece : { ...piece, text: `${quotedName(sheet)}!` };
    }),
  );

/** The sheets that a formula reads. */
export const sheetsIn = (formula: string): string[] =>
  tokens(formula).flatMap(({ kind, text }) => (kind === "sheet" ? [sheetName(text)] : []));
