import { describe, expect, it } from "vitest";
import { toFileFormula } from "../../src/file/formula/toFile";
import { rowHeights } from "../../src/samples/file/rowHeights";
import { writeWorkbook } from "../../src/samples/file/writeWorkbook";
import type { Cell, Sheet, SheetValues } from "../../src/sheet/sheet";
import { attributesOf, partsOf, sharedTexts, sheetsOf, tablesOf } from "./zipped";

const formula = (row: number, column: number, text: string): Cell => ({ row, column, content: { formula: text } });
const text = (row: number, column: number, of: string): Cell => ({ row, column, content: { text: of } });

async function written(sheet: Partial<Sheet>, values: SheetValues = []) {
  const parts = partsOf(
    await writeWorkbook("Test", [{ name: "One", widths: [10, 10], cells: [], ...sheet }], [values]),
  );
  const cells = sheetsOf(parts)[0]?.cells ?? [];
  return {
    parts,
    xml: sheetsOf(parts)[0]?.xml ?? "",
    at: (address: string) => cells.find((one) => one.address === address),
  };
}

describe("a formula in a file", () => {
  it.each([
    ["=SUM(A1:A3)", "SUM(A1:A3)"],
    ["=POUR.FILLWEIGHT(A1,0.86)", "_xldudf_POUR_FILLWEIGHT(A1,0.86)"],
    ["=1+pour.WaxPart(POUR.FILLWEIGHT(A1),6%)", "1+_xldudf_POUR_WAXPART(_xldudf_POUR_FILLWEIGHT(A1),6%)"],
    ['=IF(A1="POUR.FILLWEIGHT(1)",1,2)', 'IF(A1="POUR.FILLWEIGHT(1)",1,2)'],
    ['="say ""POUR.X("" "&POUR.LOTCODE(A1,1)', '"say ""POUR.X("" "&_xldudf_POUR_LOTCODE(A1,1)'],
    ["=MYPOUR.X(1)", "MYPOUR.X(1)"],
    ['=textjoin(";",TRUE,"TEXTJOIN(",A1)', '_xlfn.TEXTJOIN(";",TRUE,"TEXTJOIN(",A1)'],
  ])("%s is %s", (typed, inFile) => {
    expect(toFileFormula(typed)).toBe(inFile);
  });
});

describe("a written workbook", () => {
  it.each(["=1+1", "+SUM(A1)", "@x", "-2", "<b>&amp;</b>", "3", "TRUE"])("keeps the text %s a text", async (of) => {
    const { parts, at } = await written({ cells: [text(0, 0, of)] });
    expect(at("A1")).toMatchObject({ attributes: { t: "s" }, value: "0" });
    expect(at("A1")?.formula).toBeUndefined();
    expect(sharedTexts(parts)).toEqual([of]);
  });

  it("keeps the saved value of a formula in its kind", async () => {
    const cells = [0, 1, 2, 3, 4].map((row) => formula(row, 0, "=POUR.X(B1)"));
    const { at } = await written({ cells }, [[1.5], ["a < b"], [true], [{ error: "#N/A" }], [null]]);
    expect([at("A1")?.attributes.t, at("A1")?.value]).toEqual([undefined, "1.5"]);
    expect([at("A2")?.attributes.t, at("A2")?.value]).toEqual(["str", "a < b"]);
    expect([at("A3")?.attributes.t, at("A3")?.value]).toEqual(["b", "1"]);
    expect([at("A4")?.attributes.t, at("A4")?.value]).toEqual(["e", "#N/A"]);
    expect([at("A5")?.attributes.t, at("A5")?.value]).toEqual(["str", ""]);
  });

  it("writes a spill over its values, blanks within included, up to the next cell of its own", async () => {
    const cells = [formula(1, 1, "=POUR.X(A1)"), text(5, 1, "below"), text(1, 4, "beside")];
    const values = [[], [null, 1, 2, null, "beside"], [null, null, 4], [null, "five"], [], [null, "below"]];
    const { parts, at } = await written({ cells }, values);
    expect(at("B2")?.formulaAttributes).toEqual({ t: "array", ref: "B2:C4" });
    expect([at("C2")?.value, at("C3")?.value, sharedTexts(parts)[Number(at("B4")?.value)]]).toEqual(["2", "4", "five"]);
    expect(["C2", "C3", "B4"].map((address) => at(address)?.formula)).toEqual([undefined, undefined, undefined]);
  });

  it("leaves metadata out where no function of ours is called", async () => {
    const { parts, at } = await written({ cells: [formula(0, 0, "=1+1")] }, [[2]]);
    expect(at("A1")?.formulaAttributes).toEqual({});
    expect(at("A1")?.attributes.cm).toBeUndefined();
    expect(Object.keys(parts)).not.toContain("xl/metadata.xml");
  });

  it("names the formula of a table's column, in each table of a sheet, only where all its rows have it", async () => {
    const columns = (row: number, second: (row: number) => Cell) => [
      text(row, 0, "Wax"),
      text(row, 1, "Scent & dye"),
      ...[1, 2].flatMap((down) => [formula(row + down, 0, "=$B$9<1"), second(row + down)]),
    ];
    const { parts } = await written(
      {
        cells: [
          ...columns(0, (row) => formula(row, 1, "=POUR.X($A$1)")),
          ...columns(5, (row) => formula(row, 1, `=A${row + 1}`)),
        ],
        tables: [
          { name: "First", row: 0, column: 0, headings: ["Wax", "Scent & dye"], rows: 2 },
          { name: "Second", row: 5, column: 0, headings: ["Wax", "Scent & dye"], rows: 2 },
        ],
      },
      Array.from({ length: 8 }, () => [1, 1]),
    );
    expect(tablesOf(parts)).toEqual([
      {
        name: "First",
        ref: "A1:B3",
        columns: [
          { name: "Wax", formula: "$B$9<1", array: false },
          { name: "Scent & dye", formula: "_xldudf_POUR_X($A$1)", array: true },
        ],
      },
      {
        name: "Second",
        ref: "A6:B8",
        columns: [
          { name: "Wax", formula: "$B$9<1", array: false },
          { name: "Scent & dye", array: false },
        ],
      },
    ]);
  });

  it("keeps number formats, conditional ones too, and covers the columns a cell goes across", async () => {
    const format = "[Red][<0]0.0;0.0";
    const { parts, xml } = await written({
      cells: [
        { row: 0, column: 0, content: { number: -1 }, format },
        { ...text(1, 0, "wide"), across: 2 },
      ],
    });
    expect(parts["xl/styles.xml"]).toContain('formatCode="[Red][&lt;0]0.0;0.0"');
    expect(xml).toContain('<mergeCell ref="A2:B2"/>');
  });

  it("hides a column of no width", async () => {
    const { xml } = await written({ widths: [10, 0, 12], cells: [text(0, 1, "hidden")] });
    const columns = [...xml.matchAll(/<col [^>]*>/g)].map(([tag]) => attributesOf(tag));
    expect(columns.filter(({ hidden }) => hidden === "1").map(({ min, max }) => [min, max])).toEqual([["2", "2"]]);
  });

  it("repeats rows and takes the paper it is told", async () => {
    const { parts, xml } = await written({ print: { paper: "letter", landscape: true, repeatRows: [0, 2] } });
    expect(attributesOf(/<pageSetup [^>]*>/.exec(xml)?.[0] ?? "")).toMatchObject({
      paperSize: "1",
      orientation: "landscape",
    });
    expect(parts["xl/workbook.xml"]).toMatch(/_xlnm\.Print_Titles"[^>]*>(&apos;|')?One(&apos;|')?!\$1:\$3</);
  });
});

describe("the heights of rows", () => {
  it("grow with large letters and with the lines of a wrapped text over all its columns", () => {
    const cells: Cell[] = [
      { ...text(0, 0, "Title"), look: "title" },
      { ...text(1, 0, "twelve chars and more of them"), look: "note", across: 2 },
      text(2, 0, "a long text that does not wrap at all"),
    ];
    // 16 points of letters and two lines of 11, a line being 15/11 of its letters: Excel's default row is 15 for 11.
    expect([...rowHeights({ name: "One", widths: [10, 10], cells })]).toEqual([
      [0, expect.closeTo(21.82, 2)],
      [1, expect.closeTo(30, 6)],
    ]);
  });
});
