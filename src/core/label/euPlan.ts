import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { divisionsIn } from "../weighing/divisionsIn";
import type { LotPlan } from "./lotPlan";

/** The double samples of the reference test, by batch size. */
const REFERENCE_TEST = [
  { upTo: 500, stages: [stage(30, 1, 3), stage(60, 4, 5)] },
  { upTo: 3200, stages: [stage(50, 2, 5), stage(100, 6, 7)] },
  { upTo: Number.POSITIVE_INFINITY, stages: [stage(80, 3, 7), stage(160, 8, 9)] },
];

/**
 * How a batch is checked by Directive 76/211/EEC: its tolerable negative error and its reference test.
 * A batch under 100 is weighed whole; up to 5 % of it may be short (UK SI 2006/659, Schedule 2).
 * @param label in grams, 5 to 10,000
 * @param lot candles in it, 1 or more
 */
export function euPlan(label: number, lot: number): LotPlan {
  const allowed = tolerableError(label);
  const most = 2 * allowed;
  if (lot < 100) {
    const accept = Math.floor(lot / 20);
    return { allowed, most, mean: "whole", sure: 0, stages: [stage(lot, accept, accept + 1)] };
  }
  const row = REFERENCE_TEST.find(({ upTo }) => lot <= upTo);
  return { allowed, most, mean: "sample", sure: 0.99, stages: row?.stages ?? [] };
}

function stage(weigh: number, accept: number, reject: number): LotPlan["stages"][number] {
  return { weigh, accept, reject };
}

/** Tolerable negative error in grams; the percentages are rounded up to a tenth of a gram (from memory). */
function tolerableError(label: number): number {
  if (!(label >= 5 && label <= 10_000)) {
    throw wrong("label", `${plain(label)} g is outside 5 g to 10 kg, which 76/211/EEC covers; check the unit`);
  }
  const percent = (share: number): number => Math.ceil(divisionsIn(label * share, 0.1)) / 10;
  if (label <= 50) return percent(0.09);
  if (label <= 100) return 4.5;
  if (label <= 200) return percent(0.045);
  if (label <= 300) return 9;
  if (label <= 500) return percent(0.03);
  if (label <= 1000) return 15;
  return percent(0.015);
}
