import { plain } from "../../core/check/plain";
import { waxFactor } from "../../core/fill/waxFactor";
import { waxFactorSpread } from "../../core/fill/waxFactorSpread";
import { isWaxFactor, POURED } from "../likelyWeight";
import { sameName } from "../sameName";
import type { Settings } from "../settings";
import type { Log } from "../tables/runsLog";
import type { Vessels } from "../tables/vessels";
import { weightRatio } from "../tables/weightUnits";

/**
 * A wax factor is offered once it is known this well, by two pours at least: half of its 95 % interval. 3 in 86 is a rim
 * of 3.5 % of the fill.
 */
const SURE = 0.03;

/** A wax factor that the log shows and the vessel table has otherwise. */
export interface NewFactor {
  readonly vessel: string;
  /** Of the vessel table, from 0. */
  readonly row: number;
  readonly old: number | undefined;
  readonly factor: number;
}

/** What the log shows of a vessel: in words, and a factor to offer where there is one. */
export interface ShownFactor {
  readonly vessel: string;
  readonly says: string;
  readonly offer: NewFactor | undefined;
}

/**
 * What all logged pours of the known vessels show together, where it differs from the vessel table. Each row of the
 * log is one pour, with the water its vessel held then. Pours that no wax makes are left out, and that is said.
 * @param scale what the scale reads to now: the log does not say what it did then
 */
export function newFactors(log: Log, vessels: Vessels, scale: Pick<Settings, "unit" | "division">): ShownFactor[] {
  return [...vessels].flatMap(([key, { vessel, row, factor: old }]) => {
    const own = log.rows.flatMap(({ vessel, water, weighed, lot, unit }) => {
      if (sameName(vessel) !== key || !weighed || !water) return [];
      const ratio = weightRatio(unit && { weight: unit }, scale.unit);
      return [{ poured: weighed * ratio, water: water * ratio, lot }];
    });
    const fit = own.filter(({ poured, water }) => isWaxFactor(poured / water));
    const left = own.filter((pour) => !fit.includes(pour));
    const out =
      left.length === 0
        ? []
        : [
            `left out: ${left.map(({ poured, water, lot }) => `${formatFactor(poured / water)} in ${lot}`).join(", ")}, for ${POURED.least} to ${POURED.most} was expected (weighed with its vessel?)`,
          ];
    const factor = fit.length > 0 ? waxFactor(fit) : undefined;
    const isNew = factor !== undefined && (old === undefined || Math.abs(old - factor) > 5e-5);
    if (!isNew) return out.length > 0 ? [{ vessel, says: `${vessel}: ${out}`, offer: undefined }] : [];
    const spread = fit.length > 1 ? waxFactorSpread(fit, scale.division) : undefined;
    const isSure = spread !== undefined && spread <= SURE;
    const says = [`${vessel}: ${formatFactor(factor)}${certainty(spread, fit.length)}`, ...out].join("; ");
    return [{ vessel, says, offer: isSure ? { vessel, row, old, factor } : undefined }];
  });
}

function certainty(spread: number | undefined, pours: number): string {
  if (spread === undefined) return ", from one pour: how sure is not known, so it is not offered yet; pour once more";
  // No scale makes it surer than the digits that are kept.
  const shown = ` ± ${formatFactor(Math.max(spread, 1e-4))} (95 %), from ${pours} pours`;
  return spread <= SURE ? shown : `${shown}: not sure enough yet, ± ${SURE} is wanted; pour once more`;
}

/** To the four digits that are kept. */
export const formatFactor = (factor: number): string => plain(Number(factor.toFixed(4)));
