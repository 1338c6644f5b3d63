import type { Basis } from "../core/scent/basis";

export type WeightUnit = "g" | "kg" | "oz" | "lb";

/** What the maker sets once for all run sheets. Weights are in `unit`, the unit of the table. */
export interface Settings {
  readonly unit: WeightUnit;
  /** Smallest step the scale shows. */
  readonly division: number;
  /** The most one pot melts. */
  readonly potCapacity: number;
  /** Share melted beyond what is poured. */
  readonly loss: number;
  /** Wax for one of water, where the table gives a water weight and no factor. */
  readonly waxFactor: number;
  /** Load and basis where the table gives none. */
  readonly load: number;
  readonly basis: Basis;
  readonly paper: "letter" | "a4";
  /** Net weight declared in both systems, or in grams alone. */
  readonly label: "us" | "metric";
  /** Weights as formulas that follow the counts, or as plain numbers. */
  readonly live: boolean;
}

export const FIRST_SETTINGS: Settings = {
  unit: "g",
  division: 1,
  potCapacity: 3000,
  loss: 0.02,
  waxFactor: 0.86,
  load: 0.06,
  basis: "of wax",
  paper: "letter",
  label: "us",
  live: true,
};
