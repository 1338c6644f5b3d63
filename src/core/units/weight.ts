import { checkedUnit } from "./checkedUnit";

const POUND = 453.59237; // exact: Weights and Measures Act 1985 (UK), Sch. 1 Part V; NIST SP 811

const GRAMS = { g: 1, kg: 1000, oz: POUND / 16, lb: POUND } as const;

/** Grams in one of a weight unit: `g`, `kg`, `oz` or `lb`. Faults on any other. */
export function gramsIn(name: string, unit: string): number {
  return GRAMS[checkedUnit("weight", name, unit)];
}
