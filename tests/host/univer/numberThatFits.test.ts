import { expect, it } from "vitest";
import { numberThatFits, shownNumber } from "../../../src/host/univer/numberThatFits";

/** Each sign as wide as another. */
const shownIn = (text: string, isPlain: boolean, room: number) =>
  numberThatFits(text, isPlain, room, (one) => one.length);

it.each<[string, boolean, number, string]>([
  ["1250.75", false, 7, "1250.75"],
  ["1250.75", false, 6, "######"],
  ["1250.75", true, 6, "1250.8"],
  ["1250.75", true, 5, "1251"],
  ["1250.75", true, 3, "###"],
  ["-0.3333333333333333", true, 5, "-0.33"],
  ["0.0004", true, 4, "####"],
  ["2026-11-25", false, 4, "####"],
  ["1e+21", true, 3, "###"],
  ["7", false, 0, "#"],
])("%s (without a format: %s) in room for %s signs shows as %s", (text, isPlain, room, shown) => {
  expect(shownIn(text, isPlain, room)).toBe(shown);
});

it("tells numbers from texts that look like them", () => {
  expect(shownNumber({ v: 1250 })).toBe("plain");
  expect(shownNumber({ v: "1,250.00", t: 2 })).toBe("formatted");
  expect(shownNumber({ v: "1250", t: 1 })).toBeUndefined();
  expect(shownNumber({ v: 1, t: 3 })).toBeUndefined();
  expect(shownNumber(null)).toBeUndefined();
});
