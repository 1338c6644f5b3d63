import { expect, it } from "vitest";
import { columnLetters, columnNumber } from "../../src/sheet/columnLetters";

const COLUMNS = [0, 25, 26, 51, 52, 701, 702, 16_383];
const LETTERS = ["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA", "XFD"];

it("names columns as spreadsheets do", () => {
  expect(COLUMNS.map(columnLetters)).toEqual(LETTERS);
});

it("finds columns by their letters, small ones too", () => {
  expect([...LETTERS, "xfd"].map(columnNumber)).toEqual([...COLUMNS, 16_383]);
});
