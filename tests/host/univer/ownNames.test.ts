import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { toUniver } from "../../../src/host/univer/file/toUniver";
import { everythingBook } from "./everythingBook";
import { UniverInNode } from "./univerInNode";

describe("a name that stands in its own content", () => {
  let univer: UniverInNode;
  beforeAll(() => {
    univer = new UniverInNode();
  });
  afterAll(() => univer.dispose());

  it("is an error where it is used, and all else is worked out", async () => {
    const book = everythingBook();
    const [like] = book.names;
    if (!like) throw new Error("a name is needed");
    const names = [
      ...book.names,
      ...[
        ["Round", "=Round+1"],
        ["Here1", "=There1*2"],
        ["There1", "=Here1*2"],
        ["Ten", "=4+6"],
      ].map(([name = "", formula = ""]) => ({ ...like, name, formula })),
    ];
    const formulas = ["=Round", "=Here1+1", "=Ten+Ten", "=1+1"];
    const cells = formulas.map((formula, column) => ({ column, formula, value: null, style: 0 }));
    const sheets = book.sheets.map((sheet, i) =>
      i > 0 ? sheet : { ...sheet, rows: [...sheet.rows, { row: 200, cells }] },
    );
    const workbook = await univer.open(toUniver({ ...book, names, sheets }, "names"));
    const matrix = workbook.getSheets()[0]?.getCellMatrix();
    expect(formulas.map((_, column) => matrix?.getValue(200, column)?.v)).toEqual(["#NAME?", "#NAME?", 20, 2]);
  });
});
