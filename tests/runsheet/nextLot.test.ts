import { describe, expect, it } from "vitest";
import { isRunSheet, nextLot } from "../../src/runsheet/nextLot";

// 2026-11-26 is spreadsheet day 46352 and day 330 of its year (ISO 8601 ordinal date): counted on a calendar.
const DAY = 46352;

describe("the lot of the next run", () => {
  it("starts at 01 and counts on past the sheets that are there", () => {
    expect(nextLot(DAY, [], [])).toBe("2026-330-01");
    expect(nextLot(DAY, ["Run 2026-330-01", "Vessels"], [])).toBe("2026-330-02");
    expect(nextLot(DAY, ["RUN 2026-330-01 (2)", "Run 2026-330-02"], [])).toBe("2026-330-03");
    expect(nextLot(DAY, ["Run 2026-331-01"], [])).toBe("2026-330-01");
    expect(nextLot(DAY, [], ["2026-330-01"])).toBe("2026-330-02");
  });

  it("counts sheets that were named before as well", () => {
    expect(nextLot(DAY, ["Pour 2026-330-01", "Run 2026-330-02"], [])).toBe("2026-330-03");
    for (const name of ["Run 2026-330-01", "Run 2026-330-01 (2)", "Pour 2026-330-01"]) {
      expect(isRunSheet(name), name).toBe(true);
    }
    for (const name of ["Runs log", "Run 2026", "Pour notes"]) expect(isRunSheet(name), name).toBe(false);
  });
});
