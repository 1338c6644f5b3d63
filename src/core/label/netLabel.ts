import { aboveZero } from "../check/aboveZero";
import { oneOf } from "../check/oneOf";
import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { checkedUnit } from "../units/checkedUnit";
import { divisionsIn } from "../weighing/divisionsIn";

// The label's own factors and none others: 16 CFR 500.19(a). A pound is exactly 16 of these ounces.
const GRAMS = { g: 1, kg: 1000, oz: 28.3495, lb: 453.592 } as const;

/**
 * Net weight as a label declares it. Each of the two declarations is worked out from the weight, not from the
 * other, and rounded down: neither is more than there is, though one of them is nearer to it.
 * Ounces have two places at most, trailing zeros dropped; from one pound on, whole pounds and the ounces left.
 * Grams are whole, below 10 g in tenths; from 1 kg on, kilograms to three digits.
 * Source: 16 CFR 500.19 for the factors and digits; rounding down is the packer's safe side (NIST).
 * @param weight above 0, in `unit`: g, kg, oz or lb
 * @param style `us` for both, `metric` for the metric one alone
 */
export function netLabel(weight: number, unit: string, style = "us"): string {
  const way = oneOf("style", style, ["us", "metric"]);
  const grams = aboveZero("weight", weight) * GRAMS[checkedUnit("weight", "unit", unit)];
  const tooLittle = () => wrong("weight", `${plain(grams)} g is too little to declare; check its unit`);
  const metric = metricDown(grams);
  if (metric === "0 g") throw tooLittle();
  if (way === "metric") return metric;
  const hundredths = Math.floor(divisionsIn(grams, GRAMS.oz / 100));
  if (hundredths === 0) throw tooLittle();
  const [pounds, ounces] = [Math.floor(hundredths / 1600), (hundredths % 1600) / 100];
  const parts = [...(pounds > 0 ? [`${pounds} lb`] : []), ...(ounces > 0 ? [`${plain(ounces)} oz`] : [])];
  return `Net Wt ${parts.join(" ")} (${metric})`;
}

function metricDown(grams: number): string {
  const power = Number(grams.toExponential(14).split("e")[1]);
  const step = power < 1 ? 0.1 : 10 ** Math.max(0, power - 2);
  const shown = Math.floor(divisionsIn(grams, step)) * step;
  return shown < 1000 ? `${plain(shown)} g` : `${plain(shown / 1000)} kg`;
}
