import { describe, expect, it } from "vitest";
import { nearName } from "../../../src/runsheet/plan/nearName";

const KNOWN = ["Amber jar", "Tin", "Bowl", "White tumbler"];

describe("a name that may be a slip of another", () => {
  it.each([
    // Letters swapped, left out, put in, changed; a number in place of a word.
    ["Ambre jar", "Amber jar"],
    ["amber  jr", "Amber jar"],
    ["Amber8", "Amber jar"],
    ["Tine", "Tin"],
    ["bowls", "Bowl"],
    ["White tumblr", "White tumbler"],
    ["Cup", undefined],
    ["Jar", undefined],
    ["Bin box", undefined],
    ["Am", undefined],
    ["", undefined],
  ])("%s is offered %s", (typed, near) => {
    expect(nearName(typed, KNOWN)).toBe(near);
  });

  it("is looked for in long tables without a wait", () => {
    // The same answer however many others there are: 20,000 names of which one is near.
    const many = Array.from({ length: 20_000 }, (_, i) => `Vessel of the long table ${i * 7919}`);
    expect(nearName("Ambre jar", [...many, "Amber jar"])).toBe("Amber jar");
    const text = "A whole page that was pasted into a cell. ".repeat(1000);
    expect(nearName(`${text}x`, [text])).toBeUndefined();
  });

  it("is offered nothing where two are as near, or another size", () => {
    expect(nearName("Tinn", ["Tin", "tin "])).toBe("tin ");
    expect(nearName("Tin 8", ["Tin 6"])).toBeUndefined();
    expect(nearName("Tan", ["Tin", "Tun"])).toBeUndefined();
    expect(nearName("Amber8", ["Amber jar", "Amber tin"])).toBeUndefined();
  });
});
