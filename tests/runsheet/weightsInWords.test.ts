import { describe, expect, it } from "vitest";
import { amountWords } from "../../src/runsheet/amountWords";
import { dayText } from "../../src/runsheet/dayText";
import { formatWeight, isNearFill, isNoWax, isWaxFactor, runsOver } from "../../src/runsheet/likelyWeight";
import { asWarning, isError } from "../../src/runsheet/problem";

describe("a weight beside the water that its vessel holds", () => {
  // Wax floats on water; how light it may be is common practice, no source.
  it("runs over above a tenth more, and is near what was expected within 15 % of it", () => {
    expect([220, 220.1].map((weight) => runsOver(weight, 200))).toEqual([false, true]);
    expect([115, 85, 115.1, 84.9].map((fill) => isNearFill(fill, 100))).toEqual([true, true, false, false]);
  });

  it("shows a wax factor from 0.7 to 1, once it was poured and weighed", () => {
    expect([0.7, 0.86, 1].every(isWaxFactor)).toBe(true);
    expect([0.69, 1.01].some(isWaxFactor)).toBe(false);
    expect([0.86, 0.1, 3].map(isNoWax)).toEqual([false, true, true]);
  });

  it("stands in words without the noise of the arithmetic", () => {
    expect(formatWeight(0.1 + 0.2, "kg")).toBe("0.3 kg");
    expect(formatWeight(1234567.8, "g")).toBe("1234570 g");
  });
});

describe("an amount", () => {
  it("is by number or by weight, and both are said where nobody knows which", () => {
    expect(amountWords(12, "count", "g")).toBe("12");
    expect(amountWords(12.5, "weight", "oz")).toBe("12.5 oz");
    expect(amountWords(12.5, undefined, "g")).toBe("12.5 (g or pieces)");
  });
});

describe("a day", () => {
  it("is written with its year first, whatever time of it is kept", () => {
    // 46352 is 26 November 2026, as spreadsheets count days; 60 would be a day that never was.
    expect([46352, 46352.99, 36526, 61].map(dayText)).toEqual(["2026-11-26", "2026-11-26", "2000-01-01", "1900-03-01"]);
  });
});

describe("a problem", () => {
  it("stops the run as an error, and not once it is only to be looked at", () => {
    const problem = { severity: "error", text: "Fix it", row: 2, field: "load" } as const;
    expect([isError(problem), isError(asWarning(problem))]).toEqual([true, false]);
    expect(asWarning(problem)).toEqual({ ...problem, severity: "warning" });
  });
});
