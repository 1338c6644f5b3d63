import { checkedUnit } from "./checkedUnit";

const CENTIMETRES = { mm: 0.1, cm: 1, in: 2.54 } as const; // the inch: 16 CFR 500.19

/** Centimetres in one of a length unit: `mm`, `cm` or `in`. Faults on any other. */
export function centimetresIn(name: string, unit: string): number {
  return CENTIMETRES[checkedUnit("length", name, unit)];
}

/** Millimetres in one of a length unit. Faults on any other. */
export const millimetresIn = (name: string, unit: string): number => centimetresIn(name, unit) * 10;
