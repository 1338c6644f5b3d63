import { describe, expect, it } from "vitest";
import { openFile } from "../../src/file/openFile";
import { grouped } from "../../src/tryout/files/remarkList";
import { richWorkbook } from "../file/richWorkbook";

describe("what is said of a file after it was opened", () => {
  it("says once on each sheet what becomes of several things", () => {
    const { remarks } = openFile(richWorkbook(), "rich.xlsx");
    const lines = grouped(remarks);
    const keys = lines.map(({ sheet, consequence }) => `${sheet} ${consequence}`);
    expect(new Set(keys).size).toBe(keys.length);
    // Not one thing of the file is left out.
    for (const { sheet, what } of remarks) {
      expect(lines.some((line) => line.sheet === sheet && line.what.split(", ").includes(what))).toBe(true);
    }
    expect(lines.length).toBeLessThan(remarks.length);
  });

  it("speaks of one thing as one, of several as several", () => {
    const one = {
      sheet: "Pours",
      what: "a chart",
      consequence: "The page does not show it; it stays in the file when you save.",
    };
    const two = { ...one, what: "a picture" };
    expect(grouped([one])).toEqual([one]);
    expect(grouped([one, two])).toEqual([
      {
        sheet: "Pours",
        what: "a chart, a picture",
        consequence: "The page does not show them; they stay in the file when you save.",
      },
    ]);
  });
});
