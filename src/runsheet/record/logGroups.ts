import { sum } from "../../core/statistics/sum";
import { sameName } from "../sameName";
import type { PouredPot, PouredRun } from "./poured";

/** Candles of one vessel and scent at one load, of the same lots, gathered from their pots. */
export interface LogGroup {
  readonly scent: string;
  readonly load: string;
  readonly vessel: string;
  count: number;
  readonly good: { good: number; of: number }[];
  readonly weighed: number[];
  readonly pots: PouredPot[];
  readonly weights: { wax: number; waxActual?: number | undefined; scent: number; scentActual?: number | undefined }[];
}

/** What a run adds to the log: one group for each vessel, scent and load, and apart what was made of other lots. */
export function groupsOf(run: PouredRun): LogGroup[] {
  const groups = new Map<string, LogGroup>();
  for (const pot of run.pots) {
    const { scent, load } = pot;
    const lots = pot.parts.map(({ item, lot }) => [sameName(item), sameName(lot)]);
    const poured = sum(pot.lines.map(({ count, fill }) => count * fill));
    for (const { vessel, count, fill, good, weighed } of pot.lines) {
      const key = JSON.stringify([sameName(scent), load, sameName(vessel), lots]);
      const group: LogGroup = groups.get(key) ?? {
        scent,
        load,
        vessel,
        count: 0,
        good: [],
        weighed: [],
        pots: [],
        weights: [],
      };
      groups.set(key, group);
      if (group.pots.at(-1) !== pot) group.pots.push(pot);
      const share = poured > 0 ? (count * fill) / poured : 0;
      const part = (weight: number | undefined) => (weight === undefined ? undefined : weight * share);
      group.count += count;
      if (good !== undefined) group.good.push({ good, of: count });
      if (weighed !== undefined) group.weighed.push(weighed);
      group.weights.push({
        wax: pot.wax.planned * share,
        waxActual: part(pot.wax.actual),
        scent: pot.scentWeight.planned * share,
        scentActual: part(pot.scentWeight.actual),
      });
    }
  }
  return [...groups.values()];
}
