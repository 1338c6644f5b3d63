import { expect, it } from "vitest";
import { dottedDate } from "../../../src/host/univer/dottedDates";

it.each([
  ["5.4.2026", "2026-04-05"],
  ["25.04.2026", "2026-04-25"],
  ["5.4.26", "2026-04-05"],
  [" 29.2.2028 ", "2028-02-29"],
])("reads %s with the day first", (typed, date) => {
  expect(dottedDate(typed)).toBe(date);
});

it.each(["29.2.2026", "5.13.2026", "31.4.2026", "5.4", "1.234", "5/4/2026", "1.2.3.4", "5.4.202", ""])(
  "leaves %s as it is",
  (typed) => {
    expect(dottedDate(typed)).toBeNull();
  },
);
