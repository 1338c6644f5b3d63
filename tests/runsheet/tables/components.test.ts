import { describe, expect, it } from "vitest";
import { readTable, readTables } from "../../../src/runsheet/tables/readTables";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import type { TableRows } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

const tableOf = (headings: string[], ...rows: CellValue[][]): TableRows<"components"> => ({
  type: "components",
  headings,
  rows,
  columns: matchColumns("components", headings),
});
const HEADINGS = ["Vessel", "Item", "Each"];

describe("the table of components", () => {
  it("gives what goes with each vessel, whatever case its name is written in", () => {
    const rows: CellValue[][] = [
      ["Bowl", "Wick 8", 3],
      ["Tin", "Wick 4", 1],
      [" bowl", "Label", 2],
    ];
    const read = readTable(tableOf(HEADINGS, ...rows), "g");
    expect([...(read ?? [])]).toEqual([
      [
        "bowl",
        [
          { vessel: "Bowl", item: "Wick 8", each: 3, wrong: [] },
          { vessel: "bowl", item: "Label", each: 2, wrong: [] },
        ],
      ],
      ["tin", [{ vessel: "Tin", item: "Wick 4", each: 1, wrong: [] }]],
    ]);
  });

  it.each([
    [["Container", "Component", "Qty per candle"]],
    [["Jar", "Part", "How many"]],
    [["Vessel name", "Item name", "No. per jar"]],
  ])("knows the headings %j", (headings) => {
    expect(matchColumns("components", headings)).toEqual({ vessel: 0, item: 1, each: 2 });
  });

  it.each([
    [null, "Each: the cell is blank; write how many one candle takes"],
    ["two", 'Each: "two" is not a number; write a plain number'],
    [0, "Each: 0 is not above 0; write a number above 0"],
    [{ error: "#N/A" }, "Each: the cell shows #N/A; fix it first"],
  ])("never guesses how many: %j", (each, text) => {
    const [[component] = []] = readTable(tableOf(HEADINGS, ["Tin", "Lid", each]), "g")?.values() ?? [];
    expect(component).toMatchObject({ each: undefined, wrong: [{ table: "components", row: 0, field: "each", text }] });
  });

  it("counts an item that stands twice for a vessel twice, and says so", () => {
    const [own] = readTable(tableOf(HEADINGS, ["Tin", "Wick", 1], ["Tin", "wick ", 1]), "g")?.values() ?? [];
    expect(own?.map(({ each }) => each)).toEqual([1, 1]);
    expect(own?.[1]?.wrong).toMatchObject([
      { severity: "warning", text: "wick stands twice for Tin; both rows count" },
    ]);
  });

  it("says of a row without a vessel or an item that it counts for nothing, and nothing of a free row", () => {
    const pour = { type: "pour", headings: [], rows: [], columns: {} } as const;
    const components = tableOf(HEADINGS, [null, "Lid", 1], ["Tin", "", 1], [null, null, null]);
    expect(readTables({ pour, components }, "g").doubts.map(({ row, text }) => `${row} ${text}`)).toEqual([
      "0 Vessel: the cell is blank, so the row counts for no candle",
      "1 Item: the cell is blank, so the row counts for no candle",
    ]);
    expect(readTable(components, "g")?.size).toBe(0);
  });
});
