import { describe, expect, it } from "vitest";
import { groupProblems, listOfRows } from "../../src/pane/groupProblems";

describe("what is said once of many rows", () => {
  it("keeps the order in which each was first said, and apart what differs in anything else", () => {
    const same = { text: "a", severity: "error" } as const;
    expect(
      groupProblems([
        { ...same, row: 4 },
        { text: "b", severity: "error", row: 1 },
        { ...same, row: 2 },
        { ...same, row: 2 },
        { ...same, table: "scents", row: 2 },
        { ...same, severity: "warning", row: 3 },
        { ...same },
      ]).map(({ problem, rows }) => [problem.text, problem.table, problem.severity, rows]),
    ).toEqual([
      ["a", undefined, "error", [2, 4]],
      ["b", undefined, "error", [1]],
      ["a", "scents", "error", [2]],
      ["a", undefined, "warning", [3]],
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
