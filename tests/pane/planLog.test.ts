// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import type { SourceRows } from "../../src/host/host";
import { recordIn } from "../../src/pane/actions/onRecord";
import { planLog } from "../../src/pane/actions/planLog";
import { firstKept } from "../../src/pane/state/kept";
import type { ReadTables } from "../../src/pane/state/useTables";
import { Trace } from "../../src/runsheet/stock/trace";
import { potsIn } from "../../src/runsheet/tables/potsWords";
import { pouredRun } from "../runsheet/record/poured";

const table = (name: string, headings: string[], rows: SourceRows["rows"] = [], below = 0): SourceRows => ({
  ...{ name, headings, rows, below },
  place: { sheet: name, row: 0, column: 0, rows: rows.length + 1, columns: headings.length },
});

/** Two pots, of which the second is not poured yet. */
const run = pouredRun([{ scent: "Cedar" }, { scent: "Fig", parts: [{ planned: 500 }], lines: [{ good: undefined }] }]);
const NO_MOVE = { run: "", note: "", paid: undefined, bestBefore: undefined };
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

  it("is a lot that holds less than would be taken of it", () => {
    const part = { planned: 1940, actual: 1940, lot: "A1" };
    const moves = table(
      "Moves",
      ["Date", "Item", "Lot", "Change (g)", "Run"],
      [
        [46_300, "Wax", "A1", 1000, null],
        [46_301, "Wax", "A2", 2000, null],
      ],
    );
    const poured = pouredRun([{ parts: [part] }]);
    const asked = (read: ReadTables) =>
      planLog(poured, recordIn(read, firstKept(), "g"), { sheet: "Run", copies: [], beginsMoves: false });
    const { press, parts } = asked({ moves });
    expect(press).toBe("Log anyway");
    expect(parts[0]).toMatchObject({ says: "Nothing is logged yet. Check these first:" });
    expect(parts[0]?.list).toEqual([expect.stringMatching(/^Wax: 1940 g of lot A1 .* only 1000 g .* "A1, A2"/)]);
  });

  it("names what is taken back of a log without columns for it in words", () => {
    const { parts } = plan({ log: table("Pours", ["Lot"], [["2026-330-01"], ["2026-330-01"]]) });
    expect(parts.flatMap(({ list }) => list)).not.toContainEqual(expect.stringContaining("undefined"));
    expect(parts.flatMap(({ list }) => list)).toContain(
      "no scent and no vessel named: candles not counted, good ones not counted",
    );
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

describe("pots that took other lots", () => {
  const pot = (lot: string, good: number) => ({
    parts: [{ planned: 1000, actual: 1000, lot }],
    lines: [{ count: 10, good }],
  });
  const two = pouredRun([pot("W-1", 9), pot("W-2", 10)]);
  const [first, second] = two.pots.map(({ id }) => id);
  const moves = table(
    "Moves",
    ["Date", "Item", "Lot", "Change (g)", "Run", "Note"],
    [
      [46_300, "Wax", "W-1", 5000, null, null],
      [46_300, "Wax", "W-2", 5000, null, null],
      [46_300, "Tin", "T-1", 90, null, null],
    ],
  );
  const logged = planLog(two, recordIn({ moves }, firstKept(), "g"), { sheet: "Run", copies: [], beginsMoves: false });

  it("are named by the moves, and their candles are counted apart", () => {
    expect(logged.moves.map(({ item, lot, note }) => [item, lot, note])).toEqual([
      ["Wax", "W-1", `pots: ${first}`],
      ["Wax", "W-2", `pots: ${second}`],
      ["Tin", "T-1", "all pots"],
    ]);
    const counts = logged.rows.map((row) => [row.Good, row.Pots]);
    expect(counts).toEqual([
      [{ number: 9 }, { text: first }],
      [{ number: 10 }, { text: second }],
    ]);
  });

  it("are traced to the candles that hold it", () => {
    const trace = new Trace(
      {
        rows: logged.moves.map((move, row) => ({
          ...NO_MOVE,
          ...move,
          row,
          change: { count: move.change, weight: move.change },
        })),
      },
      logged.rows.map((row) => ({
        ...{ run: two.lot, date: two.date, scent: "Cedar", vessel: "Tin", candles: undefined },
        ...{ pots: potsIn((row.Pots as { text: string }).text), good: (row.Good as { number: number }).number },
      })),
    );
    const good = (item: string, lot: string) => trace.recall(item, lot)?.runs[0]?.candles.map((one) => one.good);
    expect([good("Wax", "W-1"), good("Wax", "W-2"), good("Tin", "T-1")]).toEqual([[9], [10], [9, 10]]);
  });
});
