import { describe, expect, it } from "vitest";
import { alikeWicks, inOrderOfName, oneWickOrTwo } from "../../../src/runsheet/tables/wick";

describe("names of wicks", () => {
  it.each([
    [["W-21", "w21", "W 21", "w.21", "W\u201121"], [["W-21", "w21", "W 21", "w.21", "W\u201121"]]],
    [["2 x W-21", "w21 (2)", "W-24"], [["W-21", "w21"]]],
    [["Size 6", "size  6", " SIZE 6"], []],
    [["W-2.1", "W-21", "W 2-1"], [["W-2.1", "W 2-1"]]],
    [["W-21", "W-24", "C-1", "c1"], [["C-1", "c1"]]],
    [["", "-", " "], []],
  ])("%j are grouped where only spaces, hyphens, dots or case differ: %j", (given, groups) => {
    expect(alikeWicks(given)).toEqual(groups);
  });

  it("are asked about by all their spellings", () => {
    expect(oneWickOrTwo(["w21", "W-21"])).toBe("w21 and W-21: one wick, or two?");
    expect(oneWickOrTwo(["w21", "W 21", "W-21"])).toBe("w21, W 21 and W-21: one wick, or 3?");
  });

  it("stand by their numbers, not by figure after figure", () => {
    expect(["Size 10", "Size 6", "W-9", "Size 8"].sort(inOrderOfName)).toEqual(["Size 6", "Size 8", "Size 10", "W-9"]);
  });
});
