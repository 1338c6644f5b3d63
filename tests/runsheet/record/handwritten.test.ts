import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { besideLabel, MADE_BY, NOTES } from "../../../src/runsheet/record/handwritten";
import { logRows } from "../../../src/runsheet/record/logRows";
import { readBack } from "../../../src/runsheet/record/readBack";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT } from "../../../src/runsheet/sheet/layout";
import type { CellValue, Sheet } from "../../../src/sheet/sheet";

const columns = { vessel: 0, quantity: 1, fill: 2, scent: 3 };
const pour = { type: "pour" as const, headings: [], rows: [["Tin", 10, 100, "Cedar"]], columns };

/** The cells of a sheet by what they are told to hold, its formulas left blank. */
function cellsOf({ cells }: Sheet): CellValue[][] {
  const rows: CellValue[][] = Array.from({ length: 1 + Math.max(...cells.map(({ row }) => row)) }, () => []);
  for (const { row, column, content } of cells) {
    (rows[row] as CellValue[])[column] = content
      ? "text" in content
        ? content.text
        : "number" in content
          ? content.number
          : null
      : null;
  }
  return rows.map((row) => Array.from(row, (cell) => cell ?? null));
}

describe("the steps of a pot", () => {
  const settings = { ...FIRST_SETTINGS, live: false };
  const tables = {
    pour,
    scents: {
      type: "scents" as const,
      headings: ["", "Pour at (C)"],
      rows: [["Cedar", 60]],
      columns: { scent: 0, pour: 1 },
    },
    vessels: {
      type: "vessels" as const,
      headings: [],
      rows: [["Tin", 120, "W-7"]],
      columns: { vessel: 0, water: 1, wick: 2 },
    },
  };

  it("are read with what was aimed at and as they were done, and are no wick and no heading", () => {
    const cells = cellsOf(describeRun(buildRun(tables, settings), { lot: "2026-330-01", date: 46352, settings }));
    const at = (name: string) => cells.find((row) => row.includes(name)) as CellValue[];
    at("Melt at")[AT.temperature] = 74;
    // A spreadsheet keeps 14:05 as 845 of the 1440 minutes of a day.
    at("Melt at")[AT.time] = 845 / 1440;
    at("Pour at")[AT.temperature] = "about 60";
    (cells.find((row) => row[AT.key] === "1 vessel") as CellValue[])[AT.label] = "Net Wt 3.5 oz (100 g)";
    const run = readBack(cells) as NonNullable<ReturnType<typeof readBack>>;
    expect([...(run.pots[0]?.steps.keys() ?? [])]).toEqual(["Pour at"]);
    expect(run.pots[0]?.done).toEqual(["Melt at 74, 14:05", "Pour at about 60"]);
    const [row] = logRows({ ...run, notes: "frosting" }, new Map());
    expect(row?.Notes).toEqual({ text: "frosting. Melt at 74, 14:05; Pour at about 60" });
  });
});

describe("what is written by hand beside a label", () => {
  const sheet = () =>
    cellsOf(
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
