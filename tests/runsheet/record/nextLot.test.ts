import { describe, expect, it } from "vitest";
import { nextLot, withLot } from "../../../src/runsheet/record/nextLot";
import { copiesOf, runSheetsOf } from "../../../src/runsheet/record/runSheets";
import { sheetNameOf } from "../../../src/runsheet/sheet/layout";

// 2026-11-26 is spreadsheet day 46352 and day 330 of its year (ISO 8601 ordinal date): counted on a calendar.
const DAY = 46352;

describe("the lot of the next run", () => {
  it("starts at 01 and counts on past every lot of the day, wherever it stands", () => {
    expect(nextLot(DAY, [])).toBe("2026-330-01");
    expect(nextLot(DAY, ["Run 2026-330-01", "Vessels"])).toBe("2026-330-02");
    expect(nextLot(DAY, ["RUN 2026-330-01 (2)", "Pour 2026-330-02"])).toBe("2026-330-03");
    expect(nextLot(DAY, ["2026-330-07, cedar for the market", "Run sheet 2026-330-02"])).toBe("2026-330-08");
    expect(nextLot(DAY, ["Run 2026-331-01", "Run 12026-330-05", "2026-330-999", ""])).toBe("2026-330-01");
  });

  it("fills no gap: a lot whose sheet is gone may stand on a label", () => {
    expect(nextLot(DAY, ["2026-330-03"])).toBe("2026-330-04");
  });

  it("is kept with the last of each day", () => {
    expect(withLot(["2026-329-04", "2026-330-01"], "2026-330-02")).toEqual(["2026-329-04", "2026-330-02"]);
    expect(nextLot(DAY, withLot([], "2026-330-02"))).toBe("2026-330-03");
  });

  it("says when a day has no more", () => {
    expect(() => nextLot(DAY, ["2026-330-99"])).toThrow("100 is not a run of a day");
  });
});

describe("the run sheets of a workbook", () => {
  it("are known by what stands on them, the newest last, whatever their tabs are called", () => {
    const sheets = runSheetsOf([
      { sheet: "Cedar, sold", value: "Run sheet 2026-330-02" },
      { sheet: sheetNameOf("2026-329-01"), value: "Run sheet 2026-329-01" },
      { sheet: "Run 2026-330-05", value: "my own notes" },
      { sheet: "Cedar, sold (2)", value: "Run sheet 2026-330-02" },
      { sheet: "Empty", value: null },
      { sheet: "Wrong", value: { error: "#N/A" } },
    ]);
    expect(sheets.map(({ name }) => name)).toEqual(["Run 2026-329-01", "Cedar, sold", "Cedar, sold (2)"]);
    const [, first, copy] = sheets;
    expect(first && copiesOf(first, sheets)).toEqual([copy]);
  });
});
