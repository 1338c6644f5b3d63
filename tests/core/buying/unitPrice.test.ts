import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { unitPrice } from "../../../src/core/buying/unitPrice";

const KINDS = [
  ["g", "kg", "oz", "lb"],
  ["ml", "l", "floz", "in3", "cm3"],
  ["mm", "cm", "in"],
];

describe("unitPrice", () => {
  it.each([
    [36, 2, "kg", "g", 4, 0.02],
    [453.59237, 1, "lb", "g", 0, 1], // the pound: Weights and Measures Act 1985 (UK), Sch. 1
    [32, 2, "lb", "oz", 0, 1],
    [29.5735295625, 1, "floz", "ml", 0, 1], // the US fluid ounce, 29.5735295625 mL (231 in3 a gallon)
    [2.54, 10, "cm", "in", 0, 0.64516], // the inch: 16 CFR 500.19
    [16.387064, 1, "in3", "ml", 0, 1],
  ])("%d for %d %s is, by the %s with %d for delivery, %d", (price, size, sizeUnit, perUnit, delivery, each) => {
    expect(unitPrice(price, size, sizeUnit, perUnit, delivery)).toBeCloseTo(each, 12);
  });

  it("comes to the same whatever unit the pack is given in", () => {
    const money = fc.integer({ min: 0, max: 1e8 }).map((cents) => cents / 100);
    const units = fc
      .constantFrom(...KINDS)
      .chain((units) => fc.array(fc.constantFrom(...units), { minLength: 3, maxLength: 3 }));
    fc.assert(
      fc.property(
        money,
        money,
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        units,
        (price, delivery, size, [a = "", b = "", c = ""]) => {
          const direct = unitPrice(price, size, a, c, delivery);
          const around = unitPrice(unitPrice(price, size, a, b, delivery), 1, b, c);
          expect(Math.abs(direct - around)).toBeLessThanOrEqual(1e-13 * direct);
          expect(unitPrice(price, size, a, a, delivery) * size).toBeCloseTo(price + delivery, 6);
        },
      ),
    );
  });

  it("refuses units of two kinds, and a pack of nothing", () => {
    expect(() => unitPrice(1, 1, "floz", "oz")).toThrow("perUnit: oz is a weight and floz a volume");
    expect(() => unitPrice(1, 1, "g", "stone")).toThrow('perUnit: "stone" is not known here; write g, kg, oz');
    expect(() => unitPrice(1, 0, "g", "g")).toThrow("size: 0 is not above 0");
    expect(() => unitPrice(-1, 1, "g", "g")).toThrow("price: -1 is below 0");
    expect(() => unitPrice(1, 1, "g", "g", -1)).toThrow("delivery: -1 is below 0");
  });
});
