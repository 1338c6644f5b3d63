/** The words of what will be written: pots and totals. */

export const PREVIEW = {
  heading: "Preview",
  incomplete: "Do not pour by this yet: what is to be fixed is missing here, or shown with wrong figures.",
  care: "Take care",
  morePots: (count: number) => `and ${count} more pots`,
  candles: "Candles",
  pots: "Pots",
  wax: "Wax",
  scent: "Scent (fragrance oil)",
  others: "Dye and additives",
  melted: "Melted",
  missing: "Missing for this run",
  lack: (item: string, missing: string, packs: string, cost: string | undefined) =>
    `${item}: ${missing} missing, ${cost === undefined ? packs : `buy ${packs}, ${cost}`}`,
  inWax: (wax: string) => `in ${wax}`,
  cost: (title: string, run: string) => `${title}: ${run}`,
  costOf: (count: number, candle: string, each: string) => `${count} x ${candle}: ${each} each`,
  pot: (number: number, weight: string) => `Pot ${number}: ${weight}`,
  full: (number: number, percent: number) => `Pot ${number}, ${percent} % full`,
  parts: (wax: string, scent: string | undefined, others: string | undefined) =>
    `wax ${wax}${scent === undefined ? "" : `, scent ${scent}`}${others === undefined ? "" : `, other ${others}`}`,
} as const;
