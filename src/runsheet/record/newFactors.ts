import { plain } from "../../core/check/plain";
import { waxFactor } from "../../core/fill/waxFactor";
import { waxFactorSpread } from "../../core/fill/waxFactorSpread";
import type { CellValue } from "../../sheet/sheet";
import { isWaxFactor, POURED } from "../likelyWeight";
import { sameName } from "../sameName";
import { CHOICES, type WeightUnit } from "../settings";
import type { Vessels } from "../tables/vessels";

/** The runs log as it stands in the workbook. */
export interface LogTable {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

/** One pour of a vessel: a row of the log, which is the mean of the candles that were weighed for it. */
interface LoggedPour {
  readonly lot: string;
  readonly vessel: string;
  readonly weighed: number;
  readonly water: number | undefined;
  /** Wax and scent planned for one candle. */
  readonly planned: number | undefined;
  readonly unit: WeightUnit | undefined;
}

/** The rows of the log in which a candle was weighed. */
export function loggedPours({ headings, rows }: LogTable): LoggedPour[] {
  const column = (heading: string) => headings.indexOf(heading);
  const at = {
    lot: column("Lot"),
    vessel: column("Vessel"),
    weighed: column("Weighed each"),
    water: column("Water weight"),
    candles: column("Candles"),
    wax: column("Wax planned"),
    scent: column("Scent planned"),
    unit: column("Weights in"),
  };
  return rows.flatMap((cells) => {
    const number = (at: number) => (typeof cells[at] === "number" ? cells[at] : undefined);
    const [weighed, wax, scent, candles] = [at.weighed, at.wax, at.scent, at.candles].map(number);
    if (weighed === undefined || !(weighed > 0)) return [];
    const planned = wax !== undefined && candles ? (wax + (scent ?? 0)) / candles : undefined;
    const water = number(at.water);
    return [
      {
        lot: String(cells[at.lot] ?? "").trim(),
        vessel: String(cells[at.vessel] ?? ""),
        weighed,
        water: water !== undefined && water > 0 ? water : undefined,
        planned,
        unit: CHOICES.unit.find((unit) => unit === cells[at.unit]),
      },
    ];
  });
}

/** A wax factor is offered once it is known this well: half of its 95 % interval. 3 in 86 is a rim of 3.5 % of the fill. */
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
 */
export function newFactors(log: LogTable, vessels: Vessels): ShownFactor[] {
  const pours = loggedPours(log);
  return [...vessels].flatMap(([key, { vessel, row, factor: old }]) => {
    const own = pours.flatMap(({ vessel, water, weighed, lot }) =>
      sameName(vessel) === key && water !== undefined ? [{ poured: weighed, water, lot }] : [],
    );
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
    const spread = fit.length > 1 ? waxFactorSpread(fit) : undefined;
    const isSure = spread === undefined || spread <= SURE;
    const says = [`${vessel}: ${formatFactor(factor)}${certainty(spread, fit.length)}`, ...out].join("; ");
    return [{ vessel, says, offer: isSure ? { vessel, row, old, factor } : undefined }];
  });
}

function certainty(spread: number | undefined, pours: number): string {
  if (spread === undefined) return ", from one pour: how sure is not known; pour once more";
  const shown = ` ± ${formatFactor(spread)} (95 %), from ${pours} pours`;
  return spread <= SURE ? shown : `${shown}: not sure enough yet, ± ${SURE} is wanted; pour once more`;
}

/** To the four digits that are kept. */
export const formatFactor = (factor: number): string => plain(Number(factor.toFixed(4)));
