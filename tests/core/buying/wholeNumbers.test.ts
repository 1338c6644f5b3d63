import fc from "fast-check";
import { expect, it } from "vitest";
import { wholeNumbers } from "../../../src/core/buying/wholeNumbers";

it("wholeNumbers keeps every number to 15 digits", () => {
  const number = fc.double({ min: 0, max: 1e30, noNaN: true });
  fc.assert(
    fc.property(fc.array(number, { maxLength: 5 }), (values) => {
      const { wholes, exponent } = wholeNumbers(values);
      expect(wholes.map((value) => Number(`${value}e${exponent}`))).toEqual(
        values.map((value) => Number(value.toPrecision(15))),
      );
    }),
  );
});

it("wholeNumbers brings decimals to one power of ten", () => {
  const { wholes } = wholeNumbers([12.25, 0.25, 0.1 + 0.2]);
  expect([wholes[0], wholes[2]].map((value) => Number(value) / Number(wholes[1]))).toEqual([49, 1.2]);
});
