import type { Basis } from "../../core/scent/basis";
import { sum } from "../../core/statistics/sum";
import type { Ingredient } from "../tables/recipes";
import type { ScentNotes } from "../tables/scents";
import type { LoadLimit, Remark } from "./checks/limits";

/** Candles of one kind in one pot: the same vessel with the same fill. */
export interface PotLine {
  readonly vessel: string;
  readonly count: number;
  /** Fill of one candle, and of all of them. */
  readonly fill: number;
  readonly poured: number;
}

/** One pot: what to weigh, in whole scale divisions, and what is poured from it. */
export interface PlannedPot {
  readonly lines: readonly PotLine[];
  readonly melted: number;
  /** One for each ingredient of the scent, in the same order. */
  readonly weights: readonly number[];
  readonly wax: number;
  readonly scent: number;
  /** The load after rounding. */
  readonly loads: Loads;
}

/** A load on both bases: of the wax, and of everything in the pot, dye and additives too. */
export type Loads = Readonly<Record<Basis, number>>;

/** All pots of one scent at one load in one wax. */
export interface ScentRun {
  /** Empty when the candles have no scent. */
  readonly scent: string;
  /** As the batch names it; empty for the usual one. */
  readonly wax: string;
  /** Before rounding; `load` is the one on the basis of the scent. */
  readonly loads: Loads;
  readonly load: number;
  readonly basis: Basis;
  readonly ingredients: readonly Ingredient[];
  readonly notes: ScentNotes | undefined;
  /** All that hold for each of its pots. */
  readonly limits: readonly LoadLimit[];
  /** The words of the lowest flash point of its oils; empty when none is known. */
  readonly flash: string;
  /** Limits that are not known, and flash points that are reached or not compared. */
  readonly remarks: readonly Remark[];
  readonly pots: readonly PlannedPot[];
  /** No plan needs fewer pots than this. */
  readonly bound: number;
}

export interface Totals {
  readonly candles: number;
  readonly pots: number;
  readonly wax: number;
  readonly scent: number;
  readonly melted: number;
  readonly poured: number;
}

export interface RunPlan {
  readonly scents: readonly ScentRun[];
  readonly totals: Totals;
}

/** The scent's name in front of a person. */
export function nameOf({ scent, load }: { readonly scent: string; readonly load: number }): string {
  return scent || (load > 0 ? "Scent not named" : "Unscented");
}

/** Sums over the pots of one or several scents. */
export function totalsOf(scents: readonly ScentRun[]): Totals {
  const pots = scents.flatMap((scent) => scent.pots);
  const lines = pots.flatMap((pot) => pot.lines);
  return {
    candles: sum(lines.map(({ count }) => count)),
    pots: pots.length,
    wax: sum(pots.map(({ wax }) => wax)),
    scent: sum(pots.map(({ scent }) => scent)),
    melted: sum(pots.map(({ melted }) => melted)),
    poured: sum(lines.map(({ poured }) => poured)),
  };
}

/** What of the melted is neither wax nor scent: dye and additives. */
export const othersOf = ({ melted, wax, scent }: Pick<Totals, "melted" | "wax" | "scent">): number =>
  Number((melted - wax - scent).toFixed(9));
