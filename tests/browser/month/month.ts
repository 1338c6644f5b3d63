/**
 * A month of a small studio in plain spreadsheet formulas, from the definitions of the trade alone: what the page shows
 * is compared with it. What a formula comes from stands beside it; where nothing does it is common practice, no source.
 */
export interface Month {
  readonly studio: {
    readonly loss: number;
    readonly waxFactor: number;
    readonly labourMinutes: number;
    readonly labourRate: number;
  };
  readonly vessels: readonly { readonly vessel: string; readonly water: number; readonly wicks: number }[];
  readonly scents: readonly { readonly scent: string; readonly load: number; readonly basis: "of wax" | "of total" }[];
  readonly packs: readonly Pack[];
  readonly receipts: readonly Receipt[];
  readonly runs: readonly { readonly run: string; readonly date: number }[];
  readonly lines: readonly Line[];
  readonly weighed: readonly Weighed[];
  /** Days on which the shelf is looked at, and for which run. */
  readonly looks: readonly { readonly date: number; readonly run: string }[];
  /** Which of them is the day on which packs are bought. */
  readonly shopping: number;
}

/** What came in, by the supplier's papers; those of an item by their age. */
export interface Receipt {
  readonly date: number;
  readonly item: string;
  readonly lot: string;
  readonly quantity: number;
  readonly paid: number;
}

/** Candles of one kind in a pot. Which of them fit together is the plan's choice. */
export interface Line {
  readonly run: string;
  readonly pot: string;
  readonly scent: string;
  readonly vessel: string;
  readonly count: number;
  readonly good: number;
}

/** An ingredient of a pot with the lot that was written, and how much more than planned was weighed of it. */
export interface Weighed {
  readonly run: string;
  readonly pot: string;
  readonly item: string;
  readonly lot: string;
  readonly over: number;
}

export interface Pack {
  readonly item: string;
  readonly supplier: string;
  readonly size: number;
  readonly price: number;
  readonly delivery: number;
}

/** Stands for a lot where none was written. */
export const NO_LOT = "none";

export const METHODS = ["first in", "average", "last paid"] as const;
