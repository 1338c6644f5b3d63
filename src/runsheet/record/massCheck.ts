import { sum } from "../../core/statistics/sum";
import { formatWeight } from "../likelyWeight";
import { percent } from "../percent";
import type { WeightUnit } from "../settings";
import type { PouredPot } from "./poured";

/** What was poured from some pots, beside what was melted in them. */
export interface MassCheck {
  readonly melted: number;
  readonly poured: number;
  /** Melted beyond the pour, as a share of what was poured: the same measure as the loss that was planned. */
  readonly loss: number;
  readonly plannedLoss: number;
  /** What was not weighed and how it was reckoned. */
  readonly assumed: readonly string[];
  /** What the rounding of the scale alone may put between the two. */
  readonly noise: number;
}

/**
 * Weighs what was poured against what was melted. Candles that did not come out good were poured too. Where one candle
 * was weighed all of its row are taken to weigh as much; rows and ingredients that were not weighed are taken as planned.
 * Undefined where no candle was weighed: then nothing is known of the pour.
 * @param division what the scale reads to; 0 where it is not known
 */
export function massCheck(pots: readonly PouredPot[], division: number, unit: WeightUnit): MassCheck | undefined {
  const lines = pots.flatMap((pot) => pot.lines);
  const parts = pots.flatMap((pot) => pot.parts);
  const planned = { melted: sum(parts.map((part) => part.planned)), poured: sum(lines.map((l) => l.count * l.fill)) };
  const melted = sum(parts.map((part) => part.actual ?? part.planned));
  const poured = sum(lines.map(({ count, fill, weighed }) => count * (weighed ?? fill)));
  if (lines.every(({ weighed }) => weighed === undefined) || !(poured > 0 && planned.poured > 0)) return undefined;
  const each = lines.flatMap(({ vessel, count, fill, weighed }) => {
    if (count === 0 || (weighed !== undefined && count === 1)) return [];
    const how = weighed === undefined ? "as planned" : "by the one weighed";
    return [`${count} x ${vessel} ${how}, ${formatWeight(weighed ?? fill, unit)} each`];
  });
  const unweighed = parts.flatMap(({ label, planned, actual }) =>
    actual === undefined && planned > 0 ? [`${label} as planned`] : [],
  );
  const weighings = parts.length + sum(lines.map(({ count, weighed }) => (weighed === undefined ? 0 : count)));
  return {
    melted,
    poured,
    loss: melted / poured - 1,
    plannedLoss: planned.melted / planned.poured - 1,
    assumed: [...new Set([...each, ...unweighed])],
    noise: (weighings * division) / 2,
  };
}

/** Whether more was poured than was melted, by more than the scale's rounding explains. */
export const isOverPoured = ({ melted, poured, noise }: MassCheck): boolean =>
  poured > (melted + noise) * (1 + Number.EPSILON * 8);

/** `melted 1030 g, poured 1004 g: loss 2.6 %, planned 3 %`, and what was taken for granted. */
export function formatMass({ melted, poured, loss, plannedLoss, assumed }: MassCheck, unit: WeightUnit): string {
  const share = (value: number) => `${percent(Number(value.toFixed(3)))} %`;
  const taken = assumed.length === 0 ? "" : ` (taken: ${assumed.join("; ")})`;
  const weights = `melted ${formatWeight(melted, unit)}, poured ${formatWeight(poured, unit)}`;
  const lost = loss < 0 ? `no loss but ${share(-loss)} more` : `loss ${share(loss)}`;
  return `${weights}: ${lost}, planned ${loss < 0 ? "a loss of " : ""}${share(plannedLoss)}${taken}`;
}
