import { afterEach, expect, it, vi } from "vitest";
import { repairFormulas } from "../../../src/host/excel/repair";
import { StandIn } from "./standIn";

afterEach(() => vi.unstubAllGlobals());

/** A workbook filled while the add-in was away, and then the add-in comes. */
function excel(rows: number): StandIn {
  const standIn = new StandIn().install();
  const { book } = standIn;
  book.answer = (formula) => (/POUR\.\w|MISSING/i.test(formula) ? "#NAME?" : formula.includes("NA()") ? "#N/A" : 1);
  const cells = Array.from({ length: rows }, (_, i) => [`Vessel ${i}`, `=POUR.FILLWEIGHT(${i})`, "=MISSING(1)"]);
  standIn.sheet("Here", [...cells, ["'=POUR.KEEP()", '=NA()&"POUR."', "=IF(1,pour.waxpart(1,2),0)"]]);
  standIn.sheet("Empty");
  standIn.sheet("Locked", [["=POUR.FILLWEIGHT(1)"]]).protected = true;
  book.answer = (formula) => (formula.includes("MISSING") ? "#NAME?" : formula.includes("NA()") ? "#N/A" : 7);
  return standIn;
}

it.each([1, 1000])("enters the broken formulas again and nothing else, with %i rows", async (rows) => {
  const standIn = excel(rows);
  const [here, , locked] = standIn.book.sheets;
  expect(await repairFormulas()).toEqual({ mended: rows + 1, skipped: ["Locked"] });
  expect(standIn.syncs).toBe(3);
  expect(here?.cell(0, 1)).toEqual({ formula: "=POUR.FILLWEIGHT(0)", value: 7, type: "Double" });
  expect(here?.cell(rows - 1, 2)?.value).toBe("#NAME?");
  expect(here?.cell(rows, 0)).toEqual({ formula: null, value: "=POUR.KEEP()", type: "String" });
  expect(here?.cell(rows, 1)?.value).toBe("#N/A");
  expect(here?.cell(rows, 2)?.value).toBe(7);
  expect(locked?.cell(0, 0)?.value).toBe("#NAME?");
  expect(await repairFormulas()).toMatchObject({ mended: 0 });
});

it("says what went wrong", async () => {
  excel(1).failure = { sync: 3, done: "nothing", code: "InvalidOperationInCellEditMode" };
  await expect(repairFormulas()).rejects.toThrow("Excel could not mend the formulas: a cell is being edited");
});
