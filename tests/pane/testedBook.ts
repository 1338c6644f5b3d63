import type { Host } from "../../src/host/host";
import type { Book } from "../../src/pane/actions/book";
import { planHere } from "../../src/pane/planner";
import type { Kept } from "../../src/pane/state/kept";
import type { ReadTables } from "../../src/pane/state/useTables";
import { FIRST_SETTINGS } from "../../src/runsheet/settings";
import type { CellValue } from "../../src/sheet/sheet";

/** The tables of a workbook with a tested wick, by what they are. */
export const KINDS = { Batch: "pour", Vessels: "vessels", BurnTests: "burnTests", Readings: "readings" } as const;
export type TestedTable = keyof typeof KINDS;

/** What of the settings is about tables. */
export const KEPT = { columns: {}, leftOut: {}, choices: { unit: "g" } } as unknown as Kept;

const NAMES = ["A", "B", "C"];
const burnt = (name: string) =>
  [60, 120].map((minutes, i): CellValue[] => [name, 1, minutes, 20, 25 * (i + 1), 60 - 50 * i, "none", 40]);

/** Three candles of a wick that were burnt down within all limits, and a batch of them. All names and numbers are invented. */
export const testedTables = (): Record<TestedTable, CellValue[][]> => ({
  Batch: [
    ["Vessel", "Quantity", "Scent", "Load", "Wax"],
    ["Bowl", 4, "Rain", 0.06, "Soft wax"],
  ],
  Vessels: [
    ["Vessel", "Wick", "Water weight (g)"],
    ["Tin", null, 90],
    ["Bowl", null, 240],
  ],
  BurnTests: [
    ["Test", "Vessel", "Wick", "Wax", "Scent", "Load (of wax)", "Inside width (mm)"],
    ...NAMES.map((name): CellValue[] => [name, "Bowl", "Size 6", "Soft wax", "Rain", 0.06, 70]),
  ],
  Readings: [
    ["Test", "Cycle", "Minutes", "Flame (mm)", "Pool (mm)", "Wax left (mm)", "Soot", "Glass temperature (C)"],
    ...NAMES.flatMap(burnt),
  ],
});

/** The workbook of a host as actions of the pane take it. */
export function testedBook(host: Host): Book {
  const refresh = async (): Promise<ReadTables> => {
    const read: [string, unknown][] = [];
    for (const source of await host.tables()) {
      read.push([KINDS[source.name as TestedTable], await host.read(source)]);
    }
    return Object.fromEntries(read);
  };
  return {
    ...{ host, planner: planHere, kept: KEPT, settings: FIRST_SETTINGS, rowsLeft: new Map(), refresh },
    keep: () => undefined,
    openSheets: async () => ({ runs: [], unread: [] }),
  };
}
