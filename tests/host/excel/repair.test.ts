import { afterEach, expect, it, vi } from "vitest";
import { repairFormulas } from "../../../src/host/excel/repair";
import type { Platform } from "./client/officeJs";
import { StandIn } from "./standIn";

afterEach(() => vi.unstubAllGlobals());

/** A workbook filled while the add-in was away, and then the add-in comes. */
function excel(rows: number, platform: Platform): StandIn {
  const standIn = new StandIn({ platform }).install();
  const { book } = standIn;
  book.answer = (formula) => (/POUR\.\w|MISSING/i.test(formula) ? "#NAME?" : formula.includes("NA()") ? "#N/A" : 1);
  const cells = Array.from({ length: rows }, (_, i) => [`Vessel ${i}`, `=POUR.FILLWEIGHT(${i})`, "=MISSING(1)"]);
  standIn.sheet("Here", [...cells, ["'=POUR.KEEP()", '=NA()&"POUR."', "=IF(1,pour.waxpart(1,2),0)"]]);
  standIn.sheet("Empty");
  standIn.sheet("Locked", [["=POUR.FILLWEIGHT(1)"]]).protected = true;
  book.answer = (formula) => (formula.includes("MISSING") ? "#NAME?" : formula.includes("NA()") ? "#N/A" : 7);
  return standIn;
}

it.each([
  [1, "web"],
  [1000, "web"],
  [10, "windows"],
  [10, "mac"],
] as [number, Platform][])(
  "enters the broken formulas again and nothing else, with %i rows on %s",
  async (rows, platform) => {
    const standIn = excel(rows, platform);
    const [here, , locked] = standIn.book.sheets;
    expect(await repairFormulas()).toEqual({ repaired: rows + 1, protectedSheets: ["Locked"], filteredSheets: [] });
    expect(standIn.syncs).toBe(3);
    expect(here?.cell(0, 1)).toEqual({ formula: "=POUR.FILLWEIGHT(0)", value: 7, type: "Double" });
    expect(here?.cell(rows - 1, 2)?.value).toBe("#NAME?");
    expect(here?.cell(rows, 0)).toEqual({ formula: null, value: "=POUR.KEEP()", type: "String" });
    expect(here?.cell(rows, 1)?.value).toBe("#N/A");
    expect(here?.cell(rows, 2)?.value).toBe(7);
    expect(locked?.cell(0, 0)?.value).toBe("#NAME?");
    expect(await repairFormulas()).toMatchObject({ repaired: 0 });
  },
);

/** A sheet whose one formula shows a value, and what the repair makes of it: "entered again" is the answer by then. */
async function repaired(formula: string, shown: string | number) {
  const standIn = new StandIn().install();
  standIn.book.answer = () => shown;
  const sheet = standIn.sheet("Here", [[formula]]);
  standIn.book.answer = () => "entered again";
  const { repaired: count } = await repairFormulas();
  return { repaired: count, formula: sheet.cell(0, 0)?.formula, value: sheet.cell(0, 0)?.value };
}

// The forms in which formulas were stuck: issues 2051, 2568, 3872 and 4487 of OfficeDev/office-js.
it.each([
  ["=_xldudf_POUR_FILLWEIGHT(1)", "=POUR.FILLWEIGHT(1)"],
  ["=[2]!_xldudf_POUR_FILLWEIGHT(1)", "=POUR.FILLWEIGHT(1)"],
  ["=2*[2]!_xldudf_POUR_FILLWEIGHT(B2,0.86)", "=2*POUR.FILLWEIGHT(B2,0.86)"],
  ["=-Tools.xla!_xldudf_POUR_WAXPART(B2,6%)", "=-POUR.WAXPART(B2,6%)"],
  ["='C:\\My tools\\It''s (1).xlam'!_xldudf_POUR_WAXPART(B2,6%)", "=POUR.WAXPART(B2,6%)"],
  ["='Wax (g)'!B2*_xldudf_POUR_WAXPART('Wax (g)'!C2,6%)", "='Wax (g)'!B2*POUR.WAXPART('Wax (g)'!C2,6%)"],
  ["=SUM(B2,_xldudf_POUR_WAXPART(1,2),[2]!_xldudf_POUR_X9(3))", "=SUM(B2,POUR.WAXPART(1,2),POUR.X9(3))"],
  ['=_xldudf_POUR_WAXPART(1,2)&" ""_xldudf_POUR_X(1)"', '=POUR.WAXPART(1,2)&" ""_xldudf_POUR_X(1)"'],
])("gives %s its function back", async (formula, again) => {
  expect(await repaired(formula, "#NAME?")).toEqual({ repaired: 1, formula: again, value: "entered again" });
});

it.each(["", 0])("does so behind IFERROR too, where the cell shows %j", async (shown) => {
  const again = { repaired: 1, formula: '=IFERROR(POUR.FILLWEIGHT(B2),"")', value: "entered again" };
  expect(await repaired('=IFERROR(_xldudf_POUR_FILLWEIGHT(B2),"")', shown)).toEqual(again);
});

it.each([
  ["=POUR.FILLWEIGHT(1)", 103],
  ["=POUR.FILLWEIGHT(1)", "#VALUE!"],
  ['=IFERROR(POUR.FILLWEIGHT(B2),"")', ""],
  ['="_xldudf_POUR_FILLWEIGHT(1)"', "_xldudf_POUR_FILLWEIGHT(1)"],
  ['=MISSING("POUR.FILLWEIGHT(1)")', "#NAME?"],
  ["=_xldudf_OTHER_POUR(1)", "#NAME?"],
  ["=MY_xldudf_POUR_FILL(1)", "#NAME?"],
])("leaves %s, which shows %j", async (formula, shown) => {
  expect(await repaired(formula, shown)).toEqual({ repaired: 0, formula, value: shown });
});

// A block of cells lands in the wrong rows where a filter hides some: issue 224 of OfficeDev/office-js.
it("leaves filtered sheets alone, those with a filtered table too, and names them", async () => {
  const standIn = new StandIn().install();
  standIn.book.answer = () => "#NAME?";
  const stuck = [["Fill"], ["=POUR.FILLWEIGHT(1)"], ["=POUR.FILLWEIGHT(2)"]];
  standIn.sheet("Open", stuck);
  standIn.sheet("Filtered", stuck).isFiltered = true;
  standIn.table("Vessels", "Stock", stuck);
  Object.assign(standIn.book.tables()[0] as object, { isFiltered: true });
  standIn.book.answer = () => 7;
  expect(await repairFormulas()).toEqual({ repaired: 2, protectedSheets: [], filteredSheets: ["Filtered", "Stock"] });
  expect(standIn.book.sheets.map((sheet) => sheet.cell(1, 0)?.value)).toEqual([7, "#NAME?", "#NAME?"]);
});

it("says what went wrong", async () => {
  excel(1, "web").failure = { sync: 3, done: "nothing", code: "InvalidOperationInCellEditMode" };
  await expect(repairFormulas()).rejects.toThrow("Excel could not fix the formulas: a cell is being edited");
});
