import { CellValueType, UndoCommand } from "@univerjs/core";
import { SetSelectionsOperation, TextToNumberCommand } from "@univerjs/preset-sheets-core";
import { afterEach, describe, expect, it } from "vitest";
import { followEdits } from "../../../src/host/univer/editing/edits";
import { TextToNumber } from "../../../src/host/univer/editing/textToNumber";
import type { Cell } from "../../../src/sheet/sheet";
import { Headless } from "./headless";

const LOADS = ["Load (%)", "12", "12 %", "6.5%", "8 g", "3,5", "Fig"];

describe("Text to Number", () => {
  let page: Headless;
  let said: string[];
  afterEach(() => page.univer.dispose());

  const convert = async (texts: readonly string[], range: object) => {
    said = [];
    const cells = texts.map((text, row): Cell => ({ row, column: 0, content: { text } }));
    page = new Headless([{ name: "Loads", widths: [], cells }]);
    const follow = new TextToNumber(page.injector, (words) => said.push(words));
    followEdits(page.injector, () => follow.follow());
    const selections = [{ range: { rangeType: 0, ...range }, primary: null, style: null }];
    await page.run(SetSelectionsOperation.id, { selections });
    await page.run(TextToNumberCommand.id, {});
  };
  const values = (rows: number) => page.cells(0, 0, rows, 1).flat();

  it("takes percentages with the look of such, and says what stays text", async () => {
    await convert(LOADS, { startRow: 0, endRow: 6, startColumn: 0, endColumn: 0 });
    expect(values(7)).toEqual(["Load (%)", 12, 0.12, 0.065, "8 g", "3,5", "Fig"]);
    const types = [2, 3].map((row) => page.sheet.getCellMatrix().getValue(row, 0)?.t);
    expect(types).toEqual([CellValueType.NUMBER, CellValueType.NUMBER]);
    const looks = [1, 2, 3].map((row) => page.sheet.getComposedCellStyle(row, 0)?.n?.pattern);
    expect(looks).toEqual([undefined, "0%", "0.00%"]);
    expect(said).toEqual(["A5 (8 g) and 1 more cell stayed text: type a plain number there, such as 12.5 or 12.5%."]);
    await page.run(UndoCommand.id, {});
    expect(values(7)).toEqual(LOADS);
  });

  it("takes digits in groups with spaces and a real minus sign, but no telephone number", async () => {
    const texts = ["Weight", "1 250", "\u22125", "-12 500.5", "\u22127.5 %", "12 34", "+49 171 250"];
    await convert(texts, { startRow: 0, endRow: 6, startColumn: 0, endColumn: 0 });
    expect(values(7)).toEqual(["Weight", 1250, -5, -12500.5, -0.075, "12 34", "+49 171 250"]);
  });

  it("does so in a whole column, and says nothing where nothing is left", async () => {
    await convert(["Load", "8 %", "12"], { startRow: Number.NaN, endRow: Number.NaN, startColumn: 0, endColumn: 0 });
    expect(values(3)).toEqual(["Load", 0.08, 12]);
    expect(said).toEqual([]);
  });
});
