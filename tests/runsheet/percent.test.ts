import { describe, expect, it } from "vitest";
import { atLeast, atMost } from "../../src/runsheet/percent";

describe("a bound in percent", () => {
  // By hand: 1 - 0.05^(1/3) is 0.6316, and 0.368 the other way; 1 - 0.05 is no more than 95 % for all its binary digits.
  it.each([
    [0.6316, "64", "63"],
    [0.3684, "37", "36"],
    [1 - 0.05, "95", "95"],
    [0.07, "7", "7"],
    [0.0951, "9.6", "9.5"],
    [0.0999, "10", "9.9"],
    [0.9951, "100", "99"],
    [0, "0", "0"],
    [1, "100", "100"],
  ])("of %d is rounded to the careful side", (share, most, least) => {
    expect([atMost(share), atLeast(share)]).toEqual([most, least]);
  });
});
