import { describe, expect, it } from "vitest";
import { call, down, messageOf, registered, type Value } from "./built";

const work = (id: string, ...args: unknown[]): Value[][] => registered.get(id)?.(...args) ?? [];

describe("cells, however a host hands them over", () => {
  it("are a range, a list or a bare value, and nothing at all is a blank cell", () => {
    // By hand: 100 and 200 of water at the usual factor of 0.86.
    expect(work("FILLWEIGHT", [[100], [200]])).toEqual(down(86, 172));
    expect(work("FILLWEIGHT", [100, 200])).toEqual(down(86, 172));
    expect(work("FILLWEIGHT", 100)).toEqual([[86]]);
    for (const nothing of [[], [[]], null, [[null]]]) expect(work("FILLWEIGHT", nothing)).toEqual([[""]]);
  });

  it("lie down or across, and go with single cells and with each other", () => {
    expect(call("FILLWEIGHT", [[100, 200]], 0.5)).toEqual([[50, 100]]);
    expect(call("SCENTSPLIT", [[106, 212]], 0.06)).toEqual([[100, 6, 200, 12]]);
    expect(call("SCENTSPLIT", [[106], [212]], [[0.06, 0]])).toEqual([
      [100, 6, 106, 0],
      [200, 12, 212, 0],
    ]);
  });

  it("that are no value a cell can be worked with are named, and all others work", () => {
    const rows = call("FILLWEIGHT", down(100, {}, true, "x", 200));
    expect([rows[0]?.[0], rows[4]?.[0]]).toEqual([86, 172]);
    expect([1, 2, 3].map((row) => messageOf(rows[row]?.[0]))).toEqual([
      "water: this kind of cell is not a number; write a plain number",
      "water: TRUE is not a number; write a plain number",
      'water: "x" is text; write a plain number',
    ]);
    const units = call("WATERVOLUME", 250, down("g", {}, 5));
    expect(typeof units[0]?.[0]).toBe("number");
    expect(messageOf(units[1]?.[0])).toBe("weightUnit: this kind of cell cannot be read; write plain text");
    expect(messageOf(units[2]?.[0])).toMatch(/^weightUnit: "?5"? /);
  });
});
