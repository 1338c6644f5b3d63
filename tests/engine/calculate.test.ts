import { ArrayValueObject } from "@univerjs/engine-formula";
import { describe, expect, it, vi } from "vitest";
import { calculate } from "../../src/engine/calculate";
import type { Cell, Sheet } from "../../src/sheet/sheet";
import { metadataText, script } from "../functions/built";
import { HOSTILE_TEXTS } from "../hostileTexts";

const built = { script, metadata: metadataText };
const at = (row: number, column: number, content: Cell["content"]): Cell => ({ row, column, content });
const formulas = (...texts: string[]): Cell[] => texts.map((formula, row) => at(row, 9, { formula }));

/** A table "Pours" with this heading over 1 and 2, on a sheet of its own. */
const pours = (heading: string): Sheet => ({
  name: "Pours",
  widths: [],
  cells: [at(0, 0, { text: "Name" }), at(0, 1, { text: heading }), at(1, 1, { number: 1 }), at(2, 1, { number: 2 })],
  tables: [{ name: "Pours", row: 0, column: 0, headings: ["Name", heading], rows: 2 }],
});

/** What the formulas in column J of a second sheet make. */
async function beside(sheet: Sheet, ...texts: string[]) {
  const [, second] = await calculate([sheet, { name: "Second", widths: [], cells: formulas(...texts) }], built);
  return texts.map((_, row) => second?.[row]?.[9]);
}

describe("sheets calculated without a browser", () => {
  it("give every cell exactly, blanks as null, sheet by sheet", async () => {
    const [first, second] = await calculate(
      [
        {
          name: "A",
          widths: [],
          cells: [at(0, 0, { number: 0.25 }), at(0, 2, { formula: "=A1+0.5" }), at(2, 0, { formula: '=IF(TRUE,"")' })],
        },
        { name: "B b", widths: [], cells: [at(1, 1, { formula: "='A'!C1*10" }), at(1, 2, { formula: "=1=1" })] },
      ],
      built,
    );
    expect(first).toEqual([[0.25, null, 0.75]]);
    expect(second).toEqual([[], [null, 7.5, true]]);
  });

  it.each(HOSTILE_TEXTS)("leave a text the text it is (%#)", async (text) => {
    const [sheet] = await calculate([{ name: "A", widths: [], cells: [at(0, 0, { text })] }], built);
    expect(sheet).toEqual([[text]]);
  });

  it.each(["Water", "Water weight", "Water (g)", "Load, %", "from:to", "No. #", "g/oz", "Maker's", "a [b]"])(
    "read the table column %s",
    async (heading) => {
      const typed = heading.replace(/['#@[\]]/g, "'$&");
      const [sum, called, indexed] = await beside(
        pours(heading),
        `=SUM(Pours[[${typed}]])`,
        `=SUM(POUR.FILLWEIGHT(Pours[[${typed}]],1))`,
        `=INDEX(Pours[[${typed}]],2)`,
      );
      expect([sum, called, indexed]).toEqual([3, 3, 2]);
    },
  );

  it.each(["Water", "Water (g)"])("read a column's cell in the formula's own row, as in %s", async (heading) => {
    const sheet = pours(heading);
    const [first] = await calculate(
      [
        {
          ...sheet,
          cells: [
            ...sheet.cells,
            at(1, 4, { formula: `=Pours[[#This Row],[${heading}]]*10` }),
            at(2, 4, { formula: `=Pours[@[${heading}]]*10` }),
          ],
        },
      ],
      built,
    );
    expect([first?.[1]?.[4], first?.[2]?.[4]]).toEqual([10, 20]);
  });

  it("read a table reference in any capitals, and leave those in texts alone", async () => {
    const read = await beside(pours("Water (g)"), "=SUM(pours[water (G)])", '="Pours[Water (g)]"');
    expect(read).toEqual([3, "Pours[Water (g)]"]);
  });

  it("do not mix a zero with a blank, however often they ask", async () => {
    // In Excel a cell with 0 is not equal to "".
    const sheet: Sheet = { name: "A", widths: [], cells: [at(0, 0, { number: 0 })] };
    expect(await beside(sheet, '=A!A1=""', '=IF(A!A1="",1,2)', '=A!A2=""', "=A!A1=0")).toEqual([false, 2, true, true]);
  });

  it("read a text the same, however often they meet it", async () => {
    const texts = ["Fig", "06", "6 %", "1 Jan 2026"];
    const sheet: Sheet = { name: "A", widths: [], cells: texts.map((text, row) => at(row, 0, { text })) };
    // Excel takes a text of digits, a share or a day for the number it is (from memory).
    const asked = ['=COUNTIF(A!A1:A4,"fig")', "=A!A1*1", "=A!A2*1", "=A!A3*1", "=A!A4*1"];
    const read = [1, expect.objectContaining({ error: "#VALUE!" }), 6, 0.06, 46023];
    expect(await beside(sheet, ...asked, ...asked)).toEqual([...read, ...read]);
    expect(await beside(sheet, ...asked)).toEqual(read);
  });

  it("count how often a value is there the same, however often they ask, and each range by itself", async () => {
    const texts = ["Fig", "fig", "5", "", "TRUE", "#N/A"];
    const cells = texts.map((text, row) => at(row, 0, { text }));
    const sheet: Sheet = {
      ...{ name: "A", widths: [] },
      cells: [...cells, at(6, 0, { number: 5 }), at(7, 0, { number: 0 }), at(8, 0, { formula: "=TRUE" })],
    };
    const criteria = ['"fig"', "5", '"5"', "0", '""', "TRUE", '"TRUE"', '"<>fig"', '">0"', "A!B1"];
    const asked = criteria.flatMap((one) => [`=COUNTIF(A!A1:A9,${one})`, `=COUNTIF(A!A7:A9,${one})`]);
    // Each alone in a workbook of its own.
    const alone: unknown[] = [];
    for (const formula of asked) alone.push(...(await beside(sheet, formula)));
    expect(alone.slice(0, 4)).toEqual([2, 0, 2, 1]);
    expect(await beside(sheet, ...asked, ...asked)).toEqual([...alone, ...alone]);
  });

  it("compare the cells of a range once for a value that is counted in many rows", async () => {
    const cells = Array.from({ length: 50 }, (_, row) => at(row, 0, { text: row % 2 ? "Fig" : "Oud" }));
    const compared = vi.spyOn(ArrayValueObject.prototype, "compare");
    const counted = await beside(
      { name: "A", widths: [], cells },
      ...cells.map(({ row }) => `=COUNTIF(A!A$1:A$50,A!A${row + 1})`),
    );
    expect(counted).toEqual(cells.map(() => 25));
    expect(compared).toHaveBeenCalledTimes(2);
    compared.mockRestore();
  });

  it("compare with wildcards each cell by itself, whatever was asked before", async () => {
    const texts = ["Fix actual weight", "Fix units", "fix", "Sent", "Fix?", "Fix actual weight"];
    const cells = [...texts.map((text, row) => at(row, 0, { text })), at(6, 0, { number: 12 })];
    // By hand; a blank is not counted, and ~ takes its meaning from a sign.
    const counts = [
      ["Fix*", 5],
      ["fix?*", 4],
      ["Fix~?", 1],
      ["<>Fix*", 2],
      ["*t", 3],
      ["Fix*", 5],
      ["1*", 0],
    ] as const;
    const asked = counts.map(([one]) => `=COUNTIFS(A!A1:A7,"${one}")`);
    expect(await beside({ name: "A", widths: [], cells }, ...asked)).toEqual(counts.map(([, count]) => count));
  });

  it("sum what stands beside a text as they do where each cell is compared", async () => {
    const texts = ["Fig", "fig", "5", "Straße", "STRASSE", "TRUE", "12 Nov", "f?g", "Oud", "~"];
    const named = texts.map((text, row) => at(row, 0, { text }));
    const weights = texts.map((_, row) => at(row, 1, { number: 2 ** row }));
    const others = [at(10, 0, { number: 5 }), at(11, 0, { formula: "=1/0" }), at(12, 0, { formula: '="fig"' })];
    // Beside them a text, a blank and an error.
    const beyond = [at(10, 1, { number: 1024 }), at(11, 1, { number: 2048 }), at(12, 1, { text: "none" })];
    const sheet: Sheet = {
      ...{ name: "A", widths: [] },
      cells: [...named, ...weights, ...others, ...beyond, at(8, 2, { formula: "=1/0" }), at(0, 2, { number: 3 })],
    };
    const criteria = ["fig", "FIG", "5", "straße", "TRUE", "12 Nov", "f?g", "oud", "none", "~", "#DIV/0!"];
    const sums = (equal: string) =>
      criteria.flatMap((one) => [
        ...["B1:B13", "C1:C13", "B1:B3", "C2:C14"].map((at) => `=SUMIF(A!A1:A13,"${equal}${one}",A!${at})`),
        ...[`=SUMIF(A!A1:A13,"${equal}${one}")`, `=SUMIF(A!A1:B13,"${equal}${one}",A!B1:C13)`],
      ]);
    const plain = await beside(sheet, ...sums(""));
    // By hand: of "fig" the first two rows, and of the third column the first one; of "oud" row 9.
    expect([plain[0], plain[1], plain[42], plain[43]]).toEqual([3, 3, 256, { error: "#DIV/0!", message: "" }]);
    // With a sign before it each cell is compared.
    expect(plain).toEqual(await beside(sheet, ...sums("=")));
  });

  it("look through the cells of a range once for all sums of what stands beside texts", async () => {
    const cells = Array.from({ length: 50 }, (_, row) => [
      at(row, 0, { text: `Jar ${row % 25}` }),
      at(row, 1, { number: row }),
    ]);
    const compared = vi.spyOn(ArrayValueObject.prototype, "compare");
    const sums = await beside(
      { name: "A", widths: [], cells: cells.flat() },
      ...cells.map((_, row) => `=SUMIF(A!A$1:A$50,"jar ${row % 25}",A!B$1:B$50)`),
    );
    expect(sums).toEqual(cells.map((_, row) => 2 * (row % 25) + 25));
    expect(compared).not.toHaveBeenCalled();
    compared.mockRestore();
  });

  it("are not spoilt by a formula that cannot be read", async () => {
    const read = await beside(pours("Water"), "=SUM(Pours[", "=SUM(1,2)", "=SUM(Pours[Water])");
    expect(read.slice(1)).toEqual([3, 3]);
  });

  it("keep two workbooks with the same formulas apart", async () => {
    const longer = { ...pours("Water"), cells: [...pours("Water").cells, at(3, 1, { number: 10 })] };
    const tables = [{ name: "Pours", row: 0, column: 0, headings: ["Name", "Water"], rows: 3 }];
    expect(await beside(pours("Water"), "=SUM(Pours[Water])")).toEqual([3]);
    expect(await beside({ ...longer, tables }, "=SUM(Pours[Water])")).toEqual([13]);
  });
});
