// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import type { SourceRows } from "../../src/host/host";
import { recordIn } from "../../src/pane/actions/onRecord";
import { planLog } from "../../src/pane/actions/planLog";
import { firstKept } from "../../src/pane/state/kept";
import type { ReadTables } from "../../src/pane/state/useTables";
import { pouredRun } from "../runsheet/record/poured";

const table = (name: string, headings: string[], rows: SourceRows["rows"] = [], below = 0): SourceRows => ({
  ...{ name, headings, rows, below },
  place: { sheet: name, row: 0, column: 0, rows: rows.length + 1, columns: headings.length },
});

/** Two pots, of which the second is not poured yet. */
const run = pouredRun([{ scent: "Cedar" }, { scent: "Fig", parts: [{ planned: 500 }], lines: [{ good: undefined }] }]);
const plan = (read: ReadTables, beginsMoves = false) =>
  planLog(run, recordIn(read, firstKept(), "g"), { sheet: "Run", copies: [], beginsMoves });
const parts = (read: ReadTables) => Object.fromEntries(plan(read).parts.map(({ says, list }) => [says, list]));

describe("what logging is asked about beforehand", () => {
  it("is a log that does not say which pots, where others are still to be poured", () => {
    const old = ["Lot", "Date", "Scent", "Vessel", "Candles", "Good"];
    const question =
      "Pours has no column Pots, so this lot can be logged only once: add a column of that name to log the other pots later";
    expect(parts({ log: table("Pours", old) })["Nothing is logged yet. Check these first:"]).toEqual([question]);
    expect(plan({ log: table("Pours", old) }).press).toBe("Log anyway");
    expect(plan({ log: table("Pours", [...old, "Pots"]) }).press).toBe("Add these rows");
    expect(parts({})["Nothing is written of these pots. They stay open, to be logged later:"]).toEqual([
      "Fig: pot 2 of 2",
    ]);
  });

  it("is a table of moves with rows below it, or without a column for the run", () => {
    const moves = table("Moves", ["Date", "Item", "Lot", "Change (g)"], [[46_300, "Wax", "W-1", 5000]], 2);
    expect(parts({ moves })["Nothing is logged yet. Check these first:"]).toEqual([
      "2 rows right below Moves, no part of it: not counted as on hand",
      "Moves has no column Run: add one, or no lot can be traced to its candles",
    ]);
  });

  it("offers a table of moves only where there is none, and says what it must begin with", () => {
    expect(plan({}).offersMoves).toBe(true);
    expect(plan({}).moves).toEqual([]);
    const begun = plan({}, true);
    expect(begun.offersMoves).toBe(false);
    expect(begun.additions).toHaveLength(2);
    expect(begun.parts.flatMap(({ list }) => list)).toContain(
      "moves count what is on hand: write down under Receiving what the shelf held before this pour",
    );
  });
});
