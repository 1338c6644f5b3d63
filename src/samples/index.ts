import type { Sheet } from "../sheet/sheet";
import { burnTests } from "./burnTests";
import { studio } from "./studio";

/** A sample workbook: what it is called, the file it is kept in, and its sheets as descriptions. */
export interface Sample {
  readonly id: string;
  readonly title: string;
  readonly file: string;
  readonly sheets: () => Sheet[];
}

export const SAMPLES: readonly Sample[] = [
  { id: "studio", title: "A candle studio", file: "1-studio.xlsx", sheets: studio },
  { id: "burn-tests", title: "Burn tests", file: "2-burn-tests.xlsx", sheets: burnTests },
];
