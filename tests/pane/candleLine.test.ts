import { expect, it } from "vitest";
import { candleLine } from "../../src/pane/words/seen";
import { seenCandle } from "../../src/runsheet/seenCandle";
import { readTable } from "../../src/runsheet/tables/readTables";
import { matchColumns } from "../../src/runsheet/tables/registry";

it("says in a candle's line what the maker remarked, also of one that is beyond the limits", () => {
  const headings = ["Test", "Cycle", "Minutes", "Flame (mm)", "Remarks"];
  // Invented; the limit of 75 mm is by EN 15493.
  const rows = [
    ["A", 1, 60, 80, "flickers"],
    ["A", 1, 120, null, "glass cracked, put it out"],
  ];
  const readings = readTable({ type: "readings", headings, rows, columns: matchColumns("readings", headings) }, "g");
  const tests = readTable(
    {
      ...{ type: "burnTests" as const, headings: ["Test", "Wick"], rows: [["A", "Size 6"]] },
      columns: matchColumns("burnTests", ["Test", "Wick"]),
    },
    "g",
  );
  const test = tests?.get("a");
  if (!test) throw new Error("no test was read");
  const line = candleLine(seenCandle(test, readings?.get("a") ?? []), "g");
  expect(line).toContain("cycle 1 at 60 min: flame 80 mm high");
  expect(line).toContain("; remarks: cycle 1 at 60 min: flickers; cycle 1 at 120 min: glass cracked, put it out");
});
