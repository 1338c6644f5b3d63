import type { Sheet } from "../sheet/sheet";
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
];
