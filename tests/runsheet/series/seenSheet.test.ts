import { beforeAll, describe, expect, it } from "vitest";
import { seriesOf } from "../../../src/runsheet/series/readSeries";
import { seenSheet } from "../../../src/runsheet/series/seenSheet";
import { readTable } from "../../../src/runsheet/tables/readTables";
import type { CellValue } from "../../../src/sheet/sheet";
import { below, burnt, candle, errorsIn, expectSame, LOOKS, SETTINGS, TESTS, tableOn, worked } from "./seenBoth";

function workbook() {
  return {
    tests: [
      candle("A", "Size 6"),
      candle("B", "size 6 "),
      candle(3, 6),
      candle("C", "Size 6"),
      candle("Z", "Size 6", { 1: "Cup" }),
      candle("D", "Size 9"),
      candle("E", "Size 9"),
      candle("F", "Size 4"),
      candle("G", "Size 4"),
      candle("H", "Size 4", { 2: "" }),
      candle("I", "Size 2"),
      candle("L", "Size 12"),
      candle("M", "Size 13"),
    ],
    looks: [
      ...burnt("A", { rate: 5 }),
      ...burnt(" a", { rate: 0, rows: 0 }),
      ...burnt("b", { rate: 5.4, pools: [24, 49, 70, 70] }),
      ...burnt(3, { rate: 6.1, cycles: 1, left: 2 }),
      ...burnt("C", { rate: 4.9, pools: [10, 50, 70, 70] }),
      ...burnt("Z", { rate: 50, flame: 99 }),
      ...burnt("D", { rate: 9, flame: 82, cycles: 1, left: 3 }),
      ...burnt("E", { rate: 8.7, soot: "a dark ring" }),
      // 150 F are 65.6 C, above 60 C.
      ...burnt("L", { rate: 5.2, glass: 150 }),
      ...burnt("M", { rate: 5.3, flame: 0, glass: 59 }),
      ...burnt("F", { rate: 3.2, cycles: 1, rows: 3, left: 4 }),
      ...burnt("G", { rate: 3.4, soot: 0.5 }).map((row, i) =>
        i === 6 ? row.map((v, c) => (c === 4 ? "high" : v)) : row,
      ),
    ] as CellValue[][],
  };
}

describe("the sheet of a series", () => {
  let all: Awaited<ReturnType<typeof worked>>;
  beforeAll(async () => {
    all = await worked(workbook());
  });

  it("comes to the same as the readings read without it, and shows no error", () => {
    expect(errorsIn(all.values)).toEqual([]);
    // Excel takes no longer formula (its published limits).
    const long = all.sheet.cells.map(({ content }) => (content && "formula" in content ? content.formula.length : 0));
    expect(Math.max(...long)).toBeLessThan(8192);
    expectSame(all.values, all.wicks);
  });

  it("says the verdict of each wick with its reason, and what would make it surer", () => {
    const said = Object.fromEntries(
      all.values.flatMap(([wick, verdict], i) =>
        all.wicks.some((one) => one.wick === wick) && String(verdict).length > 40
          ? [[wick, [verdict, all.values[i + 1]?.[1]]]]
          : [],
      ),
    );
    expect(said["Size 6"]?.[0]).toMatch(
      /^nothing beyond the limits seen in 3 of 3; a fault in up to 64 % of all is still possible \(95 % confidence\); to look at in 1: C, cycle 1 at 60 min: pool behind: 10 mm/,
    );
    // 8 h at 5 g/h, of 180 g.
    expect(all.wicks[0]?.contradictions).toHaveLength(1);
    expect(said["Size 6"]?.[0]).toContain(`; ${all.wicks[0]?.contradictions[0]}`);
    expect(said["Size 6"]?.[1]).toBe(`To be surer: ${all.wicks[0]?.surer}`);
    expect(said["Size 9"]?.[0]).toMatch(/^beyond the limits in 2 of 2: D, cycle 1 at 60 min: flame 82 mm high/);
    expect(said["Size 9"]?.[1]).toBe(`To be surer: ${all.wicks[2]?.surer}`);
    expect(said["Size 12"]?.[0]).toMatch(
      /^beyond the limits in 1 of 1: L, cycle 1 at 240 min: glass temperature 150 F, too hot/,
    );
    // 59 F are 15 C.
    expect(said["Size 13"]?.[0]).toMatch(
      /^nothing can be said yet: M, not finished: cycle 1 at 60 min: no flame \(0 mm\): out or drowned\? \(and 7 more\), cycle 1 at 240 min: cold glass, 59 F, below 30 C/,
    );
    expect(said["Size 4"]?.[0]).toMatch(/^nothing can be said yet: F, .*not finished: 40 mm of wax left/);
    expect(said["Size 2"]?.[0]).toBe(
      "nothing can be said yet: I, not finished: nothing is read yet; burn a first cycle",
    );
    expect(JSON.stringify(all.values)).not.toMatch(/\bsafe\b/i);
  });

  it("reads no rate and no end out of weights or wax left that grow, or of cycles that are missing, and names remarks", async () => {
    const odd = workbook();
    odd.tests = ["P", "Q", "R", "S"].map((name) => candle(name, "Size 6"));
    const change = (rows: CellValue[][], at: number, column: number, value: CellValue) =>
      rows.map((row, i) => (i === at ? row.map((one, c) => (c === column ? value : one)) : row));
    odd.looks = [
      // The weight at the end of the first cycle typed above that of its start.
      ...change(burnt("P", { rate: 5 }), 4, 3, 0.48),
      // 0.8 cm left after the first cycle, 4 cm after the second.
      ...change(change(burnt("Q", { rate: 5 }), 4, 6, 0.8), 9, 6, 4),
      ...burnt("R", { rate: 5 }).map((row) => (row[1] === 2 ? row.map((one, c) => (c === 1 ? 3 : one)) : row)),
      ...change(burnt("S", { rate: 5 }), 2, 10, "glass cracked, put it out"),
    ];
    const { values, wicks } = await worked(odd);
    const [p, q, r, s] = wicks[0]?.candles ?? [];
    expect([p, q, r].map((one) => one?.rate)).toEqual([undefined, expect.closeTo(5, 9), undefined]);
    expect([p, q, r, s].map((one) => one?.end)).toEqual([8, undefined, undefined, 8]);
    expect(p?.lacks[0]).toBe("its weight rises from 400 (cycle 1 at 0 min) to 480 (cycle 1 at 240 min); check both");
    expect(q?.lacks).toEqual(["wax left rises from 8 to 40 mm; check both"]);
    expect(r?.lacks).toEqual(["cycle 2 never looked at"]);
    expect(s).toMatchObject({ lacks: [], notes: ["cycle 1 at 120 min: glass cracked, put it out"] });
    expect(errorsIn(values)).toEqual([]);
    expectSame(values, wicks);
    const verdict = values.find(([wick]) => wick === "Size 6")?.[1];
    expect(verdict).toContain("; the maker's remarks, in 1: S, glass cracked, put it out: read them first");
  });

  it("draws the rates between the lowest and the highest, all pictures as long", () => {
    const pictures = [...below(all.values, "By wick"), ...below(all.values, "By candle")].flatMap(
      (row) => row[14] || [],
    );
    expect(new Set(pictures.map((one) => String(one).length))).toEqual(new Set([24]));
    // Each wick and candle with a rate has one.
    const rated = [...below(all.values, "By wick"), ...below(all.values, "By candle")].filter(
      (row) => row[3] || row[3] === 0,
    );
    expect(rated.length).toBeGreaterThan(8);
    expect(pictures).toHaveLength(rated.length);
    expect(pictures.every((one) => String(one).split("█").length === 2)).toBe(true);
  });

  it("follows a reading that is changed, and candles of a new wick that are added, without being written again", async () => {
    const before = workbook();
    const after = workbook();
    const flame = after.looks.find(([test, , hour]) => test === "A" && hour === 2) as CellValue[];
    flame[4] = 80;
    after.tests.push(candle("J", "Size 7"), candle("K", "Size 7"));
    after.looks.push(...burnt("J", { rate: 6 }), ...burnt("K", { rate: 6.3, left: 0.8 }));
    const { values, wicks } = await worked(after, before);
    expect(wicks.map(({ wick }) => wick)).toContain("Size 7");
    expect(wicks[0]?.passed).toBe(2);
    expectSame(values, wicks);
  });

  it.each([
    [["Flame (mm)", "Flame (cm)"], "Flame (mm) in Looks"],
    [["Inside width (cm)", "Inside width (mm)"], "Inside width (cm) in Burns"],
    [["Burn time (h)", "Minutes"], "Burn time (h) in Looks"],
    [["Weight (kg)", "Weight (g)"], "Weight (kg) in Looks"],
    [["Glass temperature (F)", "Glass temperature (C)"], "Glass temperature (F) in Looks"],
  ])("gives no verdict once a heading that it goes by names another unit: %j", async ([from, to], words) => {
    const called = (one: string) => (one === from ? (to as string) : one);
    const shown = { tests: TESTS.map(called), looks: LOOKS.map(called) };
    const few = { tests: workbook().tests.slice(0, 2), looks: workbook().looks };
    const { values } = await worked(few, few, 180, shown);
    expect(values.map(([first]) => first)).toContain(
      `${words} is called otherwise now: write this sheet anew in the pane.`,
    );
    const verdict = String(below(values, "Wick")[0]?.[1]);
    expect(verdict).toMatch(/^nothing can be said yet: A, not finished: /);
    expect(verdict).toContain(`${words} is called otherwise now: write this sheet anew in the pane`);
    expect(below(values, "By candle").map((row) => row[13])).toEqual(["not finished", "not finished"]);
  });

  it("keeps its verdicts where a heading is called otherwise that it takes no unit from", async () => {
    const shown = { tests: TESTS, looks: LOOKS.map((one) => (one === "Remarks" ? "Seen" : one)) };
    const few = { tests: workbook().tests.slice(0, 2), looks: workbook().looks };
    const { values } = await worked(few, few, 180, shown);
    expect(JSON.stringify(values)).not.toContain("called otherwise");
    expect(below(values, "By candle").map((row) => row[13])).toEqual(["nothing beyond", "nothing beyond"]);
  });

  it("says when more candles or wicks came in than it has room for", async () => {
    const after = workbook();
    for (let i = 0; i < 8; i++) after.tests.push(candle(`N${i}`, `New ${i}`));
    const { values } = await worked(after, workbook());
    const said = values.map(([first]) => first);
    // 10 candles were written and have room for 6 more; 6 wicks with one of its candles have room for 2 more.
    expect(said).toContain("2 more candles than this sheet has rows for: write it again in the pane.");
    expect(said).toContainEqual(
      expect.stringMatching(/^\d more wicks? than this sheet has rows for|^\d more wicks than/),
    );
  });

  it("refuses where a formula would not find a candle, where a length has no unit, and a mere selection", () => {
    const { tests, looks } = workbook();
    const write = (rows: CellValue[][], heads = LOOKS, name = "Burns") => {
      const table = tableOn("burnTests", name, TESTS, rows);
      const [own = []] = seriesOf(readTable(table, "g") ?? new Map());
      return () =>
        seenSheet(
          { name: "Bowl", tests: own, wicks: 4, fill: undefined },
          { burnTests: table, readings: tableOn("readings", "Looks", heads, looks) },
          SETTINGS,
        );
    };
    expect(
      write(
        tests.slice(0, 4),
        LOOKS.map((one) => (one === "Pool (in)" ? "Pool" : one)),
      ),
    ).toThrow("Pool: the heading names no unit of length");
    expect(write(tests.slice(0, 4), LOOKS, "")).toThrow("make it a table of the workbook first");
    expect(write([...tests.slice(0, 4), candle("H", "Size 4", { 2: "?" })])).toThrow(
      /fix first in Burns: H: .*"\?" is not a number/,
    );
  });
});
