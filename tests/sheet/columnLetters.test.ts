import { expect, it } from "vitest";
import { columnLetters } from "../../src/sheet/columnLetters";

it("names columns as spreadsheets do", () => {
  const columns = [0, 25, 26, 51, 52, 701, 702, 16_383];
  expect(columns.map(columnLetters)).toEqual(["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA", "XFD"]);
});
