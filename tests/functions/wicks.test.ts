import { describe, expect, it } from "vitest";
import { CellError, call, cell, down, messageOf } from "./built";

describe("WICKCOMPARE", () => {
  it("gives a row a wick, with words in the cells where one candle says nothing", () => {
    const rows = call("WICKCOMPARE", down(4, 4, "Size 8", "size 8", 10, null), down(5.1, 4.9, 5.2, 5, 9, 1));
    expect(rows.map((row) => row.slice(0, 2))).toEqual([
      [4, 2],
      ["Size 8", 2],
      [10, 1],
    ]);
    expect(rows[0]?.[5]).toBe("Size 8");
    expect(rows[1]?.[5]).toBe("4");
    expect(rows[2]?.[2]).toBe(9);
    for (const at of [3, 4, 5]) expect(messageOf(rows[2]?.[at], "#N/A")).toContain("burn 3 or more");
  });

  it("says when there is nothing to compare with", () => {
    const rows = call("WICKCOMPARE", down(4, 4, 6, 8, 8), down(5, 6, 7, 9, 9));
    expect(messageOf(rows[2]?.[3], "#N/A")).toContain("2 candles show the very same");
    expect(rows[0]?.[5]).toBe("no other wick with 2 candles that differ");
    expect(messageOf(cell("WICKCOMPARE", down(null), down(null)), "#N/A")).toContain(
      "no candle has a wick and a value",
    );
    expect(messageOf(cell("WICKCOMPARE", down(4, 4), down(5, "x")))).toContain(
      'row 2 of the range: values: "x" is text',
    );
  });
});

describe("WICKAT", () => {
  it("answers in three cells, blank rows left out", () => {
    const [row] = call("WICKAT", down(4, null, 6, 8), down(5, 9, 7, 9), 6);
    expect(row).toEqual([5, 5, 5]);
    expect(messageOf(cell("WICKAT", down(4, 6, 8), down(5, 7, 9), 20), "#N/A")).toContain("beyond those tried, 4 to 8");
    expect(messageOf(cell("WICKAT", down(4, 6, 8), down(5, 7, 9), down(1, 2)))).toContain("give one cell");
  });
});

describe("PASSBOUND", () => {
  it("fills down", () => {
    const [all, none, blank, wrong] = call("PASSBOUND", down(3, 0, null, 4), 3).flat();
    expect(all).toBeCloseTo(0.05 ** (1 / 3), 10);
    expect([none, blank]).toEqual([0, ""]);
    expect(messageOf(wrong)).toContain("4 of 3 tried");
    expect(cell("PASSBOUND", 3, 3, 0.5)).toBeCloseTo(0.5 ** (1 / 3), 10);
    expect(cell("PASSBOUND", new CellError("#NUM!"), 3)).toMatchObject({ code: "#NUM!" });
  });
});

describe("THROWCOMPARE", () => {
  it("answers in a row, who has not scored both left out", () => {
    const [row] = call("THROWCOMPARE", down(4, 5, null, 4), down(3, null, 3, 4));
    expect(row?.slice(0, 4)).toEqual([0.5, 1, 0, expect.closeTo(1, 12)]);
    expect(row?.[4]).toContain("too few to say");
    expect(messageOf(cell("THROWCOMPARE", down(null), down(1)), "#N/A")).toContain("nobody has scored both");
  });
});

describe("BURNCHECK", () => {
  const cycles = down(1, 1, 1);
  const minutes = down(60, 120, 180);
  it("leaves rows out in which nothing was read, and needs a unit only for what was read", () => {
    const said = cell("BURNCHECK", cycles, minutes, down(20, 25, null), down(25, null, null), 70, "mm");
    expect(said).toBe(
      "not finished: no pool read in cycle 1 at 120 min, soot not read in cycle 1, glass temperature not read in cycle 1, the depth of wax left never read; burn down to 10 mm",
    );
    const hot = ["BURNCHECK", cycles, minutes, down(20, 25, null), down(25, 50, null), 70, "mm"] as const;
    const more = [down(60, 9, null), down("none", null, null), down(30, null, null)] as const;
    expect(messageOf(cell(...hot, ...more))).toContain("temperatureUnit");
    expect(cell(...hot, ...more, "C")).toBe("");
    expect(messageOf(cell("BURNCHECK", cycles, down(60, 120), down(20), down(25), 70, "mm"))).toContain("same size");
    expect(messageOf(cell("BURNCHECK", down(null), down(null), down(null), down(null), 70, "mm"), "#N/A")).toContain(
      "nothing is read yet",
    );
  });

  it("counts the minutes of rows in which nothing was read, and asks where weights contradict the wax left", () => {
    const looks = (end: number, left: number) =>
      cell(
        ...(["BURNCHECK", cycles, down(60, 120, end), down(20, 25, null), down(25, 50, null), 70, "mm"] as const),
        ...([down(60, left, null), down("none", null, null), down(30, null, null), "C", null] as const),
        ...([down(400, 320, null), "g"] as const),
      );
    // 80 g are 23 mm in a vessel of 70 mm, at 0.9 g/cm3.
    expect(looks(180, 37)).toBe("not finished: 37 mm of wax left; burn down to 10 mm");
    expect(looks(180, 57)).toContain(
      "not finished: cycle 1 at 120 min: wax left fell by 3 mm, by the weights about 23 mm",
    );
    expect(looks(720, 37)).toContain("cycle 1 not looked at between 120 and 720 min");
  });

  it("passes nothing over that was read without its cycle or minutes", () => {
    const flames = down(20, 25, 90);
    const without = (at: unknown, when: unknown) =>
      messageOf(
        cell("BURNCHECK", down(1, 1, at as number), down(60, 120, when as number), flames, down(25, 50, 60), 70, "mm"),
      );
    expect(without(null, 180)).toBe(
      "row 3 of the range: cycles: the cell is blank beside something that was read; fill it in",
    );
    expect(without(1, null)).toContain("minutes: the cell is blank");
    expect(without(1, "1h30")).toContain("minutes");
  });
});
