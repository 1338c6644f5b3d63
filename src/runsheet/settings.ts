import { USUAL_WAX_FACTOR } from "../core/fill/fillWeight";
import type { Basis } from "../core/scent/basis";

/** What a setting may be, in the order it is offered. */
export const CHOICES = {
  unit: ["g", "kg", "oz", "lb"],
  basis: ["of wax", "of total"],
  paper: ["letter", "a4"],
  label: ["us", "metric"],
  live: [true, false],
  stockPrice: ["first in", "average", "last paid"],
  costs: ["left out", "shown"],
} as const;

export type WeightUnit = (typeof CHOICES.unit)[number];

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
  readonly paper: (typeof CHOICES.paper)[number];
  /** Net weight declared in both systems, or in grams alone. */
  readonly label: (typeof CHOICES.label)[number];
  /** Weights as formulas that follow the counts, or as plain numbers. */
  readonly live: boolean;
  /** What a unit costs by the lots in stock: the oldest first, all at their mean, or what was paid last. */
  readonly stockPrice: (typeof CHOICES.stockPrice)[number];
  /** Minutes of work on one candle, and money for an hour; 0 where labour is not counted. */
  readonly labourMinutes: number;
  readonly labourRate: number;
  /** Whether the sheet says what the candles cost: it lies on the bench for all to see. */
  readonly costs: (typeof CHOICES.costs)[number];
}

/** What a kitchen scale shows and a small pot holds, in each unit: the values a maker begins with. */
export const FIRST_WEIGHTS: Readonly<Record<WeightUnit, Pick<Settings, "division" | "potCapacity">>> = {
  g: { division: 1, potCapacity: 2500 },
  kg: { division: 0.001, potCapacity: 2.5 },
  oz: { division: 0.05, potCapacity: 80 },
  lb: { division: 0.005, potCapacity: 5 },
};

export const FIRST_SETTINGS: Settings = {
  unit: "g",
  ...FIRST_WEIGHTS.g,
  loss: 0.03,
  waxFactor: USUAL_WAX_FACTOR,
  load: 0.06,
  basis: "of wax",
  paper: "letter",
  label: "us",
  live: true,
  stockPrice: "first in",
  labourMinutes: 0,
  labourRate: 0,
  costs: "left out",
};

/** The defaults that serve where a row gives none. */
export type UsualSetting = "waxFactor" | "load" | "basis";
