import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { besideLabel, MADE_BY, NOTES } from "../../../src/runsheet/record/handwritten";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import type { CellValue, Sheet } from "../../../src/sheet/sheet";

const columns = { vessel: 0, quantity: 1, fill: 2, scent: 3 };
const pour = { type: "pour" as const, headings: [], rows: [["Tin", 10, 100, "Cedar"]], columns };

/** The cells of a sheet by what they are told to hold, its texts alone. */
function textsOf({ cells }: Sheet): CellValue[][] {
  const rows: CellValue[][] = Array.from({ length: 1 + Math.max(...cells.map(({ row }) => row)) }, () => []);
  for (const { row, column, content } of cells) {
    (rows[row] as CellValue[])[column] = content && "text" in content ? content.text : null;
  }
  return rows.map((row) => Array.from(row, (cell) => cell ?? null));
}

describe("what is written by hand beside a label", () => {
  const sheet = () =>
    textsOf(
      describeRun(buildRun({ pour }, FIRST_SETTINGS), { lot: "2026-330-01", date: 46352, settings: FIRST_SETTINGS }),
    );

  it.each([MADE_BY, NOTES])("is read where the run sheet has room for it: %s", (label) => {
    const cells = sheet();
    expect(besideLabel(cells, label)).toBe("");
    const row = cells.findIndex((one) => one.includes(label)) as number;
    const line = cells[row] as CellValue[];
    line[line.indexOf(label) + 1] = " Mo ";
    expect(besideLabel(cells, label)).toBe("Mo");
  });

  it("goes on in the line below, up to the next label", () => {
    const cells = sheet();
    const row = cells.findIndex(([first]) => first === NOTES);
    (cells[row] as CellValue[])[1] = "frosting";
    cells[row + 1] = [null, "on two", 12];
    expect(besideLabel(cells, NOTES)).toBe("frosting on two 12");
    expect(besideLabel([["x"]], NOTES)).toBe("");
  });
});
