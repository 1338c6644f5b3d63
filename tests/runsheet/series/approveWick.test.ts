import { describe, expect, it } from "vitest";
import { planApproval } from "../../../src/runsheet/series/approveWick";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { TableRows } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

const TESTS = ["Test", "Vessel", "Wick", "Wax", "Scent", "Load (of wax)", "Inside width (mm)"];
const READINGS = [
  "Test",
  "Cycle",
  "Minutes",
  "Flame (mm)",
  "Pool (mm)",
  "Wax left (mm)",
  "Soot",
  "Glass (C)",
  "Remarks",
  "Weight (g)",
];
const VESSELS = ["Vessel", "Water weight (g)", "Wick"];

const tableOf = <K extends TableTypeId>(type: K, headings: string[], rows: CellValue[][]) =>
  ({ type, headings, rows, columns: matchColumns(type, headings) }) as TableRows<K>;

/** A candle that was burnt down in one cycle, within all limits but for its flame. All invented. */
const burnt = (test: string, flame = 20, pool = 25, left = 10): CellValue[][] =>
  [60, 120].map((minutes, i) => [test, 1, minutes, flame, pool * (i + 1), 60 - (60 - left) * i, "none", 40]);
const test = (name: string, wick = "Size 6", load = 0.06, wax = "Soft wax"): CellValue[] => [
  name,
  "Bowl",
  wick,
  wax,
  "Rain",
  load,
  70,
];

const THREE = [test("A"), test("B"), test("C")];
const ALL = [...burnt("A"), ...burnt("B"), ...burnt("C")];

const STANDING: CellValue[][] = [
  ["Tin", 90, null],
  ["bowl ", 240, null],
];

interface Given {
  readonly tests?: CellValue[][];
  readonly readings?: CellValue[][];
  /** Null where there is no such table. */
  readonly vessels?: CellValue[][] | null;
  readonly headings?: string[];
  readonly of?: string;
  readonly fill?: number;
}

function planned({
  tests = THREE,
  readings = ALL,
  vessels = STANDING,
  headings = VESSELS,
  of = "A",
  fill,
}: Given = {}) {
  return planApproval(
    of,
    {
      burnTests: readTable(tableOf("burnTests", TESTS, tests), "g") ?? new Map(),
      readings: readTable(tableOf("readings", READINGS, readings), "g") ?? new Map(),
      fillOf: () => fill,
      vessels: vessels === null ? undefined : { ...tableOf("vessels", headings, vessels), name: "Vessels" },
    },
    { basis: "of wax" },
  );
}

describe("approving a wick", () => {
  it("is for the usual wax without scent where the tests name neither", () => {
    const bare = ["A", "B", "C"].map((name) => test(name).map((cell, i) => (i > 2 && i < 6 ? null : cell)));
    expect(planned({ tests: bare })).toMatchObject({
      done: expect.stringContaining("for what was burnt: 3 candles in the usual wax at 0 % of wax, without scent."),
    });
  });

  it("counts the candles of other series that were beyond the limits", () => {
    const tests = [...THREE, test("X", "Size 6", 0.09), test("Y", "Size 6", 0.09)];
    const readings = [...ALL, ...burnt("X", 95), ...burnt("Y", 96)];
    const plan = planned({ tests, readings });
    expect(plan).toMatchObject({ kind: "ready" });
    expect("doubts" in plan ? plan.doubts.join() : "").toMatch(
      /in another series it was beyond the limits, in Soft wax at 9 % of wax with Rain: X, cycle 1 at 60 min: flame 95 mm.* \(and 1 more\)/,
    );
  });

  it("needs a table whose heading names the vessels", () => {
    expect(planned({ headings: ["Colour", "Water weight (g)", "Wick"] })).toEqual({
      kind: "barred",
      says: "Vessels has no column for Vessel; fix its heading.",
    });
  });

  it("needs a test that is there and names its vessel and its wick", () => {
    expect(planned({ of: "Z" })).toEqual({ kind: "unseen", says: "Z is not among the burn tests any more." });
    const without = (place: number) => [test("A").map((cell, i) => (i === place ? null : cell))];
    expect(planned({ tests: without(1) })).toEqual({ kind: "unseen", says: "A names no vessel; write it." });
    expect(planned({ tests: without(2) })).toEqual({ kind: "unseen", says: "A names no wick; write it." });
  });

  it("writes it into the vessel's row, unasked where all candles were finished and nothing was beyond", () => {
    expect(planned()).toEqual({
      kind: "ready",
      cell: { row: 1, column: 2, text: "Size 6" },
      doubts: [],
      done: "Size 6 stands in Vessels as the wick of Bowl, for what was burnt: 3 candles in Soft wax at 6 % of wax with Rain. Poured in another way, Check says so. A burn-test laboratory has the last word.",
    });
  });

  it("asks where the weights do not agree with the wax that is left", () => {
    // 6 g in 2 h, read as burnt down to 10 mm: of 200 g that is 3 %, of 8 g it is three quarters.
    const weighed = ALL.map((row) => {
      const isFirst = row[2] === 60;
      return [...row.map((one, c) => (isFirst && c === 5 ? null : one)), null, isFirst ? 300 : 297];
    });
    const lit = ["A", "B", "C"].map((name): CellValue[] => [name, 1, 0, null, null, null, null, null, null, 303]);
    const doubtsOf = (fill: number) => {
      const plan = planned({ readings: [...lit, ...weighed], fill });
      return plan.kind === "ready" ? plan.doubts : plan.says;
    };
    expect(doubtsOf(200)).toEqual([expect.stringMatching(/^with 10 mm of wax left only about 3 % of the fill/)]);
    expect(doubtsOf(8)).toEqual([]);
  });

  it("counts the loads of the wick's other series in that wax to what it holds for", () => {
    const tests = [
      ...THREE,
      test("D", "size 6", 0.08),
      test("E", "Size 6", 0.1, "Hard wax"),
      test("F", "Size 8", 0.12),
      // Without scent a candle is another one, and no lower end of the loads.
      ["G", "Bowl", "Size 6", "Soft wax", null, null, 70],
    ];
    const readings = [...ALL, ...burnt("D"), ...burnt("E"), ...burnt("F"), ...burnt("G")];
    expect(planned({ tests, readings })).toMatchObject({
      doubts: [],
      done: expect.stringContaining("4 candles in Soft wax at 6 to 8 % of wax with Rain"),
    });
  });

  it.each([
    [
      "a candle is not finished",
      { readings: [...ALL.slice(0, 4), ...burnt("C", 20, 25, 30)] },
      [
        "1 of 3 candles is not finished: C, 30 mm of wax left; burn down to 10 mm",
        // 1 - 0.05^(1/2) is 78 %.
        "only 2 candles are finished: a fault in up to 78 % of all is still possible; 3 or more are advised",
      ],
    ],
    [
      "few were burnt",
      { tests: THREE.slice(0, 1) },
      ["only 1 candle is finished: a fault in up to 95 % of all is still possible; 3 or more are advised"],
    ],
    [
      "a pool is to look at",
      { readings: [...ALL.slice(0, 4), ...burnt("C", 20, 12)] },
      [expect.stringMatching(/^to look at in 1: C, cycle 1 at 60 min: pool behind: 12 mm/)],
    ],
    [
      "a reading has a remark",
      { readings: ALL.map((row, i) => (i === 1 ? [...row, "glass cracked, put it out"] : row)) },
      ["the maker's remarks: A, cycle 1 at 120 min: glass cracked, put it out: read it first"],
    ],
    [
      "a flame was out",
      { readings: ALL.map((row, i) => (i === 1 ? row.map((one, c) => (c === 3 ? 0 : one)) : row)) },
      [
        "1 of 3 candles is not finished: A, cycle 1 at 120 min: no flame (0 mm): out or drowned?",
        "only 2 candles are finished: a fault in up to 78 % of all is still possible; 3 or more are advised",
      ],
    ],
    [
      "no load is written",
      {
        tests: [
          ["A", "Bowl", "Size 6", "Soft wax", "Rain", null, 70],
          ["B", "Bowl", "Size 6", "Soft wax", "Rain", null, 70],
          ["C", "Bowl", "Size 6", "Soft wax", "Rain", null, 70],
        ],
      },
      ["A names no load: which loads it holds for is not known"],
    ],
    [
      "two candles bear one name",
      { tests: [...THREE, test("A")] },
      ["A: A stands twice; give each candle a name of its own"],
    ],
    [
      "another series of the wick failed",
      { tests: [...THREE, test("D", "Size 6", 0.09)], readings: [...ALL, ...burnt("D", 95)] },
      [
        expect.stringMatching(
          /^in another series it was beyond the limits, in Soft wax at 9 % of wax with Rain: D, cycle 1 at 60 min: flame 95 mm high/,
        ),
      ],
    ],
    [
      "another wick stands there",
      { vessels: [["Bowl", 240, "Size 4"]] },
      ["Size 4 stands there as the wick of Bowl, and would be replaced"],
    ],
    [
      "two of it stand there",
      { vessels: [["Bowl", 240, "2 x Size 6"]] },
      [expect.stringContaining("2 x Size 6 stands")],
    ],
    [
      "a wick of the vessel is spelt nearly alike",
      { tests: [...THREE, test("D", "size-6"), test("E", "Size6"), test("F", "Size 8")] },
      ["Size 6, size-6 and Size6: one wick, or 3? D and E not counted here"],
    ],
    [
      "one that is spelt nearly alike failed",
      { tests: [...THREE, test("D", "SIZE-6")], readings: [...ALL, ...burnt("D", 95)] },
      [
        expect.stringMatching(
          /^Size 6 and SIZE-6: one wick, or two\? D not counted here, and D was beyond the limits: cycle 1 at 60 min: flame 95 mm high/,
        ),
      ],
    ],
  ] satisfies [string, Given, unknown][])("asks first where %s", (_, given, doubts) => {
    expect(planned(given)).toMatchObject({ kind: "ready", doubts });
  });

  it.each([
    [
      "wax left in centimetres",
      // 45 and 35 mm, 80 g apart: 23 mm in a vessel of 70 mm.
      ALL.map((row) => {
        const isFirst = row[2] === 60;
        return [...row.map((one, c) => (c === 5 ? (isFirst ? 4.5 : 3.5) : one)), null, isFirst ? 380 : 300];
      }),
      "wax left fell by 1 mm, by the weights about 23 mm burnt",
    ],
    // 30 mm, and a flare of 85 mm, in centimetres: EN 15493 allows 75 mm.
    [
      "flames in centimetres",
      ALL.map((row, i) => row.map((one, c) => (c === 3 ? (i === 3 ? 8.5 : 3) : one))),
      "low flame, 3 mm",
    ],
    ["minutes in hours", ALL.map((row) => row.map((one, c) => (c === 2 ? Number(one) / 60 : one))), "are these hours?"],
    [
      "flame and pool in each other's columns",
      [...burnt("A", 60, 15), ...burnt("B", 60, 15), ...burnt("C", 60, 15)],
      "narrow pool, 30 mm",
    ],
    [
      "hours of burning that nobody saw",
      ["A", "B", "C"].flatMap((name) => [...burnt(name), [name, 2, 720, null, null, null, null, null, null, 180]]),
      "cycle 2 never looked at",
    ],
  ] satisfies [string, CellValue[][], string][])("approves no wick by %s", (_, readings, words) => {
    expect(planned({ readings })).toMatchObject({ kind: "unseen", says: expect.stringContaining(words) });
  });

  it("says of one candle that it is one", () => {
    expect(planned({ tests: THREE.slice(0, 1) })).toMatchObject({
      done: expect.stringContaining("for what was burnt: 1 candle in Soft wax at 6 % of wax with Rain."),
    });
  });

  it("takes a word for none as none", () => {
    expect(planned({ vessels: [["Bowl", 240, "n/a"]] })).toMatchObject({ kind: "ready", doubts: [] });
  });

  it("leaves a wick that stands there already, however it is written", () => {
    expect(planned({ vessels: [["Bowl", 240, " SIZE 6"]] })).toEqual({
      kind: "standing",
      says: "SIZE 6 stands in Vessels as the wick of Bowl.",
    });
  });

  it("says that a wick that was beyond the limits stands there all the same", () => {
    const readings = [...ALL.slice(0, 4), ...burnt("C", 95)];
    expect(planned({ readings, vessels: [["Bowl", 240, "Size 6"]] })).toEqual({
      kind: "unfit",
      says: expect.stringMatching(
        /^Size 6 stands in Vessels as the wick of Bowl, and was beyond the limits: C, cycle 1 at 60 min: .*\. Name another one there\.$/,
      ),
    });
  });

  it.each([
    [
      "one candle was beyond the limits, however many were not",
      { readings: [...ALL.slice(0, 4), ...burnt("C", 95)] },
      /^Size 6 cannot be approved for Bowl: C, cycle 1 at 60 min: flame 95 mm high/,
      "unseen",
    ],
    [
      "a candle was beyond before it was burnt down",
      { readings: [...ALL.slice(0, 4), ...burnt("C", 95).slice(0, 1)] },
      /^Size 6 cannot be approved for Bowl: C, cycle 1 at 60 min: flame 95 mm high/,
      "unseen",
    ],
    [
      "no candle is finished",
      { readings: [] },
      "Size 6 cannot be approved for Bowl yet: no candle is finished. 3 of 3 candles are not finished: A, nothing is read yet; burn a first cycle.",
      "unseen",
    ],
    ["the test is gone", { of: "Z" }, "Z is not among the burn tests any more.", "unseen"],
    ["there is no table of vessels", { vessels: null }, /^There is no table of vessels to approve a wick in/],
    [
      "the vessel has no row",
      { vessels: [["Tin", 90, null]] },
      "Vessels has no row for Bowl. Write one, then try again.",
    ],
    [
      "the vessel stands twice",
      {
        vessels: [
          ["Bowl", 240, null],
          ["bowl", 200, null],
        ],
      },
      "Bowl stands 2 times in Vessels. Leave one row of it, then try again.",
    ],
    [
      "there is no column for wicks",
      { headings: VESSELS.slice(0, 2) },
      "Vessels has no column for the wick. Write the heading Wick beside its last one, then try again.",
    ],
    [
      "the wick's cell shows an error",
      { vessels: [["Bowl", 240, { error: "#REF!" }]] },
      "The cell of the wick of Bowl in Vessels shows #REF!; fix it first.",
    ],
  ] satisfies [string, Given, string | RegExp, string?][])("refuses where %s", (_, given, says, kind = "barred") => {
    expect(planned(given)).toMatchObject({
      kind,
      says: says instanceof RegExp ? expect.stringMatching(says) : says,
    });
  });
});
