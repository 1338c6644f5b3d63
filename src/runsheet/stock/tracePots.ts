import type { Move } from "../tables/moves";
import { type MovePots, potsInNote } from "../tables/potsWords";
import { toMillionths } from "./millionths";
import type { RunCandles } from "./trace";

/** Why candles may be listed that hold nothing of a lot: no pots are named, or the log counts pots together. */
export type TraceDoubt = "no pots" | "pots together";

/** The pots that moves of one lot and run took it for. What a correction gave back took none. */
export function takingPots(moves: readonly Move[]): MovePots {
  const sums = new Map<string, { pots: MovePots; used: number }>();
  for (const { note, change } of moves) {
    const pots = potsInNote(note);
    const key = JSON.stringify(pots ?? null);
    sums.set(key, { pots, used: (sums.get(key)?.used ?? 0) - toMillionths(change.count) });
  }
  const named = new Set<string>();
  let isAll = false;
  for (const { pots, used } of sums.values()) {
    if (used <= 0) continue;
    if (pots === undefined) return undefined;
    if (pots === "all") isAll = true;
    else for (const id of pots) named.add(id);
  }
  if (isAll) return "all";
  return named.size > 0 ? [...named] : undefined;
}

/** The candles of a run that come from these pots; all of them where that cannot be said, for a recall misses none. */
export function holding(
  all: readonly RunCandles[],
  pots: MovePots,
): { readonly candles: readonly RunCandles[]; readonly doubt: TraceDoubt | undefined } {
  const known = new Set(all.flatMap((one) => one.pots ?? []));
  const isKnown = pots !== undefined && (pots === "all" || pots.every((id) => known.has(id)));
  if (!isKnown) return { candles: all, doubt: all.length > 1 || known.size > 1 ? "no pots" : undefined };
  if (pots === "all") return { candles: all, doubt: undefined };
  const candles = all.filter((one) => one.pots === undefined || one.pots.some((id) => pots.includes(id)));
  const isApart = candles.every((one) => one.pots?.every((id) => pots.includes(id)));
  return { candles, doubt: isApart ? undefined : "pots together" };
}
