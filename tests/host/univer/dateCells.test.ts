import { IDefinedNamesService } from "@univerjs/engine-formula";
import { describe, expect, it } from "vitest";
import { dateDoubt } from "../../../src/host/univer/editing/dateCells";
import { followEdits } from "../../../src/host/univer/editing/edits";
import { Headless } from "./headless";

/** A day in A1, a number in B1, both with names, A2 to A4 made for days, and a table with days in D. */
function said(formulas: readonly string[]): Promise<string> {
  const format = "yyyy-mm-dd";
  const headless = new Headless([
    {
      name: "Sheet",
      widths: [],
      cells: [
        { row: 0, column: 0, content: { number: 46351 }, format },
        { row: 0, column: 1, content: { number: 3 } },
        { row: 0, column: 3, content: { text: "Day" } },
        { row: 0, column: 4, content: { text: "Good" } },
        { row: 1, column: 3, content: { number: 46351 }, format },
        { row: 1, column: 4, content: { number: 6 } },
        ...[1, 2, 3].map((row) => ({ row, column: 0, content: { number: 1 }, format })),
      ],
      tables: [{ name: "Pours", row: 0, column: 3, headings: ["Day", "Good"], rows: 1 }],
    },
  ]);
  const names = headless.injector.get(IDefinedNamesService);
  for (const [name, formulaOrRefString] of Object.entries({
    PouredOn: "Sheet!$A$1",
    Count: "Sheet!$B$1",
    Twice: "=Count*2",
    Week: "=PouredOn+7",
    Load: "0.08",
  })) {
    names.registerDefinedName(headless.ids.unitId, { id: name, name, formulaOrRefString });
  }
  let words = "";
  followEdits(headless.injector, (edit) => {
    words = dateDoubt(headless.injector, edit);
    return null;
  });
  return headless
    .enter(
      1,
      0,
      formulas.map((formula) => [formula]),
    )
    .then(() => words);
}

describe("a formula in a cell of dates", () => {
  it.each(["=6*7", "=B1*2", "=SUM(B1:B3)", "=Count*2", "=Twice", "=B1*Load", "=SUM(Pours[Good])"])(
    "%s is said to look like a date",
    async (formula) => {
      expect(await said([formula])).toMatch(/^A2 shows dates, so the result of this formula looks like one\./);
    },
  );

  it.each([
    "=A1+14",
    "=TODAY()",
    "=EDATE(A1,1)",
    "=MAX(A1:A3)",
    "46352",
    "=PouredOn+14",
    "=Week",
    "=Nowhere",
    "=MAX(Pours[Day])",
  ])("%s is one of days, or may be", async (formula) => {
    expect(await said([formula])).toBe("");
  });

  it("is not spoken of where several are filled", async () => {
    expect(await said(["=6*7", "=6*8"])).toBe("");
  });
});
