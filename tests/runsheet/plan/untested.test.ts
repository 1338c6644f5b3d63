import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { Tables } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

const HEADINGS = {
  pour: ["Vessel", "Quantity", "Fill weight", "Scent", "Load", "Wax"],
  vessels: ["Vessel", "Water weight", "Wick"],
  burnTests: ["Test", "Vessel", "Wick", "Wax", "Scent", "Load (of wax)", "Inside width (mm)"],
  readings: ["Test", "Cycle", "Minutes", "Flame (mm)", "Pool (mm)", "Wax left (mm)", "Soot", "Glass (C)"],
} satisfies Partial<Record<TableTypeId, string[]>>;

/** The readings of a candle that was burnt down in one cycle, within all limits. */
const burnt = (test: string, flame = 20): CellValue[][] =>
  [60, 120].map((minutes, i) => [test, 1, minutes, flame, 25 * (i + 1), 60 - 50 * i, "none", 40]);

/** Bowls of 200 g, whose wick is size 6, tried in soft wax at 5 and 8 % of wax; a test of size 8 was never lit. */
const USUAL = {
  pour: [["Bowl", 4, 200, "Rain", 0.06, "Soft wax"]],
  vessels: [["Bowl", 240, "Size 6"]],
  burnTests: [
    ["T-1", "bowl", "size 6", "Soft wax", "Rain", 0.05, 70],
    ["T-2", "Bowl", "Size 6", "soft wax", "Rain", 0.08, 70],
    ["T-3", "Bowl", "Size 8", "Soft wax", "Rain", 0.06, 70],
    ["T-4", "Tin", "Size 2", "Soft wax", "Rain", 0.06, 70],
  ],
  // Of size 8 the rows are made, and nothing is read.
  readings: [...burnt("T-1"), ...burnt("T-2"), ["T-3", 1, 240], ...burnt("T-4")],
} satisfies Record<keyof typeof HEADINGS, CellValue[][]>;

function saidOf(
  changed: Partial<Record<keyof typeof HEADINGS, CellValue[][] | undefined>>,
  more: Partial<Settings> = {},
) {
  const tables = Object.entries({ ...USUAL, ...changed }).flatMap(([type, rows]) => {
    const headings = HEADINGS[type as keyof typeof HEADINGS];
    return rows ? [[type, { type, headings, rows, columns: matchColumns(type as TableTypeId, headings) }]] : [];
  });
  const run = buildRun(Object.fromEntries(tables) as Tables, { ...FIRST_SETTINGS, loss: 0, ...more });
  return run.problems.filter(({ text }) => /^(not )?tested/.test(text));
}

describe("a candle that was never burnt like this", () => {
  it("is not spoken of where wick, wax and load were tried, the ends of the loads among them", () => {
    for (const load of [0.05, 0.06, 0.08]) {
      expect(saidOf({ pour: [["Bowl", 4, 200, "Rain", load, "Soft wax"]] })).toEqual([]);
    }
    // 5.6 % of the total are 5.93 % of the wax.
    expect(saidOf({ pour: [["Bowl", 4, 200, "Rain", 0.056, "Soft wax"]] }, { basis: "of total" })).toEqual([]);
  });

  it.each([
    [
      { vessels: [["Bowl", 240, "Size 8"]] },
      "not tested: Bowl, wick Size 8 in Soft wax at 6 % of wax; nearest test T-1: wick size 6 in Soft wax at 5 % of wax",
    ],
    [
      { vessels: [["Bowl", 240, null]] },
      "not tested: Bowl, no approved wick, in Soft wax at 6 % of wax; nearest test T-1: wick size 6 in Soft wax at 5 % of wax",
    ],
    [
      { pour: [["Bowl", 4, 200, "Rain", 0.06, "Hard wax"]] },
      "not tested: Bowl, wick Size 6 in Hard wax at 6 % of wax; nearest test T-1: wick size 6 in Soft wax at 5 % of wax",
    ],
    [
      { pour: [["Bowl", 4, 200, "Rain", 0.09, "Soft wax"]] },
      "not tested: Bowl, wick Size 6 in Soft wax at 9 % of wax; nearest test T-2: wick Size 6 in soft wax at 8 % of wax",
    ],
    [
      { pour: [["Bowl", 4, 200, "", 0, "Soft wax"]] },
      "not tested: Bowl, wick Size 6 in Soft wax at 0 % of wax; nearest test T-1: wick size 6 in Soft wax at 5 % of wax",
    ],
    [
      { pour: [["Cup", 4, 200, "Rain", 0.06, "Soft wax"]], vessels: [["Cup", 240, "Size 6"]] },
      "not tested: Cup, wick Size 6 in Soft wax at 6 % of wax; no candle of this vessel was burnt",
    ],
  ])("is said above all else, with the nearest one that was: %j", (changed, text) => {
    expect(saidOf(changed)).toMatchObject([{ severity: "warning", safety: true, text }]);
  });

  it("is asked about beside the vessel's wick", () => {
    expect(saidOf({ vessels: [["Bowl", 240, "Size 8"]] })).toMatchObject([{ table: "vessels", row: 0, field: "wick" }]);
  });

  it("takes two of a wick for another thing than one, however that is written", () => {
    const vessels = [["Bowl", 240, "2 x Size 6"]];
    expect(saidOf({ vessels })).toHaveLength(1);
    const burnTests = [["T-1", "Bowl", "Size 6 (2)", "Soft wax", "Rain", 0.06, 70]];
    expect(saidOf({ vessels, burnTests })).toEqual([]);
  });

  it("was burnt in the usual wax where the test names none, and had no scent where it names no load", () => {
    const burnTests = [["T-1", "Bowl", "Size 6", null, null, null, 70]];
    expect(saidOf({ pour: [["Bowl", 4, 200, null, 0, null]], burnTests }, { load: 0 })).toEqual([]);
  });

  it("is said to have failed, or not to be burnt down, where it was tested", () => {
    expect(saidOf({ readings: [...burnt("T-1"), ...burnt("T-2", 95)] })[0]?.text).toMatch(
      /^tested, and beyond the limits: Bowl, wick Size 6 in Soft wax at 6 % of wax; T-2: cycle 1 at 60 min: flame 95 mm/,
    );
    const begun = [...burnt("T-1").slice(0, 1), ...burnt("T-2").slice(0, 1)];
    expect(saidOf({ readings: begun })[0]?.text).toMatch(
      /^not tested to the end: Bowl, wick Size 6 in Soft wax at 6 % of wax; T-1: 60 mm of wax left/,
    );
  });

  it("passes by no candle at another load: only those at its own, or at the nearest ones below and above, count", () => {
    const at = (load: number, readings: CellValue[][]) =>
      saidOf({ pour: [["Bowl", 4, 200, "Rain", load, "Soft wax"]], readings }).map(({ text }) => text);
    const openAtEight = [...burnt("T-1"), ...burnt("T-2").slice(0, 1)];
    expect(at(0.05, openAtEight)).toEqual([]);
    expect(at(0.08, openAtEight)).toEqual([
      expect.stringMatching(
        /^not tested to the end: Bowl, wick Size 6 in Soft wax at 8 % of wax; T-2: 60 mm of wax left/,
      ),
    ]);
    expect(at(0.06, openAtEight)).toEqual([expect.stringMatching(/^not tested to the end: .*; T-2: 60 mm/)]);
    const failedAtEight = [...burnt("T-1"), ...burnt("T-2", 95)];
    expect(at(0.05, failedAtEight)).toEqual([]);
    expect(at(0.08, failedAtEight)).toEqual([expect.stringMatching(/^tested, and beyond the limits: .*; T-2: /)]);
  });

  it("is said where it was tested with other scents only", () => {
    expect(saidOf({ pour: [["Bowl", 4, 200, "Musk", 0.06, "Soft wax"]] })[0]?.text).toBe(
      "tested only with Rain, not with Musk: Bowl, wick Size 6 in Soft wax at 6 % of wax",
    );
    // A candle without scent is no lower end of the loads.
    const burnTests = [
      ["T-1", "Bowl", "Size 6", "Soft wax", null, null, 70],
      ["T-2", "Bowl", "Size 6", "Soft wax", "Rain", 0.1, 70],
    ];
    expect(saidOf({ burnTests })[0]?.text).toMatch(/^not tested: .*nearest test T-2/);
  });

  it("is held against tests that leave something open, which are named as they stand", () => {
    const near = (...test: CellValue[]) => saidOf({ burnTests: [["T-1", "Bowl", ...test, 70]] })[0]?.text;
    expect(near(null, "Soft wax", "Rain", 0.06)).toMatch(/nearest test T-1: wick not named in Soft wax at 6 % of wax$/);
    // A load that is not written, or cannot be read, is none of these.
    expect(near("Size 6", null, "Rain", null)).toMatch(/nearest test T-1: wick Size 6 in wax load not known$/);
    expect(near("Size 6", "Soft wax", null, "a little")).toMatch(
      /nearest test T-1: wick Size 6 in Soft wax load not known$/,
    );
    const unnamed = [["T-1", "Bowl", "Size 6", "Soft wax", null, 0.06, 70]];
    expect(saidOf({ burnTests: unnamed })[0]?.text).toMatch(/^tested only with a scent not named, not with Rain: /);
  });

  it("is asked about also where no vessel is known, and names the nearest by wick first, then by wax, then by load", () => {
    const pour = [["Bowl", 4, 200, "Rain", 0.06, "Soft wax"]];
    const [unknown] = saidOf({ pour, vessels: [["Tin", 240, "Size 2"]] });
    expect(unknown).toMatchObject({ text: expect.stringContaining("Bowl, no approved wick, in Soft wax") });
    expect(unknown).not.toHaveProperty("row");
    const nearest = (...burnTests: CellValue[][]) =>
      /nearest test (\S+):/.exec(
        saidOf({ pour: [["Bowl", 4, 200, "Rain", 0.12, "Soft wax"]], burnTests })[0]?.text ?? "",
      )?.[1];
    const [size8, hard, far] = [
      ["T-1", "Bowl", "Size 8", "Soft wax", "Rain", 0.12, 70],
      ["T-2", "Bowl", "Size 6", "Hard wax", "Rain", 0.12, 70],
      ["T-4", "Bowl", "Size 6", "Soft wax", "Rain", 0.01, 70],
    ];
    expect(nearest(size8 as CellValue[], hard as CellValue[])).toBe("T-2");
    expect(nearest(hard as CellValue[], far as CellValue[])).toBe("T-4");
  });

  it("is not spoken of where no burn tests are kept", () => {
    expect(saidOf({ burnTests: undefined, readings: undefined })).toEqual([]);
    // Tests that were written down and never lit prove nothing.
    expect(saidOf({ readings: undefined })).toHaveLength(1);
  });
});
