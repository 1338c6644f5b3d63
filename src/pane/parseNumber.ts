import { aboveZero } from "../core/check/aboveZero";
import { atLeastZero } from "../core/check/atLeastZero";
import { factor } from "../core/check/factor";
import { rate } from "../core/check/rate";
import { Fault } from "../core/fault";
import { TYPED } from "./words/settings";

/** What a number field takes: a weight above 0, a share below 100 %, a wax factor, or an amount of 0 or more. */
export type NumberKind = "weight" | "rate" | "factor" | "amount";

const CHECKS = { weight: aboveZero, rate, factor, amount: atLeastZero };

/** The number typed into a field, or the sentence to show beside it. `6%` is 0.06; a decimal comma is taken as one. */
export function parseNumber(kind: NumberKind, typed: string): { value: number } | { wrong: string } {
  const text = typed.trim();
  const [, digits, percent] = /^(-?\d*[.,]?\d+|-?\d+[.,])\s*(%?)$/.exec(text) ?? [];
  if (digits === undefined) return { wrong: text === "" ? TYPED.blank : TYPED.noNumber(text) };
  // 1,500 is fifteen hundred to one reader and one and a half to another.
  if (/^-?[1-9]\d{0,2},\d{3}$/.test(digits)) {
    return { wrong: TYPED.either(digits.replace(",", ""), digits.replace(",", ".")) };
  }
  const number = Number(digits.replace(",", ".")) / (percent ? 100 : 1);
  try {
    return { value: CHECKS[kind]("", number) };
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    return { wrong: fault.sentence };
  }
}
