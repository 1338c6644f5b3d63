import { describe, expect, it } from "vitest";
import { groupProblems, listOfRows } from "../../src/pane/groupProblems";

describe("what is said once of many rows", () => {
  it("keeps the order in which each was first said, and apart what differs in anything else", () => {
    const same = { text: "a", stops: true };
    expect(
      groupProblems([
        { ...same, row: 4 },
        { text: "b", stops: true, row: 1 },
        { ...same, row: 2 },
        { ...same, row: 2 },
        { ...same, kind: "scents", row: 2 },
        { ...same, stops: false, row: 3 },
        { ...same },
      ]).map(({ problem, rows }) => [problem.text, problem.kind, problem.stops, rows]),
    ).toEqual([
      ["a", undefined, true, [2, 4]],
      ["b", undefined, true, [1]],
      ["a", "scents", true, [2]],
      ["a", undefined, false, [3]],
    ]);
  });

  it.each([
    [[], ""],
    [[7], "7"],
    [[7, 8], "7 and 8"],
    [[7, 8, 9], "7 to 9"],
    [[1, 2, 5, 9, 10, 11, 20], "1, 2, 5, 9 to 11 and 20"],
  ])("lists the rows %j as %s", (rows, text) => {
    expect(listOfRows(rows)).toBe(text);
  });
});
