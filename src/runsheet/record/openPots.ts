import type { Log } from "../tables/runsLog";
import { loggedPots } from "./loggedPots";
import { isPoured, type PouredPot, type PouredRun } from "./poured";

/** The pots of a run by what is to be done with them. */
export interface PotsByState {
  /** Poured and not in the log yet. */
  readonly open: readonly PouredPot[];
  readonly logged: readonly PouredPot[];
  /** Nothing is written of them: they stay open. */
  readonly unpoured: readonly PouredPot[];
}

export function potsByState({ lot, pots }: PouredRun, log: Log): PotsByState {
  const logged = loggedPots(log, lot);
  const known = logged && new Set(logged);
  const isLogged = ({ id }: PouredPot) => known === undefined || known.has(id);
  return {
    open: pots.filter((pot) => isPoured(pot) && !isLogged(pot)),
    logged: pots.filter((pot) => isPoured(pot) && isLogged(pot)),
    unpoured: pots.filter((pot) => !isPoured(pot)),
  };
}
