import { describe, expect, it } from "vitest";
import { burnCheck } from "../../../src/core/burn/burnCheck";
import type { BurnReading } from "../../../src/core/burn/burnReading";
import { DONE, WIDTH, withReading } from "./doneCandle";

const said = (readings: readonly BurnReading[], unit = "C"): string => burnCheck(readings, WIDTH, "mm", unit);

describe("what is asked of readings that no candle shows", () => {
  it("passes none whose flames were typed in centimetres or inches under millimetres", () => {
    // 30 mm and a flare of 85 mm, 10 mm above the limit of EN 15493, in centimetres.
    const inCentimetres = DONE.map((one, i) => ({ ...one, flame: i === 6 ? 8.5 : 3 }));
    expect(said(inCentimetres)).toBe(
      "not finished: cycle 1 at 60 min: low flame, 3 mm: is its unit right? (and 7 more)",
    );
    for (const unit of [10, 25.4]) {
      for (const flame of [20, 50, 75.1, 90]) {
        expect(said(DONE.map((one) => ({ ...one, flame: flame / unit }))), `${flame} mm in 1/${unit}`).toContain(
          "low flame",
        );
      }
    }
  });

  it.each([
    // A fifth of the pool, or 10 mm.
    [{ flame: 9.9, pool: 50 }, "cycle 1 at 120 min: low flame, 9.9 mm: is its unit right?"],
    [{ flame: 10, pool: 50 }, ""],
    [{ flame: 8, pool: 39 }, ""],
    [{ flame: 8, pool: 41 }, "cycle 1 at 120 min: low flame, 8 mm: is its unit right?"],
    [{ flame: 5, pool: 24 }, ""],
    [{ flame: 4.9, pool: 24 }, "cycle 1 at 120 min: low flame, 4.9 mm: is its unit right?"],
    [{ flame: 0 }, "cycle 1 at 120 min: no flame (0 mm): out or drowned?"],
  ])("takes %j for a flame or asks", (change, words) => {
    const lacks = said(withReading(1, change)).split("not finished: ")[1] ?? "";
    expect(lacks).toBe(words);
  });

  it("leaves a wick that was just lit its time", () => {
    const fresh = { cycle: 1, minutes: 29, flame: 3, pool: 10 };
    expect(said([fresh, ...DONE])).toBe("");
    expect(said([{ ...fresh, minutes: 30 }, ...DONE])).toContain("cycle 1 at 30 min: low flame, 3 mm");
  });

  it.each([
    // A room is 20 C; 5 C more in each of the first two hours.
    [30, 30, 19.9, "C", "below 20 C"],
    [30, 30, 20, "C", ""],
    [0, 60, 24.9, "C", "below 25 C"],
    [0, 60, 25, "C", ""],
    [1, 120, 29.9, "C", "below 30 C"],
    [3, 240, 30, "C", ""],
    // 72 F are 22 C, 86 F are 30 C: typed so, 72 and 85 C would be too hot to hold.
    [3, 240, 72, "F", "below 30 C"],
    [3, 240, 85.9, "F", "below 30 C"],
    [3, 240, 86, "F", ""],
  ])("asks of a vessel (row %d, at %d min) of %d %s", (at, minutes, glass, unit, words) => {
    const usual = unit === "F" ? 113 : 45;
    const rows = DONE.map((one) => ({ ...one, glass: usual }));
    const all = at === 30 ? [{ ...(rows[0] as BurnReading), minutes, pool: 13, glass }, ...rows] : rows;
    const changed = all.map((one, i) => (i === at ? { ...one, glass } : one));
    expect(said(changed, unit)).toBe(
      words === ""
        ? ""
        : `not finished: cycle 1 at ${minutes} min: cold glass, ${glass} ${unit}, ${words}: is its unit right?`,
    );
  });

  it("asks where flame and pool are in each other's columns, but not of a good reading", () => {
    const swapped = DONE.map((one) => ({ ...one, flame: 70, pool: 30 }));
    expect(said(swapped)).toContain(
      "not finished: cycle 1 at 120 min: narrow pool, 30 mm below a flame of 70 mm: are they in each other's columns? (and 5 more)",
    );
    const growing = DONE.map((one) => ({ ...one, flame: one.pool, pool: 22 }));
    expect(said(growing)).toContain("narrow pool, 22 mm below a flame of 50 mm");
    expect(said(withReading(1, { flame: 51, pool: 40 }))).toContain("narrow pool, 40 mm below a flame of 51 mm");
    expect(said(withReading(1, { flame: 50, pool: 40 }))).toBe("");
    // In the first hour a pool is still narrow, and in a narrow vessel a flame may stand higher than its wall is wide.
    expect(said(withReading(0, { flame: 70, pool: 38 }))).toBe("");
    const narrow = DONE.map((one) => ({ ...one, flame: 45, pool: 40 }));
    expect(burnCheck(narrow, 40, "mm", "C")).not.toContain("narrow pool");
  });

  it("asks whether minutes are hours", () => {
    const hours = DONE.map((one) => ({ ...one, minutes: one.minutes / 60 }));
    expect(said(hours)).toContain("not finished: cycle 1 ends at 4 min: are these hours? write minutes");
    // Looked at once in each, and burnt down: nothing burns down so soon.
    const once = hours.filter(({ minutes }) => minutes === 4);
    expect(said(once)).toContain("not finished: cycle 1 ends at 4 min: are these hours? write minutes");
    expect(said(once.map((one) => ({ ...one, depth: 40 })))).not.toContain("hours");
    // A cycle that ended early is one all the same.
    const early = [...DONE, { cycle: 3, minutes: 20, flame: 25, pool: 8, depth: 9, soot: "none", glass: 45 }];
    expect(said(early)).toBe("");
    const ends = (minutes: number) =>
      DONE.map((one) => (one.minutes > 60 ? { ...one, minutes } : { ...one, minutes: 10 }));
    expect(said(ends(30))).not.toContain("hours");
    expect(said(ends(29))).toContain("cycle 1 ends at 29 min: are these hours?");
  });

  describe("the wax left and the weights", () => {
    /** Ends of cycles: the wax left in mm, the weight in g. A vessel of 70 mm holds 3.46 g to the mm at 0.9 g/cm3. */
    const ends = (...given: (readonly [left: number | undefined, weight: number])[]): string =>
      burnCheck(
        [
          { cycle: 1, minutes: 0, weight: 400 },
          ...given.flatMap(([depth, weight], c) =>
            [60, 120, 180, 240].map((minutes, i) => ({
              ...{ cycle: c + 1, minutes, flame: 25, pool: [25, 50, 70, 70][i], soot: "none", glass: 45 },
              ...(minutes === 240 && { depth, weight }),
            })),
          ),
        ],
        WIDTH,
        ...(["mm", "C", "container", "g"] as const),
      );

    it("go together in a candle that is burnt down", () => {
      expect(ends([40, 380], [25, 330], [10, 280])).toBe("");
      // As well as a ruler reads them.
      expect(ends([12, 380], [10, 366])).toBe("");
    });

    it("do not where 45 and 35 mm were typed in centimetres", () => {
      // 80 g are 80 / (0.9 x pi / 4 x 7 x 7) = 2.31 cm.
      expect(ends([4.5, 380], [3.5, 300])).toBe(
        "not finished: cycle 2 at 240 min: wax left fell by 1 mm, by the weights about 23 mm burnt: check both, and their units",
      );
      // From one cycle to the next, where the first one was read right.
      expect(ends([80, 380], [3.5, 330], [2.5, 250])).toContain("cycle 3 at 240 min: wax left fell by 1 mm");
      // Between the first and the last, where each cycle burns little.
      const slow = [10, 9.6, 9.2, 8.8, 8.4].map((left, i) => [left, 380 - 12 * i] as const);
      expect(ends(...slow)).toContain("cycle 5 at 240 min: wax left fell by 1.6 mm, by the weights about 14 mm burnt");
    });

    it("do not where a candle that was burnt down burns on", () => {
      expect(ends([9, 380], [undefined, 300])).toBe(
        "not finished: cycle 2 at 240 min: wax left was 9 mm before, and by the weights about 23 mm burnt: check both, and their units",
      );
      expect(ends([9, 380], [undefined, 340])).toBe("");
    });

    it("are to be looked at where more wax is gone than burnt", () => {
      expect(ends([45, 380], [10, 360])).toBe(
        "cycle 2 at 240 min: wax left fell by 35 mm, by the weights about 6 mm burnt: check both, and their units",
      );
    });

    it("say the same in any unit, and nothing where no width is known", () => {
      const looks = [400, 320].map((weight, c) => ({
        ...{ cycle: c + 1, minutes: 60, flame: 1, pool: 1, soot: "none", glass: 113 },
        ...{ depth: (4.5 - c) / 25.4, weight: weight / 28.349523125 },
      }));
      const given = ["in", "F", "container", "oz"] as const;
      expect(burnCheck(looks, WIDTH / 25.4, ...given)).toContain("fell by 1 mm, by the weights about 23 mm burnt");
      expect(burnCheck(looks, undefined, ...given)).not.toContain("wax left fell");
      expect(() => burnCheck(looks, WIDTH / 25.4, "in", "F")).toThrow("weightUnit");
    });
  });

  it("does not pass a burn that was only weighed", () => {
    const weighed = [...DONE, { cycle: 2, minutes: 720 }];
    expect(said(weighed)).toBe("not finished: cycle 2 not looked at between 240 and 720 min");
    expect(said([...DONE, { cycle: 3, minutes: 60 }])).toBe("not finished: cycle 3 never looked at");
    // Weighed before it is lit, while it burns, or an hour after the last look: looked at all the same.
    for (const bare of [
      { cycle: 3, minutes: 0 },
      { cycle: 1, minutes: 90 },
      { cycle: 2, minutes: 330 },
    ]) {
      expect(said([...DONE, bare]), JSON.stringify(bare)).toBe("");
    }
    expect(said([...DONE, { cycle: 2, minutes: 331 }])).toContain("between 240 and 331 min");
    expect(() => said([{ cycle: 1, minutes: 240 }])).toThrow("nothing is read yet");
  });
});
