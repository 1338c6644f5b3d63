import type { PouredLine, PouredPart, PouredPot, PouredRun } from "../../../src/runsheet/record/poured";
import type { WeightUnit } from "../../../src/runsheet/settings";
import { nameIn } from "../../../src/runsheet/sheet/potWords";
import { readTable } from "../../../src/runsheet/tables/readTables";
import type { TableRows } from "../../../src/runsheet/tables/tableRows";
import type { Vessels } from "../../../src/runsheet/tables/vessels";
import type { CellValue } from "../../../src/sheet/sheet";
import { readLog } from "./logs";

/** A poured run by hand: without anything else given, one pot whose 10 tins of 100 g were poured as planned, at 3 % loss. */
export function pouredRun(
  pots: readonly {
    scent?: string;
    load?: string;
    remark?: string;
    parts?: readonly (Partial<PouredPart> & { planned: number })[];
    lines?: readonly Partial<PouredLine>[];
  }[] = [{}],
  head: Partial<PouredRun> = {},
): PouredRun {
  return {
    lot: "2026-330-01",
    date: 46352,
    unit: "g",
    division: 1,
    lotDays: [],
    cure: new Map(),
    madeBy: "",
    notes: "",
    wrong: [],
    unplanned: [],
    lots: new Map(),
    pots: pots.map(({ scent = "Cedar", load = "3 % of wax", remark = "", parts, lines }, i): PouredPot => {
      const row = 10 + 20 * i;
      const all = (
        parts ?? [
          { planned: 1000, actual: 1000 },
          { sort: "scent", label: "Scent: Cedar", planned: 30, actual: 30 },
        ]
      ).map((part, p): PouredPart => {
        const named = { sort: "wax" as const, label: "Wax", row: row + p, actual: undefined, lot: "", ...part };
        return { item: nameIn(named.label, named.sort), ...named };
      });
      const together = (sort: string) => {
        const own = all.filter((part) => part.sort === sort);
        const actual = own.map((part) => part.actual);
        return {
          planned: own.reduce((sum, part) => sum + part.planned, 0),
          actual:
            actual.length === 0 || actual.includes(undefined)
              ? undefined
              : actual.reduce<number>((a, b) => a + (b ?? 0), 0),
        };
      };
      return {
        title: `${scent}: pot ${i + 1} of ${pots.length}`,
        id: `${scent}: pot ${i + 1} of ${pots.length}`,
        scent,
        load,
        remark,
        parts: all,
        wax: together("wax"),
        scentWeight: together("scent"),
        steps: new Map(),
        done: [],
        lines: (lines ?? [{}]).map((line, l) => ({
          row: row + 10 + l,
          vessel: "Tin",
          count: 10,
          fill: 100,
          good: 10,
          weighed: undefined,
          ...line,
        })),
      };
    }),
    ...head,
  };
}

/** The vessels of a table, their water in this unit. */
export const readVessels = (table: TableRows<"vessels">, unit: WeightUnit = "g"): Vessels =>
  readTable(table, unit) ?? new Map();

/** Vessels by the water they hold, in grams, their wax factors, and wicks. */
export const vesselsOf = (...rows: CellValue[][]): Vessels =>
  readVessels({
    type: "vessels",
    headings: ["Vessel", "Water weight (g)", "Wax factor", "Wick"],
    rows,
    columns: { vessel: 0, water: 1, factor: 2, wick: 3 },
  });

/** A runs log of pours: lot, vessel, weighed each, water weight, and planned for each where it is known. */
export const logOf = (
  ...pours: [lot: string, vessel: string, weighed: number, water: number | null, planned?: number][]
) =>
  readLog({
    headings: [
      "Lot",
      "Vessel",
      "Weighed each",
      "Water weight",
      "Candles",
      "Wax planned",
      "Scent planned",
      "Weights in",
    ],
    rows: pours.map(([lot, vessel, weighed, water, planned]): CellValue[] => [
      lot,
      vessel,
      weighed,
      water,
      10,
      planned === undefined ? null : planned * 10,
      planned === undefined ? null : 0,
      "g",
    ]),
  });
