import { describe, expect, it } from "vitest";
import { linesOf, roomIn } from "../../src/sheet/textLines";

describe("the lines of a text", () => {
  it.each([
    ["", 10, 1],
    ["one two", 7, 1],
    ["one two", 6, 2],
    ["one two three", 7, 2],
    ["one\n\ntwo", 10, 3],
    ["twentyfourletterswithout", 10, 3],
    ["any", 0, 3],
  ])("%j where a line holds %d characters", (text, room, lines) => {
    expect(linesOf(text, room)).toBe(lines);
  });

  it("have the room of all columns that the cell covers", () => {
    expect(roomIn({ row: 0, column: 1, across: 3 }, [1, 10, 20], 8)).toBe(38);
    expect(roomIn({ row: 0, column: 2 }, [1, 10, 20], 8)).toBe(20);
  });
});
