import { describe, expect, it } from "vitest";
import { percentOf } from "../../../src/host/univer/editing/percent";

describe("a number typed into a cell of percentages", () => {
  it.each([
    ["6", "6%"],
    ["6.5", "6.5%"],
    ["6,5", "6.5%"],
    [" 12 ", "12%"],
    ["-3", "-3%"],
    ["\u22123", "-3%"],
    ["\u22126,5", "-6.5%"],
    ["1", "1%"],
    ["1,000.5", "1000.5%"],
    ["1,234,567", "1234567%"],
    ["1234,567", "1234.567%"],
    ["0", "0"],
  ])("%s is entered as %s, without a doubt", (typed, entry) => {
    expect(percentOf(typed)).toEqual({ entry, doubt: "" });
  });

  it.each([
    ["1,000", "1000%", "1,000 was taken as 1000 %. If you mean 1 %, type 1%."],
    ["6,500", "6500%", "6,500 was taken as 6500 %. If you mean 6.5 %, type 6.5%."],
    ["-12,250", "-12250%", "-12,250 was taken as -12250 %. If you mean -12.25 %, type -12.25%."],
  ])(
    "%s has a comma between thousands, which may have been meant as a decimal one: it is said",
    (typed, entry, doubt) => {
      expect(percentOf(typed)).toEqual({ entry, doubt });
    },
  );

  // Excel's help on percentages: "typing 10 or 0.1 both result in 10.00%" (from memory).
  it.each([
    ["0.06", "0.06", "0.06 was taken as 6 %. If you mean 0.06 %, type 0.06%."],
    [".5", "0.5", ".5 was taken as 50 %. If you mean 0.5 %, type 0.5%."],
    ["0,075", "0.075", "0,075 was taken as 7.5 %. If you mean 0.075 %, type 0.075%."],
    ["0,07", "0.07", "0,07 was taken as 7 %. If you mean 0.07 %, type 0.07%."],
  ])("%s is the share it was, and it is said", (typed, entry, doubt) => {
    expect(percentOf(typed)).toEqual({ entry, doubt });
  });

  it.each(["6%", "six", "", "=6", "1/2", "6 g", "-", ".", "6,5,5", "2026-11-25"])("%s is left as it is", (typed) => {
    expect(percentOf(typed)).toBeNull();
  });
});
