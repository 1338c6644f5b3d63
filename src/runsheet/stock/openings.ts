import { sum } from "../../core/statistics/sum";
import { tidy } from "../../core/tidy";
import { sameName } from "../sameName";
import type { Use } from "../tables/byUse";
import type { Items } from "../tables/items";
import type { Move, Moves } from "../tables/moves";

/** What the note of a row says that carries On hand over into the moves. */
export const CARRIED = "carried over from On hand";

/** What On hand says of an item that has no move yet. */
export interface Opening {
  readonly item: string;
  readonly use: Use;
  /** As the table of moves counts it. */
  readonly change: number;
}

/**
 * What is to be put down first when items are moved for the first time: where there are moves they say what is on hand,
 * and what the table of items says counts no more.
 * @returns also what is to be said of items whose On hand is not carried over
 */
export function openingsOf(
  taken: readonly { readonly item: string; readonly use: Use }[],
  items: Items,
  moves: Pick<Moves, "rows" | "ratio" | "said">,
): { readonly openings: readonly Opening[]; readonly says: readonly string[] } {
  const moved = new Set([...moves.rows.map(({ item }) => sameName(item)), ...moves.said.keys()]);
  const openings: Opening[] = [];
  const says: string[] = [];
  for (const [key, { item, uses }] of usesOf(taken)) {
    const [use, other] = [...uses] as [Use, Use?];
    const listed = items.get(key)?.[use];
    if (!listed || moved.has(key)) continue;
    if (listed.wrong.some(({ field }) => field === "onHand")) says.push(notRead(item));
    else if (listed.onHand && other) says.push(inBothUses(item));
    else if (listed.onHand) {
      const change = tidy(listed.onHand / (use === "weight" ? moves.ratio : 1));
      openings.push({ item: listed.item, use, change });
    }
  }
  return { openings, says };
}

/** The items by name, each as it is spelt last. */
function usesOf(taken: Parameters<typeof openingsOf>[0]) {
  const found = new Map<string, { item: string; uses: Set<Use> }>();
  for (const { item, use } of taken) {
    const { uses } = found.get(sameName(item)) ?? { uses: new Set<Use>() };
    found.set(sameName(item), { item, uses: uses.add(use) });
  }
  return found;
}

const notRead = (item: string): string =>
  `${item}: what stands in On hand cannot be read, so it is not carried over into the moves; fix it first`;
const inBothUses = (item: string): string =>
  `${item} is taken by weight and by number here, and On hand is one number: it is not carried over into the moves. Give what is counted a name of its own first`;

/** Openings as rows of the table of moves, which come before all others. */
export const asMoves = (openings: readonly Opening[], date: number, ratio: number): Move[] =>
  openings.map(({ item, use, change }, i) => ({
    row: i - openings.length,
    date,
    item,
    lot: "",
    change: { count: change, weight: change * (use === "weight" ? ratio : 1) },
    paid: undefined,
    bestBefore: undefined,
    run: "",
    note: CARRIED,
  }));

export const isCarried = ({ note }: Pick<Move, "note">): boolean => note.startsWith(CARRIED);

/**
 * Whether what On hand says is in the moves: as one row that names neither run nor price, or as rows that say so in
 * their note, of which one may have been split by lots since. Nothing is in them as no row.
 */
export function isInMoves(onHand: number, item: string, use: Use, rows: readonly Move[]): boolean {
  // Names are compared last: a ledger may be long.
  const isOf = (move: Move) => sameName(move.item) === sameName(item);
  const isAlone = ({ lot, paid, run }: Move) => lot === "" && paid === undefined && run === "";
  if (rows.some((move) => isAlone(move) && isSame(move.change[use], onHand) && isOf(move))) return true;
  const carried = rows.filter((move) => isCarried(move) && isOf(move)).map(({ change }) => change[use]);
  return isSame(sum(carried), onHand);
}

/** The same but for what conversion and binary fractions leave. */
export const isSame = (one: number, other: number): boolean =>
  Math.abs(one - other) <= 1e-6 * Math.max(1, Math.abs(one), Math.abs(other));
