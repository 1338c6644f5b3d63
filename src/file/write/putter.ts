import type { Cut, Piece } from "./rawXml";

/** The raw text of the first element of this name. */
export const rawOf = (within: Cut, name: string): string | undefined =>
  within.pieces.find((piece) => piece.name === name)?.raw;

export type Put = (within: Cut, name: string, ...elements: readonly string[]) => void;

/**
 * Puts an element, or several of one name, in the place of those that are there, or where the schema wants them: its
 * order of names, as one text with spaces.
 */
export function putter(names: string): Put {
  const order = names.split(" ");
  return (within, name, ...elements) => {
    const pieces = elements.filter((raw) => raw !== "").map((raw): Piece => ({ name, raw }));
    const at = within.pieces.findIndex((piece) => piece.name === name);
    if (at >= 0) {
      const others = within.pieces.slice(at).filter((piece) => piece.name !== name);
      within.pieces.splice(at, Number.POSITIVE_INFINITY, ...pieces, ...others);
      return;
    }
    // Behind the last of those that come before it: what is not in the list keeps its place between its neighbours.
    const place = order.indexOf(name);
    const isEarlier = (piece: Piece): boolean => order.includes(piece.name) && order.indexOf(piece.name) < place;
    const earlier = within.pieces.reduce((last, piece, i) => (isEarlier(piece) ? i : last), -1);
    within.pieces.splice(earlier + 1, 0, ...pieces);
  };
}
