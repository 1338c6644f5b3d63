import { confidence } from "../check/confidence";
import { plain } from "../check/plain";
import { wholeNumber } from "../check/wholeNumber";
import { wrong } from "../check/wrong";
import { incompleteBeta } from "../statistics/incompleteBeta";

const MOST = 1_000_000;

/**
 * The lowest share of candles that may pass in the long run, by those that were tried: the lower end of the exact
 * one-sided binomial interval (Clopper and Pearson). Three of three at 95 % leave 0.368.
 * @param passed whole number, 0 up to those tried
 * @param tried whole number, 1 to 1,000,000
 * @param sure 0.5 up to below 1; 0.95 when left out
 */
export function passBound(passed: number, tried: number, sure = 0.95): number {
  const [good, all] = [counted("passed", passed), counted("tried", tried)];
  if (all === 0) throw wrong("tried", "none were tried; write 1 or more");
  if (good > all) throw wrong("passed", `${plain(good)} of ${plain(all)} tried; write at most as many as were tried`);
  const doubt = 1 - confidence("confidence", sure);
  // The more pass in the long run, the likelier are so many: the bound is where that likelihood is the doubt.
  let [low, high] = [0, good / all];
  for (let i = 0; i < 100 && low < high; i++) {
    const middle = (low + high) / 2;
    if (incompleteBeta(middle, good, all - good + 1) < doubt) low = middle;
    else high = middle;
  }
  return low;
}

function counted(name: string, value: number): number {
  const whole = wholeNumber(value);
  if (whole >= 0 && whole <= MOST) return whole;
  throw wrong(name, `${plain(value)} is not a count of candles; write a whole number from 0 to ${plain(MOST)}`);
}
