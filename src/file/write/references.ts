import { joined, tokens } from "../formula/tokens";
import { quotedName } from "./addresses";

/** Sheets that are called another way now, new names by old ones. */
export type Renames = ReadonlyMap<string, string>;

/** The name of the sheet that a reference says up to its `!`. */
const nameIn = (text: string): string =>
  text
    .slice(0, -1)
    .replace(/^'(.*)'$/s, "$1")
    .replaceAll("''", "'");

/** A formula as files hold it, with the sheets by their new names. */
export const renamedIn = (formula: string, renames: Renames): string =>
  joined(
    tokens(formula).map((piece, at, pieces) => {
      const isElsewhere = pieces[at - 1]?.kind === "brackets";
      const name = piece.kind === "sheet" && !isElsewhere ? renames.get(nameIn(piece.text)) : undefined;
      return name === undefined ? piece : { ...piece, text: `${quotedName(name)}!` };
    }),
  );

/** The sheets that a formula reads. */
export const sheetsIn = (formula: string): string[] =>
  tokens(formula).flatMap(({ kind, text }) => (kind === "sheet" ? [nameIn(text)] : []));
