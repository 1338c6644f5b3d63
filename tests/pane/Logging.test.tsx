// @vitest-environment happy-dom
import { act } from "react";
import { describe, expect, it } from "vitest";
import { LOG_COLUMNS } from "../../src/runsheet/tables/runsLog";
import type { CellValue } from "../../src/sheet/sheet";
import { pouredPane } from "./pouredPane";
import { ACTUAL, GOOD, type PourHost, pouredBook, SHEET, WEIGHED } from "./pourHost";

describe("after the pour", () => {
  const { show, press, logPour, asked, alert, done, buttons, changed } = pouredPane();

  describe("logging", () => {
    it("says what became of the wax, and logs a lot once", async () => {
      const host = pouredBook();
      host.type(SHEET, "1 vessel", WEIGHED, 100.4);
      await show(host);
      await logPour();
      expect(done()).toContain("Lot 2026-330-01 is in the runs log now, 1 row.");
      // 1030 melted, 10 x 100.4 poured: 1030 / 1004 - 1 = 2.6 %.
      expect(asked()).toEqual([
        "Lot 2026-330-01, what became of the wax:",
        "Cedar: pot 1 of 1: melted 1030 g, poured 1004 g: loss 2.6 %, planned 3 % (taken: 10 x Tin by the one weighed, 100.4 g each)",
      ]);
      expect(host.log()).toHaveLength(1);
      expect(host.log()[0]?.Remarks).toContain("melted 1030 g, poured 1004 g: loss 2.6 %, planned 3 %");
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toContain("Lot 2026-330-01 is in the runs log already");
      expect(host.log()).toHaveLength(1);
    });

    it("leaves what came of a press in its own view", async () => {
      const host = pouredBook();
      for (const [key, column] of [
        ["1 wax", ACTUAL],
        ["1 scent", ACTUAL],
        ["1 vessel", GOOD],
        ["1 vessel", WEIGHED],
      ] as const) {
        host.type(SHEET, key, column, null);
      }
      await show(host);
      const tab = (name: string) => act(async () => document.getElementById(`pane-tab-${name}`)?.click());
      await tab("log");
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toContain(`Nothing is written on ${SHEET}`);
      await tab("trace");
      expect(alert()).toBe("");
    });

    it("says no longer that a lot is logged once that is undone", async () => {
      const host = pouredBook();
      await show(host);
      await logPour();
      await changed(host);
      expect(done()).toContain("is in the runs log now");
      expect(asked()).not.toEqual([]);
      delete host.all.RunsLog;
      await changed(host);
      expect([done(), asked()]).toEqual(["", []]);
    });

    it("asks once about what is unchanged", async () => {
      const host = pouredBook();
      host.type(SHEET, "1 vessel", WEIGHED, 122);
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(asked()[0]).toBe("Nothing is logged yet. Check these first:");
      expect(asked()[1]).toContain("Was it weighed with its vessel?");
      expect(host.log()).toEqual([]);
      await press(`Log anyway: ${SHEET}`);
      expect(host.log()).toHaveLength(1);
      expect(host.log()[0]).toMatchObject({ "Weighed each": 122, "Wax factor shown": null });
      expect(buttons()).not.toContain(`Log anyway: ${SHEET}`);
    });

    it("asks anew when something else is odd by the time it is pressed for", async () => {
      const host = pouredBook();
      host.type(SHEET, "1 vessel", GOOD, null);
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(asked()[0]).toBe("Nothing is logged yet. Check these first:");
      host.type(SHEET, "1 wax", ACTUAL, 9720);
      await press(`Log anyway: ${SHEET}`);
      expect(host.log()).toEqual([]);
      expect(asked()[0]).toBe("This has changed since it was shown. Nothing is logged yet. Check these first:");
      expect(asked().slice(1).join()).toContain("9720 g and was planned as 972 g");
      host.type(SHEET, "1 wax", ACTUAL, 972);
      host.type(SHEET, "1 vessel", GOOD, 10);
      await press(`Log anyway: ${SHEET}`);
      expect(host.log()).toEqual([]);
      await press(`Add these rows: ${SHEET}`);
      expect(host.log()).toHaveLength(1);
      expect(host.log()[0]).toMatchObject({ Good: 10, "Wax actual": 972 });
    });

    it("compares nothing with a sheet whose weights are not worked out", async () => {
      const host = pouredBook();
      host.type(SHEET, "1 wax", 3, { error: "#VALUE!" });
      await show(host);
      await press(`What has changed since: ${SHEET}`);
      const [says, ...list] = asked();
      expect(says).toBe(`Nothing is compared while ${SHEET} has cells to fix:`);
      expect(list).toEqual([expect.stringMatching(/^Row \d+, to weigh: "#VALUE!" is no number of 0 or more; fix it$/)]);
    });

    it("refuses what cannot be, and says which row", async () => {
      const host = pouredBook();
      host.type(SHEET, "1 vessel", GOOD, 11);
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toMatch(/^Nothing is logged\. Row \d+, good candles: 11 are more than the count of 10;/);
      expect(host.log()).toEqual([]);
    });

    it("says so when the spreadsheet refuses, and can be pressed for again", async () => {
      const host = pouredBook({ RunsLog: [LOG_COLUMNS.map(({ heading }) => heading)] });
      host.onAdding = () => {
        throw new Error("Excel is busy; leave the cell, then try again.");
      };
      await show(host);
      await logPour();
      expect(alert()).toBe("Excel is busy; leave the cell, then try again.");
      expect(done()).toBe("");
      host.onAdding = () => {};
      await logPour();
      expect(host.log()).toHaveLength(1);
      expect(alert()).toBe("");
    });

    it("never says logged when the rows do not stand there", async () => {
      const host = pouredBook({ RunsLog: [LOG_COLUMNS.map(({ heading }) => heading)] });
      host.isDeaf = true;
      await show(host);
      await logPour();
      expect(alert()).toContain("Lot 2026-330-01 was added to the runs log and does not stand there.");
      expect(done()).toBe("");
      expect(asked()).toEqual([]);
    });

    it("says it is logged also when the log cannot be read again", async () => {
      const host = pouredBook();
      host.onAdding = () => {
        host.held.tables = Promise.reject(new Error("Excel is busy."));
      };
      await show(host);
      await logPour();
      expect(done()).toBe("Lot 2026-330-01 is in the runs log now, 1 row. It could not be read again: Excel is busy.");
    });

    it("goes on with a log that was begun with other words, renamed and sorted", async () => {
      const headings = LOG_COLUMNS.map(({ heading }) =>
        heading === "Load as weighed (of wax)" ? "Real load of wax" : heading,
      );
      const host = pouredBook({ Pours2026: [["My note", ...headings.reverse()]] });
      await show(host);
      await logPour();
      expect(host.added).toEqual([]);
      expect(host.log("Pours2026")[0]).toMatchObject({ "My note": null, Lot: "2026-330-01", Vessel: "Tin" });
      expect(host.log("Pours2026")[0]?.["Real load of wax"]).toBeCloseTo(58 / 972, 12);
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toContain("is in the runs log already");
    });
  });

  describe("logging beside a table of moves", () => {
    const LOT_USED = 5;
    const MOVES: CellValue[][] = [
      ["Date", "Item", "Lot", "Change (g)", "Run", "Note"],
      [46300, "Wax", "W-1", 5000, null, null],
      [46310, "Wax", "W-2", 5000, null, null],
      [46310, "Cedar", "C-1", 500, null, null],
    ];
    const book = () => pouredBook({ Moves: MOVES.map((row) => [...row]) });
    const moved = (host: PourHost) => (host.all.Moves ?? []).slice(4).map((row) => row.slice(1));

    it("shows rows and lots first, and adds them to both in one step", async () => {
      const host = book();
      host.type(SHEET, "1 wax", LOT_USED, "W-2");
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(host.appended).toEqual([]);
      expect(asked()).toEqual([
        "Runs log, a new table, with 1 row:",
        "Cedar, Tin: 10 candles, 10 good, wax 972 g, scent 58 g",
        "3 rows to add to Moves:",
        "Wax, lot W-2: -972 g",
        "Cedar, lot C-1: -58 g",
        "Tin, no lot: -10",
        "About the lots:",
        "no lot written for Cedar: the oldest, C-1, is taken",
        "Tin: nothing is on hand by the moves, so its row has no lot",
      ]);
      await press(`Add these rows: ${SHEET}`);
      expect(host.appended).toHaveLength(1);
      expect(host.log()).toHaveLength(1);
      expect(moved(host)).toEqual([
        ["Wax", "W-2", -972, "2026-330-01", "all pots"],
        ["Cedar", "C-1", -58, "2026-330-01", "all pots"],
        ["Tin", null, -10, "2026-330-01", "all pots"],
      ]);
      expect(done()).toBe("Lot 2026-330-01 is in the runs log now, 1 row, and in the moves, 3 rows.");
    });

    it("puts what On hand says into the moves first, where they have nothing of it, and corrects without it", async () => {
      const host = book();
      host.all.Moves = [MOVES[0] as CellValue[]];
      host.all.Items = [
        ["Item", "Kind", "On hand (g)"],
        ["Wax", "wax", 12_500],
        ["Tin", "tin", 30],
        ["Lid", "lid", 50],
      ];
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(asked().slice(2)).toEqual([
        "5 rows to add to Moves:",
        "Wax: +12500 g, what On hand says",
        "Tin: +30, what On hand says",
        "Wax, no lot: -972 g",
        "Cedar, no lot: -58 g",
        "Tin, no lot: -10",
        "About the lots:",
        "the first 2 rows are what stands in On hand: from now on the moves say what is on hand, and On hand does not count. Is this pour taken off there already? Then put it back there first",
        "Cedar: nothing is on hand by the moves, so its row has no lot",
      ]);
      await press(`Add these rows: ${SHEET}`);
      // One step, and so one press takes all of it back.
      expect(host.appended).toHaveLength(1);
      const changes = () => (host.all.Moves ?? []).slice(1).map(([, item, , change]) => [item, change]);
      const all = [
        ["Wax", 12_500],
        ["Tin", 30],
        ["Wax", -972],
        ["Cedar", -58],
        ["Tin", -10],
      ];
      expect(changes()).toEqual(all);
      host.type(SHEET, "1 wax", ACTUAL, 980);
      await press(`Log this pour: ${SHEET}`);
      await press(`Add this correction: ${SHEET}`);
      expect(changes()).toEqual([...all, ["Wax", 972], ["Wax", -980]]);
    });

    it("corrects a lot that was not the one in the moves alone", async () => {
      const host = book();
      await show(host);
      await logPour();
      host.type(SHEET, "1 wax", LOT_USED, "W-2");
      await press(`Log this pour: ${SHEET}`);
      expect(asked()[0]).toContain("Its sheet says something else now.");
      await press(`Add this correction: ${SHEET}`);
      expect(host.log()).toHaveLength(1);
      expect(moved(host).slice(3)).toEqual([
        ["Wax", "W-1", 972, "2026-330-01", "correction, all pots"],
        ["Wax", "W-2", -972, "2026-330-01", "correction, all pots"],
      ]);
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toContain("is in the runs log already");
    });

    it("asks a maker without one nothing, and begins one in the same step where it is wanted", async () => {
      const host = pouredBook();
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(asked().filter((line) => line.includes("lot"))).toEqual([]);
      expect(asked().at(-1)).toBe("No Moves table is here, so no stock is counted down.");
      await press(`Begin a Moves table with it: ${SHEET}`);
      expect(asked()).toContain("Moves, a new table, with 3 rows:");
      expect(host.appended).toEqual([]);
      await press(`Add these rows: ${SHEET}`);
      expect(host.appended).toHaveLength(1);
      expect((host.all.Moves ?? [])[0]).toEqual(expect.arrayContaining(["Date", "Item", "Lot", "Change (g)"]));
    });

    it("refuses moves that it cannot add to, and logs nothing", async () => {
      const host = book();
      host.all.Moves = MOVES.map((row) => row.map((cell) => (cell === "Change (g)" ? "Change (ml)" : cell)));
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toMatch(/^Nothing can be added to Moves: The heading Change \(ml\) says/);
      host.all.Moves = MOVES.map((row) => row.map((cell) => (cell === "Lot" ? "Colour" : cell)));
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toMatch(/^Moves has no column for Lot\./);
      expect(host.appended).toEqual([]);
    });
  });
});
