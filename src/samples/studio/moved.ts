/** What came in and what was poured in the months before the day. Amounts in grams, or pieces; all invented. */

type Day = readonly [year: number, month: number, dayOfMonth: number];

/** Paid is for the whole row, delivery included. */
type Receipt = readonly [item: string, lot: string, change: number, paid: number, bestBefore?: Day, note?: string];

interface Delivery {
  readonly on: Day;
  readonly rows: readonly Receipt[];
}

/** Vessels and components have the number of their delivery for a lot. */
export const RECEIPTS: readonly Delivery[] = [
  {
    on: [2026, 8, 6],
    rows: [
      ["Wax", "W-0614", 10_000, 56, [2029, 6, 30]],
      ["Soy wax", "S-2207", 10_000, 54, [2029, 5, 31]],
      ["Rapeseed wax", "R-0519", 5000, 34.5, [2029, 4, 30]],
      ["Lamplit quince", "Q-118", 500, 25.2, [2029, 2, 28]],
      ["Cedar oil", "C-310", 250, 19.5, [2029, 3, 31]],
      ["Old paper oil", "P-077", 200, 19.2, [2029, 3, 31]],
      ["Plum thunder", "T-064", 500, 28, [2029, 1, 31]],
      ["Colour block, cedar", "B-015", 250, 10.5, undefined, "Bought loose"],
    ],
  },
  {
    on: [2026, 8, 13],
    rows: [
      ["Tea-light cup", "D-41", 100, 18],
      ["Small tin", "D-41", 48, 33.6],
      ["Hexagon jar", "D-41", 24, 36],
      ["Medium tin", "D-41", 48, 49.2],
      ["Straight tumbler", "D-41", 48, 103.2],
      ["Tapered glass", "D-41", 24, 57.6],
      ["Tumbler lid", "D-41", 60, 48],
      ["Hexagon jar lid", "D-41", 24, 14.4],
      ["Wick, cotton 2", "D-42", 100, 5],
      ["Wick, cotton 3", "D-42", 50, 3.5],
      ["Wick, cotton 4", "D-42", 50, 4],
      ["Wick, cotton 5", "D-42", 50, 4.5],
      ["Wick, cotton 6", "D-42", 50, 5],
      ["Wick, cotton 7", "D-42", 50, 5.5],
      ["Safety label", "D-43", 250, 10, undefined, "Printed in the shed"],
    ],
  },
  {
    on: [2026, 10, 15],
    rows: [
      ["Wax", "W-0931", 10_000, 60.5, [2029, 9, 30], "Dearer than the last"],
      ["Rain on slate", "N-022", 250, 13.5, [2029, 6, 30]],
      ["Stoneware mug", "D-58", 6, 28.8],
      ["Tall tumbler", "D-58", 12, 33.6],
      ["Square glass", "D-58", 12, 35.4],
      ["Footed bowl", "D-58", 6, 31.2],
      ["Wide bowl", "D-58", 6, 46.2],
    ],
  },
  { on: [2026, 11, 12], rows: [["Lamplit quince", "Q-127", 250, 13.2, [2029, 8, 31]]] },
];

interface Pour {
  readonly on: Day;
  readonly run: string;
  readonly note: string;
  readonly rows: readonly (readonly [item: string, lot: string, used: number])[];
}

/** The pours before, each one pot. A run is called by its year, the day in it, and which one of the day it was. */
export const POURS: readonly Pour[] = [
  {
    on: [2026, 8, 27],
    run: "2026-239-01",
    note: "12 straight tumblers",
    rows: [
      ["Wax", "W-0614", 2522],
      ["Lamplit quince", "Q-118", 151],
      ["Straight tumbler", "D-41", 12],
      ["Wick, cotton 6", "D-42", 12],
      ["Tumbler lid", "D-41", 12],
      ["Safety label", "D-43", 12],
    ],
  },
  {
    on: [2026, 10, 8],
    run: "2026-281-01",
    note: "8 hexagon jars",
    rows: [
      ["Wax", "W-0614", 1134],
      ["Plum thunder", "T-064", 85],
      ["Hexagon jar", "D-41", 8],
      ["Wick, cotton 5", "D-42", 8],
      ["Hexagon jar lid", "D-41", 8],
      ["Safety label", "D-43", 8],
    ],
  },
  {
    on: [2026, 10, 8],
    run: "2026-281-02",
    note: "8 tapered glasses",
    rows: [
      ["Soy wax", "S-2207", 1290],
      ["Rapeseed wax", "R-0519", 430],
      ["Cedar oil", "C-310", 103],
      ["Old paper oil", "P-077", 34],
      ["Colour block, cedar", "B-015", 23],
      ["Tapered glass", "D-41", 8],
      ["Wick, cotton 6", "D-42", 8],
      ["Safety label", "D-43", 8],
    ],
  },
  {
    on: [2026, 10, 29],
    run: "2026-302-01",
    note: "10 medium tins",
    rows: [
      ["Wax", "W-0614", 1705],
      ["Lamplit quince", "Q-118", 102],
      ["Medium tin", "D-41", 10],
      ["Wick, cotton 4", "D-42", 10],
      ["Safety label", "D-43", 10],
    ],
  },
];
