import { describe, expect, it } from "vitest";
import { call, messageOf, metadata, type Value } from "./built";

/** Arguments that are right, all that there are: the documented examples and their like. */
const RIGHT: readonly [id: string, ...given: (Value | Value[][])[]][] = [
  ["FILLWEIGHT", 250, 0.86],
  ["WATERVOLUME", 250, "g", "ml", 20, "C"],
  ["FILLBYVOLUME", 250, "ml", "g", 0.86],
  ["VESSELVOLUME", "box", 7, 9, "cm", 6, "ml"],
  ["BLENDFACTOR", 0.9, 0.95, 0.06],
  ["SCENTSPLIT", 318, 0.06, "of wax", 1],
  ["WAXPART", 212, 0.06, "of total", 1],
  ["SCENTPART", 212, 0.06, "of wax", 1],
  ["LOADAS", 0.25, "of wax", "of total"],
  ["LOADFROM", 300, 18, "of wax"],
  ["LOADCHECK", 0.06, 0.08, 0.1, "of wax"],
  ["WEIGHERROR", 20, 1],
  ["UNITPRICE", 12, 5, "kg", "g"],
  ["ASKPRICE", 4, 0.5, 0.1, 0.3],
  ["MARGINOF", 12, 4, 0.1, 0.3],
  ["BREAKEVEN", 500, 12, 4, 0.1, 0.3],
  ["PACKPLAN", 12, 5, 10],
  ["PACKCOST", 12, 5, 10],
  ["BURNHOURS", 200, 5, 0.1],
  ["POOLHOURS", 3, "in"],
  ["FLAMECHECK", 80, "mm", "container"],
  ["POOLCHECK", 2, 3, 3, "in"],
  ["NETLABEL", 8, "oz", "us"],
  ["LOTCODE", 46_352, 2],
];

describe("a refusal", () => {
  it.each(RIGHT)("of %s names the argument that is wrong", (id, ...given) => {
    const parameters = metadata.functions.find((one) => one.id === id)?.parameters ?? [];
    for (const value of call(id, ...given).flat()) expect(typeof value).not.toBe("object");
    for (const [i, value] of given.entries()) {
      // A number that cannot be, words, and what is no value at all, such as a picture in a cell.
      for (const slip of [...(typeof value === "number" ? [-300] : []), "nonsense", {}]) {
        const wrong = given.map((one, place) => (place === i ? slip : one));
        expect(messageOf(call(id, ...wrong)[0]?.[0])).toMatch(
          new RegExp(`^(row 1 of the range: )?${parameters[i]?.name}: `),
        );
      }
    }
  });
});
