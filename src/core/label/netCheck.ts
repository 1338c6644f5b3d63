import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { oneOf } from "../check/oneOf";
import { plain } from "../check/plain";
import { wholeNumber } from "../check/wholeNumber";
import { wrong } from "../check/wrong";
import { Fault } from "../fault";
import { deviation } from "../statistics/deviation";
import { studentT } from "../statistics/studentT";
import { checkedUnit } from "../units/checkedUnit";
import { gramsIn } from "../units/weight";
import { euPlan } from "./euPlan";
import { usPlan } from "./usPlan";

/** Net contents checked against a label; weights in the label's unit. */
export interface NetCheck {
  /**
   * `passes`, `fails: ` with the reasons, or `not enough weighed: ` with how many and how many the plan asks for.
   * Fewer than the plan asks for fail where no further candle could make them pass; their mean is not judged.
   * Where no lot size was given it says of how many the whole lot was taken to be.
   */
  readonly verdict: string;
  /** Mean weight less the label. */
  readonly meanError: number;
  /** The lowest mean error that passes, 0 or below. */
  readonly meanLimit: number;
  /** What one candle may be short by before it counts as short. */
  readonly allowedShortfall: number;
  readonly numberShort: number;
}

/**
 * Checks weighed candles against their label as an inspector would; it is no official inspection.
 * The mean may be below the label by t s / sqrt(n), Student's t for what was really weighed: 0.975 for Handbook 133
 * and 0.995 for the directive, whose printed factors are the same for the sample sizes they name.
 * Source: NIST Handbook 133, Category A (`us`); Directive 76/211/EEC, reference test (`eu`), and its like in SI
 * 2006/659 (`uk`; that the two agree is from memory).
 * @param label net weight above 0, in `unit`: g, kg, oz or lb
 * @param weights net weights, in `unit`, at least one, none under half or over twice the label
 * @param lotSize candles in the lot, a whole number; the number weighed when left out
 */
export function netCheck(
  label: number,
  weights: readonly number[],
  unit: string,
  rule = "us",
  lotSize?: number,
): NetCheck {
  const planOf = oneOf("rule", rule, ["us", "eu", "uk"]) === "us" ? usPlan : euPlan;
  const shown = checkedUnit("weight", "unit", unit);
  const grams = gramsIn("unit", shown);
  if (weights.length === 0) throw new Fault("none", "weights", "nothing weighed; give the net weights of some candles");
  const lot = wholeNumber(lotSize ?? weights.length);
  if (!(lot >= weights.length)) {
    throw wrong("lotSize", `${plain(lotSize ?? 0)} for ${weights.length} weighed; write how many the whole lot holds`);
  }
  const inPounds = shown === "oz" || shown === "lb";
  const { allowed, most, mean, sure, stages } = planOf(aboveZero("label", label) * grams, lot, inPounds);
  const errors = weights.map((weight) => checkedNet(weight, label, shown) - label);
  const count = weights.length;
  // What binary fractions add to a difference is no weight.
  const shortBy = (limit: number): number => errors.filter((error) => -error > limit / grams + label * 1e-12).length;
  const { mean: meanError, deviation: spread } = deviation(errors);
  const chance = mean === "sample" && count > 1 ? (studentT(count - 1, sure) * spread) / Math.sqrt(count) : 0;
  const slack = mean === "free" ? allowed / grams : chance;
  const numberShort = shortBy(allowed);

  const inUnit = (weight: number): string => `${plain(Number(weight.toPrecision(4)))} ${shown}`;
  const result = { meanError, meanLimit: 0 - slack, allowedShortfall: allowed / grams, numberShort };
  const stage = stages.filter(({ weigh }) => weigh <= count).at(-1);
  // Before the first stage the last one judges: too many short ones for that are too many whatever follows.
  const judge = stage ?? stages.at(-1);
  const next = stages.find(({ weigh }) => weigh > count);
  const isUndecided = !stage || (numberShort > stage.accept && numberShort < stage.reject);
  const failures = [
    ...(stage && mean !== "free" && meanError < -slack - label * 1e-12
      ? [`mean ${inUnit(-meanError)} short, at most ${inUnit(slack)}`]
      : []),
    ...(judge && numberShort >= judge.reject
      ? [`${numberShort} short by more than ${inUnit(allowed / grams)}, at most ${judge.accept}`]
      : []),
    ...(shortBy(most) > 0 ? [`${shortBy(most)} short by more than ${inUnit(most / grams)}, none may be`] : []),
  ];
  const assumed = lotSize === undefined ? `, of a whole lot of ${lot}` : "";
  if (failures.length > 0) return { verdict: `fails${assumed}: ${failures.join("; ")}`, ...result };
  if (isUndecided) return { verdict: `not enough weighed: ${count}, the plan asks for ${next?.weigh}`, ...result };
  return { verdict: `passes${assumed}`, ...result };
}

/** The net weight where a candle of that label may have it, else a fault: in another unit, or with its vessel. */
function checkedNet(weight: number, label: number, unit: string): number {
  const isUnder = atLeastZero("weights", weight) < label / 2;
  if (!isUnder && weight <= label * 2) return weight;
  const far = isUnder ? "under half" : "over twice";
  throw wrong(
    "weights",
    `${plain(weight)} is ${far} the label of ${plain(label)} ${unit}; check the unit: write all in ${unit}, without the vessel`,
  );
}
