import { describe, expect, it } from "vitest";
import { dayOfIso, isoOfDay } from "../../../src/core/label/isoDay";

describe("days as ISO 8601 writes them", () => {
  it.each([
    [36_526, "2000-01-01"], // Excel's serial of 1 January 2000
    [39_448, "2008-01-01"], // the example of Microsoft's help for DATE serials
    [45_351, "2024-02-29"],
    [46_352, "2026-11-26"],
  ])("serial %d is %s", (serial, text) => {
    expect(isoOfDay(serial)).toBe(text);
    expect(isoOfDay(serial + 0.999)).toBe(text);
    expect(dayOfIso(text)).toBe(serial);
  });

  it.each([
    ["2026-02-30"], // no day in March
    ["2026-13-01"],
    ["2026-11-26-01"],
    ["12026-11-26"],
    ["2026-1-26"],
    ["2026-11-2"],
    ["26-11-26"],
    ["lot of 2026-11-26"],
    ["2026-11-26T08:00"],
    ["26.11.2026"],
    ["SOY-01-02"],
    [""],
  ])("%s is no such day", (text) => {
    expect(dayOfIso(text)).toBe(undefined);
  });
});
