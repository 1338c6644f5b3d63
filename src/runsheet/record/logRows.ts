import { loadFrom } from "../../core/scent/loadFrom";
import { sum } from "../../core/statistics/sum";
import type { Content } from "../../sheet/sheet";
import { formatWeight, isWaxFactor, POURED } from "../likelyWeight";
import { sameName } from "../sameName";
import { potsText } from "../tables/potsWords";
import { type LogHeading, POTS } from "../tables/runsLog";
import type { Vessels } from "../tables/vessels";
import type { LogRow } from "./logAddition";
import { groupsOf, type LogGroup } from "./logGroups";
import { formatMass, massCheck } from "./massCheck";
import type { PouredRun } from "./poured";

/**
 * The rows a poured run adds to the log: one for each vessel, scent and load, apart by the lots that went in. A pot's
 * wax and scent are shared out among its vessels as they were poured, so that the column adds up to what was weighed.
 * What was not written stays blank.
 */
export function logRows(run: PouredRun, vessels: Vessels): LogRow[] {
  const groups = groupsOf(run);
  return groups.map((group) => {
    const candles = candlesOf(group, vessels.get(sameName(group.vessel))?.water);
    const mass = massOf(group, run);
    const remarks = [
      ...otherLoad(group, groups),
      ...potRemarks(group),
      ...(mass ? [mass.remark] : []),
      ...candles.unfit.map(unfitRemark(run)),
    ];
    const days = run.cure.get(group.scent);
    const numbers = {
      Date: run.date,
      ...yieldOf(group),
      ...weightsOf(group),
      "Weighed each": candles.each,
      "Water weight": candles.water,
      "Wax factor shown": candles.factor,
      "Cured until": days === undefined ? undefined : run.date + days,
      "Loss shown": mass?.loss,
    };
    const texts = {
      Lot: run.lot,
      Scent: group.scent,
      Vessel: group.vessel,
      "Weights in": run.unit,
      Remarks: remarks.join(" "),
      Notes: [run.notes, ...doneOf(group)].filter((words) => words !== "").join(". "),
      "Made by": run.madeBy,
      [POTS]: potsText(group.pots),
    };
    return { ...filled(numbers, (number) => ({ number })), ...filled(texts, (text) => ({ text })) };
  });
}

/** How the pots of a row were melted, scented and poured: each by its title where they are several. */
const doneOf = ({ pots }: LogGroup): string[] =>
  pots.flatMap(({ id, done }) => (done.length === 0 ? [] : [`${pots.length > 1 ? `${id}: ` : ""}${done.join("; ")}`]));

/** What is there of some values, as contents. */
const filled = <T extends string | number>(
  values: Readonly<Partial<Record<LogHeading, T | undefined>>>,
  content: (value: T) => Content,
): LogRow =>
  Object.fromEntries(
    Object.entries(values).flatMap(([heading, value]) =>
      value === undefined || value === "" ? [] : [[heading, content(value)]],
    ),
  );

/** Candles, good ones, and their share. */
function yieldOf({ count, good }: LogGroup) {
  const goodCount = good.length > 0 ? sum(good.map((one) => one.good)) : undefined;
  // A pot whose candles were not counted is no pot of rejects: the yield waits until all are.
  const isCounted = sum(good.map((one) => one.of)) === count;
  const share = goodCount !== undefined && isCounted && count > 0 ? goodCount / count : undefined;
  return { Candles: count, Good: goodCount, Yield: share };
}

/** Wax and scent, each as planned and as weighed, and the load they make. */
function weightsOf({ weights }: LogGroup) {
  const all = (values: (number | undefined)[]) => (values.includes(undefined) ? undefined : sum(values as number[]));
  const [wax, waxActual] = [all(weights.map((one) => one.wax)), all(weights.map((one) => one.waxActual))];
  const [scent, scentActual] = [all(weights.map((one) => one.scent)), all(weights.map((one) => one.scentActual))];
  // More scent than wax is a slip that was logged all the same: it shows no load.
  const isLoad = waxActual !== undefined && scentActual !== undefined && scentActual < waxActual;
  return {
    "Wax planned": wax,
    "Wax actual": waxActual,
    "Scent planned": scent,
    "Scent actual": scentActual,
    "Load as weighed (of wax)": isLoad ? loadFrom(waxActual, scentActual) : undefined,
  };
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

const potRemarks = ({ pots }: LogGroup): string[] => [
  ...new Set(pots.map(({ remark }) => remark).filter((remark) => remark !== "")),
];

const mean = (values: readonly number[]): number | undefined =>
  values.length > 0 ? sum(values) / values.length : undefined;

/** What became of the wax of a row's pots, as far as candles of theirs were weighed: in words, and the loss it shows. */
function massOf({ pots }: LogGroup, { division, unit }: PouredRun): { remark: string; loss: number } | undefined {
  const weighed = pots.filter(({ lines }) => lines.some((line) => line.weighed !== undefined));
  const mass = massCheck(weighed, division, unit);
  if (!mass) return undefined;
  const of =
    pots.length === 1
      ? "Its pot"
      : weighed.length < pots.length
        ? `${weighed.length} of its ${pots.length} pots`
        : `Its ${pots.length} pots`;
  return { remark: `${of}: ${formatMass(mass, unit)}.`, loss: mass.loss };
}
