import { describe, expect, it } from "vitest";
import { confidence } from "../../../src/core/check/confidence";
import { factor } from "../../../src/core/check/factor";
import { isKept, keptNumber } from "../../../src/core/check/keptNumber";
import { limit } from "../../../src/core/check/limit";
import { oneOf } from "../../../src/core/check/oneOf";
import { rate } from "../../../src/core/check/rate";
import { Fault } from "../../../src/core/fault";

/** What a maker reads where a percentage has lost its sign: the sentence must name the number that was meant. */
describe("a number that is refused", () => {
  it.each<[(name: string, value: number) => number, number, string]>([
    [rate, -0.01, "-0.01 is below 0; write 0 or more"],
    [rate, 1, "1 means 100 %; write 1% or 0.01 if 1 % was meant, else a share below 100 %"],
    [rate, 6, "6 means 600 %; write 6% or 0.06"],
    [rate, 99, "99 means 9900 %; write 99% or 0.99"],
    // 100 % is no load: nothing is left to suggest.
    [rate, 100, "100 means 10000 %; write a share below 100 %"],
    [limit, 1.5, "1.5 means 150 %; write 1.5% or 0.015 if 1.5 % was meant, else a share up to 100 %"],
    [limit, 2, "2 means 200 %; write 2% or 0.02"],
    [limit, 100, "100 means 10000 %; write 100% or 1"],
    [factor, 0, "0 is not above 0 and at most 2; wax is near 0.86"],
    [factor, -1, "-1 is not above 0 and at most 2; wax is near 0.86"],
    [factor, 86, "86 is not above 0 and at most 2; write 0.86 if 86 % was meant"],
    [factor, 200, "200 is not above 0 and at most 2; write 2 if 200 % was meant"],
    // 201 % would be refused again.
    [factor, 201, "201 is not above 0 and at most 2; wax is near 0.86"],
    [confidence, 0.05, "5 % is below 50 %; write 95% if you may be wrong that often"],
    [confidence, 0.499, "49.9 % is below 50 %; write 50.1% if you may be wrong that often"],
    [keptNumber, 1e16, "10000000000000000 is too large; check its digits"],
  ])("%o of %d says what to write", (check, value, sentence) => {
    expect(() => check("share", value)).toThrow(new Fault("value", "share", sentence));
  });

  it("is none at the edge of what is allowed", () => {
    expect([rate("load", 0), limit("limit", 1), factor("factor", 2), confidence("sure", 0.5)]).toEqual([0, 1, 2, 0.5]);
    // A spreadsheet keeps 15 digits.
    expect([1e15, -1e15, 1e15 + 1].map(isKept)).toEqual([true, true, false]);
  });
});

describe("oneOf", () => {
  it("takes a word whatever its case and the spaces around it, and shows no more of another than a cell would", () => {
    expect(oneOf("basis", " Of WAX ", ["of wax", "of total"])).toBe("of wax");
    expect(() => oneOf("basis", "x".repeat(50), ["of wax", "of total"])).toThrow(
      new Fault("value", "basis", `"${"x".repeat(40)}" is not known here; write of wax or of total`),
    );
  });
});
