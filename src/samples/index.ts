import type { Sheet } from "../sheet/sheet";
import { burnTests } from "./burnTests";
import { costing } from "./costing";
import { pourDay } from "./pourDay";

/** A sample workbook: what it is called, the file it is kept in, and its sheets as descriptions. */
export interface Sample {
  readonly id: string;
  readonly title: string;
  readonly file: string;
  readonly sheets: () => Sheet[];
}

export const SAMPLES: readonly Sample[] = [
  { id: "pour-day", title: "A pour day", file: "1-pour-day.xlsx", sheets: pourDay },
  { id: "costing", title: "Costing", file: "2-costing.xlsx", sheets: costing },
  { id: "burn-tests", title: "Burn tests", file: "3-burn-tests.xlsx", sheets: burnTests },
];
