import { ICommandService, RedoCommand, UndoCommand } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import type { Host } from "../../../src/host/host";
import { append } from "../../../src/host/univer/append";
import { followEdits } from "../../../src/host/univer/editing/edits";
import { followResize } from "../../../src/host/univer/editing/followGrowth";
import type { Addition } from "../../../src/sheet/addition";
import type { Cell, Sheet } from "../../../src/sheet/sheet";
import { Headless } from "./headless";

/** A described sheet of values from A1; the first row is the heading of its table. */
const sheetOf = (name: string, rows: readonly (readonly (string | number | null)[])[]): Sheet => ({
  name,
  widths: [],
  cells: rows.flatMap((row, r) =>
    row.flatMap((value, column): Cell[] =>
      value === null
        ? []
        : [{ row: r, column, content: typeof value === "number" ? { number: value } : { text: value } }],
    ),
  ),
  tables: [{ name, row: 0, column: 0, headings: (rows[0] ?? []).map(String), rows: rows.length - 1 }],
});

const LOG = sheetOf("Log", [
  ["Lot", "Candles"],
  ["L-1", 10],
]);
const MOVES = sheetOf("Moves", [
  ["Item", "Change"],
  ["Wax", 900],
  [null, null],
]);
const ADDED = [
  { table: "Log", headings: ["Lot", "Candles"], rows: [[{ text: "=L-2" }, { number: 8 }]] },
  {
    table: "Moves",
    headings: ["Change", "Item"],
    rows: [
      [{ number: -500 }, { text: "Wax" }],
      [{ number: -20 }, null],
    ],
  },
  sheetOf("Readings", [["Test"], ["T-1"]]),
];

function open(): { page: Headless; host: Pick<Host, "append">; all: () => unknown } {
  const page = new Headless([LOG, MOVES]);
  followEdits(page.injector, (edit) => followResize(page.injector, edit));
  const host = { append: async (added: readonly Addition[]) => append(page.injector, page.workbook, added) };
  const all = () => ({
    tables: ["Log", "Moves", "Readings"].map((name) => page.table(name)),
    sheets: page.workbook.getSheets().map((sheet) => [
      sheet.getName(),
      // Cells that were written and are blank again are as good as those that never were.
      sheet
        .getCellMatrix()
        .toArray()
        .map((row) => Array.from(row, (cell) => cell?.f ?? cell?.v ?? null))
        .filter((row) => row.some((value) => value !== null)),
    ]),
  });
  return { page, host, all };
}

describe("rows for two tables and a new sheet", () => {
  it("come in one step: blank rows are filled first, and one press takes all back and brings it again", async () => {
    const { page, host, all } = open();
    const before = all();
    await host.append(ADDED);
    const after = all();
    expect(after).toMatchObject({
      tables: [{ rows: 2 }, { rows: 3 }, { rows: 1 }],
      sheets: [
        [
          "Log",
          [
            ["Lot", "Candles"],
            ["L-1", 10],
            ["=L-2", 8],
          ],
        ],
        [
          "Moves",
          [
            ["Item", "Change"],
            ["Wax", 900],
            ["Wax", -500],
            [null, -20],
          ],
        ],
        ["Readings", [["Test"], ["T-1"]]],
      ],
    });
    await page.run(UndoCommand.id, {});
    expect(all()).toEqual(before);
    await page.run(RedoCommand.id, {});
    expect(all()).toMatchObject({ tables: (after as { tables: unknown }).tables });
  });

  it("leave all as it was when any one command fails, refused or thrown", async () => {
    let ends = 0;
    for (let failing = 1; ends < 2; failing++) {
      for (const how of ["thrown", "refused"] as const) {
        const { page, host, all } = open();
        const before = all();
        const commands = page.injector.get(ICommandService);
        let count = 0;
        const spoil = () => {
          if (++count === failing) throw new Error("broken");
        };
        const { syncExecuteCommand } = commands;
        commands.syncExecuteCommand = ((...given: Parameters<typeof syncExecuteCommand>) => {
          if (how === "refused" && count + 1 === failing) {
            count++;
            return false;
          }
          spoil();
          return syncExecuteCommand.apply(commands, given);
        }) as typeof syncExecuteCommand;
        const isAdded = await host.append(ADDED).then(
          () => true,
          () => false,
        );
        commands.syncExecuteCommand = syncExecuteCommand;
        if (isAdded) {
          ends++;
          // All commands were let through: the failing one would have been a later one, or one that shows a sheet.
          expect(failing).toBeGreaterThan(6);
          continue;
        }
        expect(all(), `command ${failing} ${how}`).toEqual(before);
        // Nothing is left to take back either.
        await page.run(UndoCommand.id, {});
        expect(all()).toEqual(before);
      }
    }
  });

  it("are refused together when one of them is", async () => {
    const { host, all } = open();
    const before = all();
    const missing = { table: "Moves", headings: ["Lot"], rows: [[{ text: "L-1" }]] };
    await expect(host.append([ADDED[0] as (typeof ADDED)[0], missing])).rejects.toThrow(
      'The table "Moves" has no column "Lot". Name the column so again, then try once more.',
    );
    expect(all()).toEqual(before);
  });
});
