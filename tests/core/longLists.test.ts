import { expect, it } from "vitest";
import { Fault } from "../../src/core/fault";
import { addAll, largest, least } from "../../src/core/longLists";

it("lists as long as a column of a spreadsheet have a least and a largest, and are added to others", () => {
  // Excel's 1,048,576 rows: too many arguments for one call.
  const column = Array.from({ length: 1_048_576 }, (_, i) => (i % 1000) - 500);
  expect([least(column), largest(column)]).toEqual([-500, 499]);
  const list = [7];
  addAll(list, column, [8, 9]);
  expect([list.length, list[0], list[1], list.at(-1)]).toEqual([1_048_579, 7, -500, 9]);
});

it("a fault names its argument where a single one is at fault", () => {
  expect(new Fault("value", "load", "write 6%").message).toBe("load: write 6%");
  expect(new Fault("none", "", "no pour yet").message).toBe("no pour yet");
});
