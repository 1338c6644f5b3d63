import type { Move } from "../tables/moves";
import { type MovePots, potsInNote } from "../tables/potsWords";
import { fromMillionths, toMillionths } from "./millionths";

/** So much of a lot that was taken and not given back, for the pots that its moves name. */
export interface StandingUse extends Pick<Move, "item" | "lot"> {
  /** As the table counts it; below 0 where more came back. */
  readonly used: number;
  readonly pots: MovePots;
}

/** What moves of one lot took and did not give back, by the pots that they name. */
export function standingUses(moves: readonly Move[]): StandingUse[] {
  const found = new Map<string, StandingUse>();
  for (const { item, lot, note, change } of moves) {
    const pots = potsInNote(note);
    const key = JSON.stringify(pots ?? null);
    const known = found.get(key) ?? { item, lot, used: 0, pots };
    found.set(key, { ...known, used: fromMillionths(toMillionths(known.used) - toMillionths(change.count)) });
  }
  return [...found.values()].filter(({ used }) => used !== 0);
}
