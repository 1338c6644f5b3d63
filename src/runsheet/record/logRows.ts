import { loadFrom } from "../../core/scent/loadFrom";
import { sum } from "../../core/statistics/sum";
import type { Content } from "../../sheet/sheet";
import { formatWeight, isWaxFactor, POURED } from "../likelyWeight";
import { sameName } from "../sameName";
import type { Vessels } from "../tables/vessels";
import { groupsOf, type LogGroup } from "./logGroups";
import { formatMass, massCheck } from "./massCheck";
import type { PouredPot, PouredRun } from "./poured";

/**
 * The rows a poured run adds to the log: one for each vessel, scent and load. A pot's wax and scent are shared out
 * among its vessels as they were poured, so that the column adds up to what was weighed. What was not written stays
 * blank.
 */
export function logRows(run: PouredRun, vessels: Vessels): (Content | null)[][] {
  const groups = groupsOf(run);
  return groups.map((group) => {
    const candles = candlesOf(group, vessels.get(sameName(group.vessel))?.water);
    const remarks = [...otherLoad(group, groups), ...potRemarks(group, run), ...candles.unfit.map(unfitRemark(run))];
    const numbers = [...yieldOf(group), ...weightsOf(group), candles.each, candles.water, candles.factor];
    return [
      { text: run.lot },
      { number: run.date },
      { text: group.scent },
      { text: group.vessel },
      ...numbers.map((number) => (number === undefined ? null : { number })),
      { text: run.unit },
      remarks.length === 0 ? null : { text: remarks.join(" ") },
    ];
  });
}

/** Candles, good ones, and their share. */
function yieldOf({ count, good }: LogGroup): (number | undefined)[] {
  const goodCount = good.length > 0 ? sum(good.map((one) => one.good)) : undefined;
  // A pot whose candles were not counted is no pot of rejects: the yield waits until all are.
  const isCounted = sum(good.map((one) => one.of)) === count;
  return [count, goodCount, goodCount !== undefined && isCounted && count > 0 ? goodCount / count : undefined];
}

/** Wax and scent, each as planned and as weighed, and the load they make. */
function weightsOf({ weights }: LogGroup): (number | undefined)[] {
  const all = (values: (number | undefined)[]) => (values.includes(undefined) ? undefined : sum(values as number[]));
  const [wax, waxActual] = [all(weights.map((one) => one.wax)), all(weights.map((one) => one.waxActual))];
  const [scent, scentActual] = [all(weights.map((one) => one.scent)), all(weights.map((one) => one.scentActual))];
  // More scent than wax is a slip that was logged all the same: it shows no load.
  const isLoad = waxActual !== undefined && scentActual !== undefined && scentActual < waxActual;
  return [wax, waxActual, scent, scentActual, isLoad ? loadFrom(waxActual, scentActual) : undefined];
}

/** What the candles that were weighed come to, and the wax factor they show. */
function candlesOf({ weighed }: LogGroup, water: number | undefined) {
  // A candle weighed with its vessel must become no factor, nor hide among others: it is left out, and that is said.
  const isFit = (weight: number) => water === undefined || isWaxFactor(weight / water);
  const fit = weighed.filter(isFit);
  const each = mean(fit.length > 0 ? fit : weighed);
  const factor = water !== undefined && fit.length > 0 && each !== undefined ? each / water : undefined;
  return { each, water, factor, unfit: weighed.filter((weight) => !isFit(weight)) };
}

const unfitRemark =
  ({ unit }: PouredRun) =>
  (weight: number): string =>
    `Left out of the wax factor: one of ${formatWeight(weight, unit)}, not within ${POURED.least} to ${POURED.most} of its water.`;

/** The load that a group was planned at, where another one of its scent was planned otherwise. */
function otherLoad(group: LogGroup, groups: readonly LogGroup[]): string[] {
  const isOther = (one: LogGroup) => sameName(one.scent) === sameName(group.scent) && one.load !== group.load;
  return groups.some(isOther) ? [`Planned at ${group.load}.`] : [];
}

const potRemarks = ({ pots }: LogGroup, run: PouredRun): string[] => [
  ...new Set(pots.map(({ remark }) => remark).filter((remark) => remark !== "")),
  ...massRemark(pots, run),
];

const mean = (values: readonly number[]): number | undefined =>
  values.length > 0 ? sum(values) / values.length : undefined;

/** What became of the wax of a row's pots, as far as candles of theirs were weighed. */
function massRemark(pots: readonly PouredPot[], { division, unit }: PouredRun): string[] {
  const weighed = pots.filter(({ lines }) => lines.some((line) => line.weighed !== undefined));
  const mass = massCheck(weighed, division, unit);
  if (!mass) return [];
  const of =
    pots.length === 1
      ? "Its pot"
      : weighed.length < pots.length
        ? `${weighed.length} of its ${pots.length} pots`
        : `Its ${pots.length} pots`;
  return [`${of}: ${formatMass(mass, unit)}.`];
}
