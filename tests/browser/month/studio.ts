import type { Month, Receipt } from "./month";

/** The names and numbers of the studio are invented; 25569 is 1970-01-01 as spreadsheets count days. */
const day = (iso: string): number => Date.parse(iso) / 86_400_000 + 25_569;

export const VESSELS: Month["vessels"] = [
  { vessel: "Tin", water: 125, wicks: 1 },
  { vessel: "Bowl", water: 250, wicks: 2 },
];
export const SCENTS: Month["scents"] = [
  { scent: "Cedar", load: 0.06, basis: "of wax" },
  { scent: "Fig", load: 0.08, basis: "of total" },
];
/** Each by itself the wax is cheaper in the south, and the oil in the north; together, with one delivery, in the north. */
export const PACKS: Month["packs"] = [
  { item: "Wax", supplier: "North", size: 1000, price: 13, delivery: 5 },
  { item: "Cedar", supplier: "North", size: 100, price: 4.6, delivery: 5 },
  { item: "Wax", supplier: "South", size: 2500, price: 24, delivery: 6 },
  { item: "Cedar", supplier: "South", size: 250, price: 9.9, delivery: 6 },
];
export const FIRST: readonly Receipt[] = [
  { date: day("2025-03-03"), item: "Wax", lot: "W-1", quantity: 2500, paid: 30 },
  { date: day("2025-03-05"), item: "Wax", lot: "W-2", quantity: 2000, paid: 27 },
];
export const SHELF: readonly Receipt[] = [
  { date: day("2025-03-05"), item: "Cedar", lot: "C-1", quantity: 250, paid: 10 },
  { date: day("2025-03-05"), item: "Fig", lot: "F-1", quantity: 200, paid: 11 },
  { date: day("2025-03-05"), item: "Tin", lot: "T-1", quantity: 60, paid: 42 },
  { date: day("2025-03-05"), item: "Bowl", lot: "B-1", quantity: 12, paid: 18 },
  { date: day("2025-03-05"), item: "Wick", lot: "K-1", quantity: 100, paid: 12 },
];
/** What was bought after the wax had become dearer, 14.50 a pack; each row carries its half of the delivery. */
export const BOUGHT: readonly Receipt[] = [
  { date: day("2025-03-14"), item: "Wax", lot: "W-3", quantity: 2000, paid: 31.5 },
  { date: day("2025-03-14"), item: "Cedar", lot: "C-2", quantity: 100, paid: 7.1 },
];
export const POURED = [day("2025-03-10"), day("2025-03-20")] as const;
/** Before the first pour, after it, after the buying, and at the end of the month. */
export const LOOKS = [day("2025-03-09"), day("2025-03-12"), day("2025-03-15"), day("2025-03-31")] as const;
