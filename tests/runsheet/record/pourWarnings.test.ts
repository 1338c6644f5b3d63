import { describe, expect, it } from "vitest";
import { massReport, pourWarnings } from "../../../src/runsheet/record/pourWarnings";
import { logOf, pouredRun, vesselsOf } from "./poured";

const NONE = vesselsOf();
/** Room below the water for wax: the tin holds 120 g of water, and 0.7 to 1 of it are 84 to 120 g. */
const TIN = vesselsOf(["Tin", 120, 0.85]);
/** One tin of ten that was weighed, in a pot that holds enough for any of them. */
const tin = (weighed: number, fill = 100) =>
  pouredRun([{ parts: [{ planned: 5000, actual: 5000 }], lines: [{ weighed, fill }] }]);

describe("what is asked about before a pour is logged", () => {
  it("is nothing of an honest pour", () => {
    expect(
      pourWarnings(pouredRun([{ lines: [{ weighed: 101 }] }]), TIN, logOf(["2026-329-01", "Tin", 99, 120])),
    ).toEqual([]);
  });

  it("is a candle over its water: it was weighed with its vessel", () => {
    expect(pourWarnings(tin(122), TIN)).toEqual([
      "Row 20: one Tin is written to weigh 122 g; its vessel holds 120 g of water, so 84 g to 120 g was expected. Was it weighed with its vessel? Take the vessel's weight off, or fix the water weight",
    ]);
    expect(pourWarnings(tin(206), TIN)[0]).toContain("no wax weighs 1.72 for one of water. Was it weighed with its");
    expect(pourWarnings(tin(3.6), TIN)[0]).toContain("no wax weighs 0.03 for one of water. Was it filled");
  });

  // 0.7 and 1 of 120 g of water; 0.6 and 1.1 where no wax is: common practice, no source.
  it.each([
    [84, 84, false, false],
    [83.9, 84, true, false],
    [120, 120, false, false],
    [120.1, 120, true, false],
    [132, 120, true, false],
    [132.1, 120, true, true],
    [72, 80, true, false],
    [71.9, 80, true, true],
  ])("a tin of %d g, planned with %d: asked %s, with stronger words %s", (weighed, fill, isAsked, isStrong) => {
    const [text = ""] = pourWarnings(tin(weighed, fill), TIN);
    expect(text.includes("was expected")).toBe(isAsked);
    expect(text.includes("no wax weighs")).toBe(isStrong);
  });

  // A tenth of 100 g either way: common practice, no source.
  it.each([
    [110, false],
    [110.1, true],
    [90, false],
    [89.9, true],
  ])("a tin of %d g where 100 were planned and no water is known: asked %s", (weighed, isAsked) => {
    const warnings = pourWarnings(tin(weighed), NONE);
    expect(warnings).toHaveLength(isAsked ? 1 : 0);
    if (isAsked) expect(warnings[0]).toContain("the planned fill is 100 g");
  });

  // A tenth and one step of the scale (1 g): 1101 of 1000 and 899, 34 of 30 and 26 are within.
  it.each([
    [1101, 30, 0],
    [1101.1, 30, 1],
    [899, 30, 0],
    [898.9, 30, 1],
    [1000, 34, 0],
    [1000, 34.1, 1],
    [1000, 26, 0],
    [1000, 25.9, 1],
  ])("%d g of wax for 1000 and %d of scent for 30: %i asked", (wax, scent, asked) => {
    const parts = [
      { planned: 1000, actual: wax },
      { sort: "scent" as const, label: "Scent: Cedar", planned: 30, actual: scent },
    ];
    const warnings = pourWarnings(pouredRun([{ parts }]), NONE);
    expect(warnings).toHaveLength(asked);
    for (const text of warnings)
      expect(text).toMatch(/^Row 1[01]: .* was planned as .*; check the digits and the unit$/);
  });

  it("is a vessel far from its sisters, in other pots and in the log, one sentence for each", () => {
    const two = (a: number, b: number, fills = [100, 100]) =>
      pouredRun(
        [a, b].map((weighed, i) => ({
          parts: [{ planned: 5000, actual: 5000 }],
          lines: [{ weighed, fill: fills[i] as number, vessel: i === 0 ? "Tin" : " tin" }],
        })),
      );
    expect(pourWarnings(two(104.5, 95), NONE)).toEqual([]);
    expect(pourWarnings(two(104.6, 95), NONE)).toEqual([
      "One Tin weighs 104.6 g in row 20 and 95 g in row 40: more than 10 % apart. Weigh them again without their vessels",
    ]);
    // Half full as planned is no slip.
    expect(pourWarnings(two(100, 50, [100, 50]), NONE)).toEqual([]);

    const log = logOf(
      ["2026-328-01", "TIN", 90, 120],
      ["2026-329-01", "Tin", 91, 120],
      ["2026-329-02", "Tin", 130, 120],
    );
    expect(pourWarnings(tin(99), NONE, log)).toEqual([]);
    expect(pourWarnings(tin(99.1), NONE, log)).toEqual([
      "One Tin weighs 99.1 g in row 20 and 90 g in the middle of 2 logged before: more than 10 % apart. Weigh them again without their vessels",
    ]);
    // What was planned with other fills then is set beside what is planned now.
    expect(pourWarnings(tin(100), NONE, logOf(["2026-329-01", "Tin", 60, 120, 62]))).toEqual([]);
    // Its own lot, should its rows be there still, is none of its sisters.
    expect(pourWarnings(tin(100), NONE, logOf(["2026-330-01", "Tin", 85, 120]))).toEqual([]);
  });

  it("compares the log in its own unit", () => {
    // 3.5274 oz x 28.349523125 g = 100 g.
    const [row] = logOf(["2026-329-01", "Tin", 3.5274, null]).rows;
    const log = { rows: [{ ...(row as NonNullable<typeof row>), unit: "oz" as const }], lots: [] };
    expect(pourWarnings(tin(100), NONE, log)).toEqual([]);
    expect(pourWarnings(tin(89.9, 90), NONE, log)).toHaveLength(1);
  });

  it("is more poured than was melted, as far as the scale can tell", () => {
    // Melted 1030, of which the scale knows each part to half a gram, and each candle too: 10 x 0.5 + 2 x 0.5 = 6.
    const pot = (weighed: number) => pouredRun([{ lines: [{ weighed }] }]);
    expect(pourWarnings(pot(103.6), NONE)).toEqual([]);
    expect(pourWarnings(pot(103.7), NONE)).toEqual([
      "Cedar: pot 1 of 1: more was poured than was melted: melted 1030 g, poured 1037 g: no loss but 0.7 % more, planned a loss of 3 % (taken: 10 x Tin by the one weighed, 103.7 g each). Check the weights of one, the counts and the actual weights",
    ]);
    // Where no candle was weighed nothing is known of it.
    expect(pourWarnings(pouredRun([{ parts: [{ planned: 1030, actual: 950 }] }]), NONE)).toEqual([]);
  });

  it("is what is missing of a pot, and a load over its limit", () => {
    const run = pouredRun([
      { remark: "Over wax maximum 7 % of wax." },
      {
        parts: [{ planned: 1000 }, { planned: 0, label: "Dye" }],
        lines: [{ good: undefined }, { good: 3, vessel: "Bowl" }],
      },
      { parts: [{ planned: 1000 }, { planned: 30, actual: 30 }] },
    ]);
    expect(pourWarnings(run, NONE)).toEqual([
      "Cedar: pot 2 of 3: no actual weight, 1 of 2 without count of good candles; write what is known",
      "Cedar: pot 3 of 3: 1 of 2 without actual weight; write what is known",
      "Cedar: pot 1 of 3, as weighed: Over wax maximum 7 % of wax.",
    ]);
  });
});

describe("what became of the wax", () => {
  it("is said pot by pot, with what was taken for granted", () => {
    // 1030 melted; 6 x 98 + 4 x 104 = 1004 poured; 1030 / 1004 - 1 = 2.6 %. Planned 1030 / 1000 - 1 = 3 %.
    const lines = [
      { vessel: "Tin", count: 6, fill: 98, weighed: 98 },
      { vessel: "Bowl", count: 4, fill: 103, weighed: 104 },
    ];
    const [told] = massReport(pouredRun([{ lines }]));
    expect(told).toBe(
      "Cedar: pot 1 of 1: melted 1030 g, poured 1004 g: loss 2.6 %, planned 3 % (taken: 6 x Tin by the one weighed, 98 g each; 4 x Bowl by the one weighed, 104 g each)",
    );
    const guessed = massReport(
      pouredRun([
        {
          parts: [{ planned: 1030 }],
          lines: [
            { count: 1, weighed: 98 },
            { vessel: "Bowl", count: 4 },
          ],
        },
      ]),
    );
    expect(guessed[0]).toContain("(taken: 4 x Bowl as planned, 100 g each; Wax as planned)");
    expect(massReport(pouredRun())).toEqual([]);
  });
});
