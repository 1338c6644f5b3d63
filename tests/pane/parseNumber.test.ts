import { describe, expect, it } from "vitest";
import { parseNumber } from "../../src/pane/parseNumber";

describe("numbers typed into the pane", () => {
  it.each([
    ["rate", "6%", 0.06],
    ["rate", " 0.06 ", 0.06],
    ["rate", "0,06", 0.06],
    ["rate", "7,5 %", 0.075],
    ["rate", "0", 0],
    ["weight", "3000", 3000],
    ["weight", ".5", 0.5],
    ["factor", "0.86", 0.86],
  ] as const)("%s %s is %d", (kind, typed, value) => {
    expect(parseNumber(kind, typed)).toEqual({ value });
  });
  it.each([
    ["rate", "6", "6 means 600 %; write 6% or 0.06"],
    ["weight", "", "write a number"],
    ["weight", "1 kg", '"1 kg" is not a number'],
    ["weight", "1,500", "write 1500 or 1.500"],
    ["weight", "0", "0 is not above 0; write a number above 0"],
    ["weight", "1e3", '"1e3" is not a number'],
    ["factor", "86", "86 is not above 0 and at most 2; write 0.86 if 86 % was meant"],
  ] as const)("%s %s is refused: %s", (kind, typed, wrong) => {
    expect(parseNumber(kind, typed)).toEqual({ wrong });
  });
});
