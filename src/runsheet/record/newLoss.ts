import { studentT } from "../../core/statistics/studentT";
import { throughOrigin } from "../../core/statistics/throughOrigin";
import { percent } from "../percent";
import type { Log } from "../tables/runsLog";

/** A loss is offered once it is known this well: half of its 95 % interval, in shares of the pour. */
const SURE = 0.02;
/** Beyond these no pour loses: more was poured than melted, or half of a pot is gone. A slip is more likely. */
const POSSIBLE = { least: 0, most: 0.5 };

/** What the log shows of the loss: in words, and one to offer as the setting where it is another one. */
export interface ShownLoss {
  readonly says: string;
  readonly offer: number | undefined;
}

/**
 * The mean of the losses that the logged pours show, where it differs from the setting. Rows of the same pots are one
 * pour. Losses that no pour makes are left out, and that is said.
 * @param now the setting; undefined while it is not known
 */
export function newLoss(log: Log, now: number | undefined): ShownLoss | undefined {
  const pours = new Map(
    log.rows.flatMap(({ lot, pots, vessel, loss }) =>
      loss === undefined ? [] : [[JSON.stringify([lot, pots ?? vessel]), { lot, loss }] as const],
    ),
  );
  const isPossible = ({ loss }: { loss: number }) => loss >= POSSIBLE.least && loss <= POSSIBLE.most;
  const fit = [...pours.values()].filter(isPossible);
  const left = [...pours.values()].filter((one) => !isPossible(one));
  const out =
    left.length === 0
      ? []
      : [
          `left out: ${left.map(({ lot, loss }) => `${formatLoss(loss)}${lot === "" ? "" : ` in ${lot}`}`).join(", ")}, a slip is more likely`,
        ];
  if (fit.length === 0) return out.length > 0 ? { says: out.join("; "), offer: undefined } : undefined;
  const { slope: mean, error } = throughOrigin(fit.map(({ loss }) => ({ x: 1, y: loss })));
  const offer = Number(mean.toFixed(3));
  if (now !== undefined && Math.abs(offer - now) < 5e-4) return undefined;
  const spread = fit.length > 1 ? studentT(fit.length - 1) * error : undefined;
  const isSure = spread === undefined || spread <= SURE;
  const says = [`${formatLoss(mean)}${certainty(spread, fit.length)}`, ...out].join("; ");
  return { says, offer: isSure && now !== undefined ? offer : undefined };
}

function certainty(spread: number | undefined, pours: number): string {
  if (spread === undefined) return ", from one pour: how sure is not known; pour once more";
  const shown = ` ± ${formatLoss(spread)} (95 %), from ${pours} pours`;
  return spread <= SURE ? shown : `${shown}: not sure enough yet, ± ${formatLoss(SURE)} is wanted; pour once more`;
}

/** To the tenth of a percent that is kept. */
export const formatLoss = (loss: number): string => `${percent(Number(loss.toFixed(3)))} %`;
