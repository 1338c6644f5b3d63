import { Direction, RedoCommand, UndoCommand } from "@univerjs/core";
import {
  InsertRowCommand,
  MoveRowsMutation,
  RemoveRowCommand,
  RemoveRowMutation,
  ReorderRangeCommand,
} from "@univerjs/preset-sheets-core";
import { SetSheetTableFilterCommand, TableManager } from "@univerjs/preset-sheets-table";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import "../../../src/host/univer/editing/filterCorrections";
import { moveFilteredRows } from "../../../src/host/univer/editing/filteredRowMoves";
import { followRemoved } from "../../../src/host/univer/editing/removedRows";
import { Headless } from "./headless";

const HEADING = 2;
const POURED = ["Poured", "x", "open", "x", "spilt"];
const ALL = "Poured x (open) x (spilt)";

const rows = (startRow: number, endRow: number) => ({ startRow, endRow, startColumn: 0, endColumn: 25 });

describe("rows that a table's filter hides", () => {
  let page: Headless;
  afterEach(() => page.univer.dispose());

  beforeEach(async () => {
    const cells = POURED.map((text, i) => ({ row: HEADING + i, column: 0, content: { text } }));
    const table = { name: "Pours", row: HEADING, column: 0, headings: ["Poured"], rows: POURED.length - 1 };
    page = new Headless([{ name: "Pours", widths: [], cells, tables: [table] }]);
    moveFilteredRows(page.injector);
    followRemoved(page.injector);
    const tableId = page.injector.get(TableManager).getTableList(page.ids.unitId)[0]?.id;
    const tableFilter = { filterType: "manual", values: ["x"] };
    await page.run(SetSheetTableFilterCommand.id, { tableId, column: 0, tableFilter });
    expect(seen()).toBe(ALL);
  });

  /** What stands in the sheet from above the headings on, hidden rows in brackets. */
  const seen = () =>
    Array.from({ length: 9 }, (_, row) => {
      const text = page.cell(row, 0);
      return page.sheet.getRowVisible(row) ? (text ?? "") : `(${text})`;
    })
      .filter((text) => text !== "")
      .join(" ");

  it.each([
    ["above the table", 1],
    ["within it", 4],
  ])("stay hidden when a row is put in %s, and when that is taken back", async (_, at) => {
    await page.run(InsertRowCommand.id, { range: rows(at, at), direction: Direction.UP });
    expect(seen()).toBe(ALL);
    await page.run(UndoCommand.id, {});
    expect(seen()).toBe(ALL);
  });

  it("stay hidden when rows above and between them are deleted", async () => {
    await page.run(RemoveRowCommand.id, { range: rows(0, 1) });
    expect(seen()).toBe(ALL);
    // Of what is selected Univer deletes what is to be seen.
    await page.run(RemoveRowCommand.id, { range: rows(2, 3) });
    expect(seen()).toBe("Poured x (open) (spilt)");
  });

  it.each([
    ["rows that it hides and shows", rows(HEADING + 1, HEADING + 4), "Poured (open) (spilt)", 2],
    ["one that it hides, which stays", rows(HEADING + 2, HEADING + 2), ALL, 4],
    ["its last ones and some below it", rows(HEADING + 3, HEADING + 9), "Poured x (open) (spilt)", 3],
    ["its headings with all others", rows(HEADING, HEADING + 4), "open spilt", undefined],
  ])(
    "stay hidden and in their table when %s are deleted, and when that is taken back",
    async (_, range, left, count) => {
      await page.run(RemoveRowCommand.id, { range });
      expect([seen(), page.table("Pours")?.rows]).toEqual([left, count]);
      await page.run(UndoCommand.id, {});
      expect([seen(), page.table("Pours")?.rows]).toEqual([ALL, 4]);
      await page.run(RedoCommand.id, {});
      expect([seen(), page.table("Pours")?.rows]).toEqual([left, count]);
    },
  );

  it("go with their own when those are deleted", async () => {
    await page.run(RemoveRowMutation.id, { range: rows(HEADING + 2, HEADING + 2) });
    expect(seen()).toBe("Poured x x (spilt)");
  });

  it("stay hidden when rows are moved or sorted", async () => {
    const [first, last] = [rows(HEADING + 1, HEADING + 1), rows(HEADING + 4, HEADING + 4)];
    await page.run(MoveRowsMutation.id, { sourceRange: first, targetRange: last });
    expect(seen()).toBe("Poured (open) x x (spilt)");
    await page.run(MoveRowsMutation.id, { sourceRange: rows(HEADING + 3, HEADING + 3), targetRange: first });
    expect(seen()).toBe("Poured x (open) x (spilt)");
    const order = { [HEADING + 1]: HEADING + 2, [HEADING + 2]: HEADING + 1 };
    await page.run(ReorderRangeCommand.id, { range: rows(HEADING + 1, HEADING + 4), order });
    expect(seen()).toBe("Poured (open) x x (spilt)");
  });
});
