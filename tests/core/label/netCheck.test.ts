import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { netCheck } from "../../../src/core/label/netCheck";
import { deviation } from "../../../src/core/statistics/deviation";

/** So many candles, all at the label but for those given. */
const lot = (label: number, count: number, ...others: number[]): number[] => [
  ...others,
  ...Array<number>(count - others.length).fill(label),
];
/** Two values either side of the label, so that the mean is the label and the deviation is known. */
const spread = (label: number, count: number): { weights: number[]; s: number } => {
  const weights = Array.from({ length: count }, (_, i) => label + (i % 2 ? 1 : -1));
  if (count % 2) weights[0] = label;
  return { weights, s: Math.sqrt((count - (count % 2)) / (count - 1)) };
};

describe("deviation", () => {
  it("gives NIST StRD NumAcc1: mean 10000002, deviation 1", () => {
    expect(deviation([10_000_001, 10_000_003, 10_000_002])).toEqual({ mean: 10_000_002, deviation: 1 });
  });
  it("has none in one value", () => {
    expect(deviation([7])).toEqual({ mean: 7, deviation: 0 });
  });
});

describe("netCheck by Handbook 133", () => {
  // Sample correction factors, t(0.975, n - 1) / sqrt(n), as published to three decimals (12, 24 and 48: from memory).
  it.each([
    [2, 8.985],
    [3, 2.484],
    [4, 1.591],
    [5, 1.242],
    [6, 1.049],
    [7, 0.925],
    [8, 0.836],
    [9, 0.769],
    [10, 0.715],
    [11, 0.672],
    [12, 0.635],
    [24, 0.422],
    [48, 0.291],
  ])("lets the mean of %d be short by %d deviations", (count, factor) => {
    const { weights, s } = spread(500, count);
    expect(Math.abs(-netCheck(500, weights, "g").meanLimit / s - factor)).toBeLessThan(0.0011);
  });

  // Maximum allowable variation, Table 2-5: up to a label in grams, so many grams. From memory, but for the two
  // values that Chapter 2 gives: 113 g has 7.2 g and 907 g has 31.7 g.
  const TABLE = `36 3.6; 54 3.6; 81 5.4; 117 7.2; 154 9.0; 208 10.8; 263 12.7; 317 14.5; 381 16.3; 426 18.1; 489 19.9;
    571 21.7; 635 23.5; 698 25.4; 771 27.2; 852 29.0; 970 31.7; 1120 35.3; 1250 39.0; 1450 42.6; 1760 49.8; 2130 54.4;
    2630 63.5; 3080 68.0; 3580 77.1; 4260 86.1; 5300 99.7; 6480 113; 8020 127; 10520 140; 14330 167; 19230 199;
    24670 226`;
  const rows = TABLE.split(";").map((row) => row.trim().split(" ").map(Number) as [number, number]);
  const above = 0.001; // g
  it.each([
    [36 - above, (36 - above) / 10], // 10 % below 36 g
    ...rows,
    ...rows.slice(0, -1).map(([label], i): [number, number] => [label + above, rows[i + 1]?.[1] as number]),
    [24_670 + above, (24_670 + above) / 50], // 2 % above the table
  ])("allows at the edges of the table a candle labelled %d g to be short by %d g", (label, allowed) => {
    expect(netCheck(label, lot(label, 12), "g").allowedShortfall).toBeCloseTo(allowed, 10);
  });

  // The same table (from memory; 113 g and 907 g are read in Chapter 2).
  it.each([
    [20, 2],
    [36, 3.6],
    [113, 7.2],
    [117, 7.2],
    [118, 9],
    [227, 12.7],
    [454, 19.9],
    [907, 31.7],
    [5000, 99.7],
    [24_670, 226],
    [30_000, 600],
  ])("allows a candle labelled %d g to be short by %d g", (label, allowed) => {
    const { allowedShortfall } = netCheck(label, lot(label, 12), "g");
    expect(allowedShortfall).toBeCloseTo(allowed, 10);
    const lighter = (by: number) => netCheck(label, lot(label + allowed, 12, label - by), "g").numberShort;
    expect([lighter(allowed), lighter(allowed + 0.001)]).toEqual([0, 1]);
  });

  // The pound column of the same table, from memory; a pound is 16 oz.
  it.each([
    [0.079, 0.0079], // 10 % below 0.08 lb
    [0.08, 0.008],
    [0.12, 0.008],
    [0.121, 0.012],
    [0.7, 0.032], // 11.2 oz: 317.51 g would be a step further by the gram column
    [0.701, 0.036],
    [1.4, 0.052], // 22.4 oz: 635.03 g too
    [1.401, 0.056],
    [2.48, 0.078],
    [2.481, 0.086],
    [9.4, 0.19],
    [54.4, 0.5],
    [54.5, 1.09], // 2 % above the table
  ])("allows a candle labelled %d lb to be short by %d lb, in ounces too", (label, allowed) => {
    expect(netCheck(label, lot(label, 12), "lb").allowedShortfall).toBeCloseTo(allowed, 10);
    const ounces = netCheck(label * 16, lot(label * 16, 12, label * 16 - allowed * 16), "oz");
    expect(ounces.allowedShortfall).toBeCloseTo(allowed * 16, 10);
    expect(ounces.numberShort).toBe(0);
    expect(netCheck(label * 16, lot(label * 16, 12, (label - allowed) * 16 - 0.001), "oz").numberShort).toBe(1);
  });

  it("judges the mean alike in grams and in ounces", () => {
    const ounces = netCheck(8, lot(8, 12, 7.4), "oz");
    const grams = netCheck(8 * 28.349523125, lot(8 * 28.349523125, 12, 7.4 * 28.349523125), "g");
    expect(ounces.meanLimit * 28.349523125).toBeCloseTo(grams.meanLimit, 9);
  });

  // Category A: a lot of 2 to 11 whole, 12 to 250 by 12, 251 to 3200 by 24, more by 48 (from memory).
  it.each([
    [11, 10, 11],
    [12, 11, 12],
    [250, 11, 12],
    [251, 23, 24],
    [3200, 23, 24],
    [3201, 47, 48],
  ])("a lot of %d is not judged by %d but by %d", (size, few, enough) => {
    expect(netCheck(200, lot(200, few), "g", "us", size).verdict).toBe(
      `not enough weighed: ${few}, the plan asks for ${enough}`,
    );
    expect(netCheck(200, lot(200, enough), "g", "us", size).verdict).toBe("passes");
  });

  it("allows none short by more than the variation, but one in a lot over 3200", () => {
    expect(netCheck(200, lot(202, 12, 189), "g", "us", 12).verdict).toBe(
      "fails: 1 short by more than 10.8 g, at most 0",
    );
    expect(netCheck(200, lot(202, 48, 189), "g", "us", 4000).verdict).toBe("passes");
    expect(netCheck(200, lot(202, 48, 189, 189), "g", "us", 4000).verdict).toContain("fails: 2 short");
  });

  it("fails as soon as it is certain, and leaves the mean open until enough are weighed", () => {
    // 200 g may be short by 10.8 g: one in a lot over 3200, none in a smaller one (from memory).
    expect(netCheck(200, [189], "g", "us", 500).verdict).toBe("fails: 1 short by more than 10.8 g, at most 0");
    expect(netCheck(200, [201, 189], "g", "us", 4000).verdict).toBe("not enough weighed: 2, the plan asks for 48");
    expect(netCheck(200, [189, 189], "g", "us", 4000).verdict).toBe("fails: 2 short by more than 10.8 g, at most 1");
    expect(netCheck(200, [195, 195], "g", "us", 500).verdict).toBe("not enough weighed: 2, the plan asks for 24");
  });

  it("fails a mean that is short by more than chance", () => {
    const { verdict, meanError, meanLimit } = netCheck(200, lot(198, 12, 199, 197), "g");
    // s = sqrt(2 / 11) and 0.635 of it (the published factor) is 0.271.
    expect(meanError).toBe(-2);
    expect(meanLimit).toBeCloseTo(-0.635 * Math.sqrt(2 / 11), 3);
    expect(verdict).toBe("fails, of a whole lot of 12: mean 2 g short, at most 0.2709 g");
    expect(netCheck(200, lot(199.9, 12, 199, 200.8), "g").verdict).toBe("passes, of a whole lot of 12");
  });

  // Handbook 133, Category A, a lot of one: the variation is applied to the candle itself (from memory); 200 g: 10.8 g.
  it("says all weights in the unit of the label", () => {
    // 8 oz may be short by 0.028 lb, which is 0.448 oz (Table 2-5, from memory).
    const ounces = netCheck(8, lot(8, 12, 7.4), "oz");
    expect(ounces.verdict).toBe("fails, of a whole lot of 12: 1 short by more than 0.448 oz, at most 0");
    expect(netCheck(8, [8], "oz").meanLimit).toBeCloseTo(-0.448, 12);
    // 200 g may be short by 9 g, none by more than 18 g (76/211/EEC).
    const kilograms = netCheck(0.2, lot(0.2, 99, 0.181), "kg", "eu");
    expect(kilograms.verdict).toContain("1 short by more than 0.018 kg, none may be");
  });

  it("judges a lot of one by the candle itself", () => {
    expect(netCheck(200, [200], "g", "us", 1).verdict).toBe("passes");
    expect(netCheck(200, [189.2], "g", "us", 1)).toMatchObject({ verdict: "passes", meanLimit: -10.8 });
    expect(netCheck(200, [189.1], "g").verdict).toBe(
      "fails, of a whole lot of 1: 1 short by more than 10.8 g, at most 0",
    );
    expect(netCheck(200, [199], "g", "us", 2).verdict).toBe("not enough weighed: 1, the plan asks for 2");
  });

  it("says of how many the whole lot was taken to be", () => {
    expect(netCheck(200, lot(200, 12), "g").verdict).toBe("passes, of a whole lot of 12");
    expect(netCheck(200, lot(200, 12), "g", "us", 12).verdict).toBe("passes");
  });
});

describe("netCheck by 76/211/EEC", () => {
  // The directive's table, worked out with the percentages rounded up to a tenth of a gram.
  it.each([
    [5, 0.5],
    [50, 4.5],
    [60, 4.5],
    [100, 4.5],
    [165, 7.5],
    [200, 9],
    [250, 9],
    [400, 12],
    [500, 15],
    [750, 15],
    [1000, 15],
    [2000, 30],
    [10_000, 150],
    // Just above each edge; that percentages round up is from memory.
    [50.001, 4.5],
    [100.001, 4.6],
    [200.001, 9],
    [300, 9],
    [300.001, 9.1],
    [500.001, 15],
    [1000.001, 15.1],
  ])("allows a candle labelled %d g to be short by %d g", (label, allowed) => {
    expect(netCheck(label, lot(label, 3), "g", "eu").allowedShortfall).toBeCloseTo(allowed, 10);
  });

  it("lets the mean of 30 be short by 0.503 deviations and of 50 by 0.379, and a whole batch by nothing", () => {
    const factor = (count: number, size: number) => {
      const { weights, s } = spread(500, count);
      return -netCheck(500, weights, "g", "eu", size).meanLimit / s;
    };
    expect(factor(30, 300)).toBeCloseTo(0.503, 3); // 76/211/EEC, annex II
    expect(factor(50, 1000)).toBeCloseTo(0.379, 3); // 76/211/EEC, annex II
    expect(factor(40, 40)).toBeCloseTo(0, 15);
  });

  // Reference test: batch, number weighed, number short by more than the tolerable error, verdict.
  it.each([
    [300, 29, 0, "not enough weighed: 29, the plan asks for 30"],
    [300, 30, 1, "passes"],
    [300, 30, 2, "not enough weighed: 30, the plan asks for 60"],
    [300, 30, 3, "fails: 3 short"],
    [300, 60, 4, "passes"],
    [300, 60, 5, "fails: 5 short"],
    [501, 49, 0, "not enough weighed: 49, the plan asks for 50"],
    [3200, 50, 2, "passes"],
    [3200, 50, 4, "not enough weighed: 50, the plan asks for 100"],
    [3200, 50, 5, "fails: 5 short"],
    [3200, 100, 6, "passes"],
    [3200, 100, 7, "fails: 7 short"],
    [3201, 79, 0, "not enough weighed: 79, the plan asks for 80"],
    [3201, 80, 3, "passes"],
    [3201, 80, 6, "not enough weighed: 80, the plan asks for 160"],
    [3201, 80, 7, "fails: 7 short"],
    [3201, 160, 8, "passes"],
    [3201, 160, 9, "fails: 9 short"],
    [99, 98, 0, "not enough weighed: 98, the plan asks for 99"],
    [99, 99, 0, "passes"],
    // UK SI 2006/659, Schedule 2: up to 5 % of a batch under 100.
    [99, 99, 4, "passes"],
    [99, 99, 5, "fails: 5 short"],
    [40, 40, 2, "passes"],
    [40, 40, 3, "fails: 3 short"],
    [20, 20, 1, "passes"],
    [19, 19, 1, "fails: 1 short"],
    [1, 1, 1, "fails: "],
  ])("a batch of %d, %d weighed, %d short: %s", (size, count, short, verdict) => {
    // Tolerable error of 200 g: 9 g. The others are heavy enough for the mean.
    const found = netCheck(200, lot(204, count, ...Array<number>(short).fill(190)), "g", "eu", size);
    expect(found.numberShort).toBe(short);
    expect(found.verdict.startsWith(verdict), found.verdict).toBe(true);
  });

  it("lets none be short by more than twice the tolerable error", () => {
    expect(netCheck(200, lot(204, 30, 182), "g", "eu", 300).verdict).toBe("passes");
    expect(netCheck(200, lot(204, 30, 181.9), "g", "eu", 300).verdict).toBe(
      "fails: 1 short by more than 18 g, none may be",
    );
  });

  // A lot of 300 has stages of 30 and 60, the last of which rejects at 5 short by more than 9 g.
  it.each([
    [[181.9], "fails: 1 short by more than 18 g, none may be"],
    [[190, 190, 190, 190, 190], "fails: 5 short by more than 9 g, at most 4"],
    [[190, 190, 190, 190], "not enough weighed: 4, the plan asks for 30"],
    [[182], "not enough weighed: 1, the plan asks for 30"],
    [[199, 199], "not enough weighed: 2, the plan asks for 30"], // the mean is open
  ])("fails %j of a lot of 300 as soon as it is certain", (weights, verdict) => {
    expect(netCheck(200, weights, "g", "eu", 300).verdict).toBe(verdict);
  });

  it("fails a batch under 100 as soon as more than 5 % of it are short", () => {
    const short = (count: number) =>
      netCheck(200, lot(204, 6, ...Array<number>(count).fill(190)), "g", "eu", 99).verdict;
    expect(short(4)).toBe("not enough weighed: 6, the plan asks for 99");
    expect(short(5)).toBe("fails: 5 short by more than 9 g, at most 4");
  });

  it("is the check of the UK's SI 2006/659 too, in whatever case a rule is written (that the two agree: from memory)", () => {
    const weights = lot(200, 120, 189, 195);
    const eu = netCheck(200, weights, "g", "eu", 400);
    for (const rule of ["uk", " UK ", "Eu", " EU"]) expect(netCheck(200, weights, "g", rule, 400)).toEqual(eu);
    expect(netCheck(200, weights, "g", " US ", 400)).toEqual(netCheck(200, weights, "g", "us", 400));
    expect(netCheck(200, weights, "g", "us", 400)).not.toEqual(eu);
  });

  it("covers 5 g to 10 kg", () => {
    expect(() => netCheck(4.9, [5], "g", "eu")).toThrow("label: 4.9 g is outside 5 g to 10 kg");
    expect(() => netCheck(10.1, [10.1], "kg", "eu")).toThrow("label: 10100 g is outside");
    expect(() => netCheck(4.999, [5], "g", "eu")).toThrow("outside");
    expect(() => netCheck(10_000.001, [10_001], "g", "eu")).toThrow("outside");
  });
});

describe("netCheck", () => {
  it("never passes a lot whose mean is short of the limit or that holds too many short ones", () => {
    const weight = fc.integer({ min: 1700, max: 2100 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(
        fc.array(weight, { minLength: 1, maxLength: 70 }),
        fc.constantFrom("us", "eu"),
        fc.integer({ min: 0, max: 5000 }),
        (weights, rule, more) => {
          const found = netCheck(200, weights, "g", rule, weights.length + more);
          const allowed = rule === "us" ? 10.8 : 9; // Handbook 133, Table 2-5; 76/211/EEC
          expect(found.allowedShortfall).toBe(allowed);
          expect(found.numberShort).toBe(weights.filter((one) => Math.round((200 - one) * 10) > allowed * 10).length);
          expect(found.meanLimit).toBeLessThanOrEqual(0);
          expect(found.verdict).toMatch(/^(passes$|fails: |not enough weighed: )/);
          if (found.meanError < found.meanLimit - 1e-9) expect(found.verdict).not.toBe("passes");
          if (found.meanError > found.meanLimit && found.numberShort === 0)
            expect(found.verdict).not.toContain("fails");
        },
      ),
      { numRuns: 500 },
    );
  });

  it("refuses weights that are in another unit, or hold the vessel", () => {
    // 8 oz is 226.8 g: the label in ounces, the weights in grams.
    expect(() => netCheck(8, [227, 226], "oz")).toThrow(
      "weights: 227 is over twice the label of 8 oz; check the unit: write all in oz, without the vessel",
    );
    expect(() => netCheck(227, [226, 8.01], "g")).toThrow(
      "weights: 8.01 is under half the label of 227 g; check the unit",
    );
    expect(() => netCheck(200, [100, 400], "g")).not.toThrow();
    expect(() => netCheck(200, [99.9], "g")).toThrow("under half");
    expect(() => netCheck(200, [400.1], "g")).toThrow("over twice");
    expect(netCheck(8, lot(8, 12), "Ounces").verdict).toContain("passes");
  });

  it("refuses what is no check", () => {
    expect(() => netCheck(200, [], "g")).toThrow("weights: nothing weighed");
    expect(() => netCheck(200, [200, 201], "g", "us", 1)).toThrow("lotSize: 1 for 2 weighed");
    expect(() => netCheck(200, [200], "g", "us", 20.5)).toThrow("lotSize: 20.5");
    expect(netCheck(200, lot(200, 12), "g", "us", 100 * 1.1).verdict).toBe("passes"); // 110.00000000000001 in binary
    expect(() => netCheck(0, [200], "g")).toThrow("label: 0 is not above 0");
    expect(() => netCheck(200, [-1], "g")).toThrow("weights: -1 is below 0");
    expect(() => netCheck(200, [200], "ml")).toThrow('unit: "ml" is a volume; write g, kg, oz or lb');
    expect(() => netCheck(200, [200], "g", "gb")).toThrow('rule: "gb" is not known here; write us, eu or uk');
  });
});
