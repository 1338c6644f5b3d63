import { describe, expect, it } from "vitest";
import { burnCheck } from "../../../src/core/burn/burnCheck";
import type { BurnReading } from "../../../src/core/burn/burnReading";
import { BEYOND, DOUBT, TO_LOOK_AT } from "../../../src/core/burn/openings";
import { DONE, WIDTH, withReading } from "./doneCandle";

describe("burnCheck", () => {
  it("is empty only when all was read and all is within", () => {
    expect(burnCheck(DONE, WIDTH, "mm", "C")).toBe("");
  });

  it.each([
    // EN 15493: 75 mm, and 30 mm for a tea light.
    [{ flame: 75 }, ""],
    [{ flame: 76 }, "cycle 1 at 180 min: flame 76 mm high, at most 75 mm"],
    // Common practice: between 2.5 and 3.5 inches after three hours, and no more than the wall.
    [{ pool: 60 }, "cycle 1 at 180 min: pool behind: 60 mm after 3 h, at least 63.5 mm"],
    [{ soot: "a black rim" }, "cycle 1 at 180 min: soot: a black rim"],
    // EN 15426: an index of 1 an hour, from memory.
    [{ soot: 1 }, ""],
    [{ soot: 1.1 }, "cycle 1 at 180 min: soot index 1.1 an hour, at most 1"],
    // Common practice: 60 C.
    [{ glass: 60 }, ""],
    [{ glass: 61 }, "cycle 1 at 180 min: glass temperature 61 C, too hot to hold above 60 C"],
  ])("says what %j is beyond", (change, words) => {
    const said = burnCheck(withReading(2, change), WIDTH, "mm", "C");
    if (words === "") expect(said).toBe("");
    else expect(said.startsWith(words)).toBe(true);
  });

  it("holds a tea light to 30 mm, and says how many more readings show the same", () => {
    for (const light of ["tea light", "Tea lights", "tealight"]) {
      expect(burnCheck(DONE, WIDTH, "mm", "C", light)).toBe("");
    }
    const high = DONE.map((one) => ({ ...one, flame: 31 }));
    expect(burnCheck(high, WIDTH, "mm", "C", "tea light")).toMatch(
      /^cycle 1 at 60 min: flame 31 mm .* \(and 7 more\); end this test$/,
    );
  });

  it.each([
    [withReading(5, { flame: undefined }), "not finished: no flame read in cycle 2 at 120 min"],
    [withReading(5, { pool: undefined }), "not finished: no pool read in cycle 2 at 120 min"],
    [DONE.filter((_, i) => i !== 1 && i !== 2), "not finished: cycle 1 not looked at between 60 and 240 min"],
    [DONE.map((one) => ({ ...one, soot: undefined })), "not finished: soot not read in cycle 1"],
    [DONE.map((one) => ({ ...one, soot: "n/a" })), "not finished: soot not read in cycle 1"],
    // Read at the beginning only: a vessel is hottest at the end.
    [
      DONE.map((one, i) => (i > 3 ? { ...one, glass: undefined } : one)),
      "not finished: glass temperature not read in cycle 2",
    ],
    [DONE.map((one) => ({ ...one, cycle: one.cycle === 2 ? 3 : 1 })), "not finished: cycle 2 never looked at"],
    // However many cycles are counted, the first that is missing says so.
    [DONE.map((one) => ({ ...one, cycle: one.cycle === 2 ? 1e15 : 1 })), "not finished: cycle 2 never looked at"],
    [
      DONE.map((one) => ({ ...one, depth: undefined })),
      "not finished: the depth of wax left never read; burn down to 10 mm",
    ],
    // EN 15426: until 10 mm are left.
    [DONE.slice(0, 4), "not finished: 40 mm of wax left; burn down to 10 mm"],
  ])("is not finished while something is unread or unburnt", (readings, words) => {
    expect(burnCheck(readings, WIDTH, "mm", "C")).toBe(words);
  });

  it("is not finished by what was read before it was lit", () => {
    const before = [{ cycle: 1, minutes: 0, depth: 8, soot: "none", glass: 20 }];
    expect(burnCheck(before, WIDTH, "mm", "C")).toBe("not finished: cycle 1 never looked at");
  });

  it.each([
    ...[
      "No",
      "No soot",
      "no visible smoke.",
      "None.",
      "none seen",
      "no soot visible",
      "nil",
      "nothing",
      "clean",
      "clear",
      "OK",
    ],
    ...[0, "0", "0,4"],
  ])("takes %j for no soot to speak of", (soot) => {
    expect(burnCheck(withReading(3, { soot }), WIDTH, "mm", "C")).toBe("");
  });

  it.each([
    ...["none at first, then heavy smoke", "no trim, thick black smoke", "No, a little", "nothing much", "nonesuch"],
    ...["clean until hour 3", "ok?", "no soot on the rim, some smoke", "-0.5"],
  ])("takes %j for soot", (soot) => {
    expect(burnCheck(withReading(3, { soot }), WIDTH, "mm", "C")).toBe(`cycle 1 at 240 min: soot: ${soot}`);
  });

  it.each(["-", "n/a", "?", "not read", "Not looked at."])("takes %j for soot not read", (soot) => {
    const unread = DONE.map((one) => (one.cycle === 2 ? { ...one, soot } : one));
    expect(burnCheck(unread, WIDTH, "mm", "C")).toBe("not finished: soot not read in cycle 2");
  });

  it("finishes no candle whose wax left grows again, beyond what a ruler may be out", () => {
    const depths = (first: number, second: number) => DONE.map((one, i) => ({ ...one, depth: i < 4 ? first : second }));
    expect(burnCheck(depths(8, 40), WIDTH, "mm", "C")).toBe("not finished: wax left rises from 8 to 40 mm; check both");
    // The rows of a table may stand in any order.
    expect(burnCheck(depths(8, 40).reverse(), WIDTH, "mm", "C")).toContain("rises from 8 to 40 mm");
    const falling = DONE.map((one, i) => ({ ...one, depth: 80 - 10 * i }));
    expect(
      burnCheck(
        [5, 2, 7, 0, 6, 1, 4, 3].map((i) => falling[i] as BurnReading),
        WIDTH,
        "mm",
        "C",
      ),
    ).toBe("");
    expect(burnCheck(depths(8, 9), WIDTH, "mm", "C")).toBe("");
    // Little by little as well: 8, 8.8, 9.6 mm; but of two looks at one time neither is the later one.
    const creeping = DONE.map((one, i) => ({ ...one, depth: Math.max(8, 8 + 0.8 * (i - 5)) }));
    expect(burnCheck(creeping, WIDTH, "mm", "C")).toBe("not finished: wax left rises from 8 to 9.6 mm; check both");
    const twice = [...depths(12, 8), { ...(DONE.at(-1) as BurnReading), depth: 12 }];
    expect(burnCheck(twice, WIDTH, "mm", "C")).toContain("rises from 8 to 12 mm");
    expect(burnCheck([...depths(12, 12), { ...(DONE.at(-1) as BurnReading), depth: 8 }], WIDTH, "mm", "C")).toBe("");
    expect(burnCheck(depths(40, 8), WIDTH, "mm", "C")).toBe("");
  });

  it("begins each finding with the words that sheets know it by", () => {
    const beginning = (change: Partial<BurnReading>) =>
      burnCheck(withReading(0, change), WIDTH, "mm", "C").slice("cycle 1 at 60 min: ".length);
    const both = Object.values({ ...BEYOND, ...TO_LOOK_AT });
    for (const [change, opening] of [
      [{ flame: 80 }, BEYOND.flame],
      [{ soot: "black" }, BEYOND.soot],
      [{ soot: 3 }, BEYOND.soot],
      [{ glass: 70 }, BEYOND.glass],
      [{ pool: 5 }, TO_LOOK_AT.pool],
    ] as const) {
      expect(
        both.filter((one) => beginning(change).startsWith(one)),
        JSON.stringify(change),
      ).toEqual([opening]);
    }
    // What is asked stands behind what is still to be done, where a sheet looks for no finding; those of a sample do.
    const found = [...both, ...Object.values(DOUBT)];
    expect(found.filter((one, i) => found.some((other, o) => o !== i && one.startsWith(other)))).toEqual([]);
    const long = withReading(3, { minutes: 255, pool: 70 });
    expect(burnCheck(long, WIDTH, "mm", "C")).toMatch(new RegExp(`min: ${TO_LOOK_AT.long}4\\.25 h`));
  });

  it("judges the flame and the vessel also where a pool cannot be or no width is known", () => {
    const odd = withReading(2, { flame: 95, pool: 71 });
    expect(burnCheck(odd, WIDTH, "mm", "C")).toMatch(/^cycle 1 at 180 min: flame 95 mm .*; end this test$/);
    expect(burnCheck(withReading(2, { pool: 71 }), WIDTH, "mm", "C")).toMatch(
      /^not finished: cycle 1 at 180 min: pool: 71 is wider than the vessel/,
    );
    expect(burnCheck(odd, undefined, "mm", "C")).toMatch(/^cycle 1 at 180 min: flame 95 mm/);
    expect(burnCheck(DONE, undefined, "mm", "C")).toBe("not finished: the inside width of its vessel is not known");
  });

  it("says both what is beyond and what is still to be done, but asks no dangerous candle to burn on", () => {
    expect(burnCheck(withReading(0, { soot: "black" }).slice(0, 4), WIDTH, "mm", "C")).toBe(
      "cycle 1 at 60 min: soot: black; not finished: 40 mm of wax left; burn down to 10 mm",
    );
    expect(burnCheck(withReading(0, { glass: 70 }).slice(0, 4), WIDTH, "mm", "C")).toMatch(
      /^cycle 1 at 60 min: glass temperature 70 C, .*; end this test$/,
    );
  });

  it("gives the same in any unit", () => {
    const inches = withReading(3, { flame: 80 }).map((one) => ({
      ...one,
      ...{ flame: (one.flame ?? 0) / 25.4, pool: (one.pool ?? 0) / 25.4, depth: (one.depth ?? 0) / 25.4 },
      glass: 113,
    }));
    // 45 C are 113 F.
    expect(burnCheck(inches, WIDTH / 25.4, "in", "F")).toContain("(80 mm) high, at most 75 mm");
    const within = DONE.map((one) => ({
      ...one,
      pool: (one.pool ?? 0) / 10,
      flame: 2.5,
      depth: (one.depth ?? 0) / 10,
    }));
    expect(burnCheck(within, WIDTH / 10, "cm", "C")).toBe("");
  });

  it.each([
    [[], WIDTH, "C", "nothing is read yet"],
    [withReading(0, { cycle: 0 }), WIDTH, "C", "cycles: 0 is no number of a cycle"],
    [withReading(0, { minutes: -5 }), WIDTH, "C", "minutes: -5"],
    [withReading(0, { depth: -1 }), WIDTH, "C", "depths: -1 is below 0"],
    [withReading(0, { minutes: 1 / 24 }), WIDTH, "C", "of clock times take off the start and multiply by 1440"],
    [DONE, 0, "C", "width: 0 is not above 0"],
    [DONE, WIDTH, "", "write C or F"],
  ])("refuses what cannot be", (readings, width, unit, words) => {
    expect(() => burnCheck(readings as BurnReading[], width, "mm", unit)).toThrow(words);
  });
});
