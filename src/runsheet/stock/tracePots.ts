import type { Move } from "../tables/moves";
import type { MovePots } from "../tables/potsWords";
import { standingUses } from "./standingUses";
import type { RunCandles } from "./trace";

/** Why candles may be listed that hold nothing of a lot: no pots are named, or the log counts pots together. */
export type TraceDoubt = "no pots" | "pots together";

/** The pots that moves of one lot and run took it for. What a correction gave back took none. */
export function takingPots(moves: readonly Move[]): MovePots {
  const taken = standingUses(moves).filter(({ used }) => used > 0);
  if (taken.length === 0 || taken.some(({ pots }) => pots === undefined)) return undefined;
  if (taken.some(({ pots }) => pots === "all")) return "all";
  return [...new Set(taken.flatMap(({ pots }) => pots ?? []))];
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
