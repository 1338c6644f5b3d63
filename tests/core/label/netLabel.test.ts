import { describe, expect, it } from "vitest";
import { netLabel } from "../../../src/core/label/netLabel";
import { cases } from "../../cases";

// All weights in micrograms: whole numbers for every weight and factor here, so each comparison is exact.
const GRAM = 1_000_000;
const HUNDREDTH_OUNCE = 283_495; // 16 CFR 500.19(a): an ounce is 28.3495 g on a label, and nothing else

const FORM = /^Net Wt (?:([1-9]\d*) lb)? ?(?:(0|[1-9]|1[0-5])(\.\d?[1-9])? oz)? \(([1-9]\d*|0)(\.\d?[1-9])? (g|kg)\)$/;

/** A label's two declarations in hundredths of an ounce and in micrograms. */
function declared(label: string): { hundredths: number; micrograms: number } {
  const match = FORM.exec(label);
  if (!match) throw new Error(`not of the form of a label: ${label}`);
  const [, pounds = "0", ounces = "0", part = ".", whole = "", fraction = ".", unit] = match;
  const places = (digits: string, count: number) => Number(digits.slice(1).padEnd(count, "0"));
  const thousandths = Number(whole) * 1000 + places(fraction, 3);
  return {
    hundredths: Number(pounds) * 1600 + Number(ounces) * 100 + places(part, 2),
    micrograms: thousandths * (unit === "kg" ? GRAM : GRAM / 1000),
  };
}

/** The step a metric declaration goes in: three digits, whole grams, tenths below ten. */
function step(micrograms: number): number {
  if (micrograms < 10 * GRAM) return GRAM / 10;
  if (micrograms < 1_000 * GRAM) return GRAM;
  return micrograms < 10_000 * GRAM ? 10 * GRAM : 100 * GRAM;
}

/** Whether a label says in both units no more than there is, and not a step less. */
function isRight(micrograms: number, label: string): boolean {
  const { hundredths, micrograms: metric } = declared(label);
  const ounces = hundredths * HUNDREDTH_OUNCE;
  return (
    ounces <= micrograms &&
    ounces + HUNDREDTH_OUNCE > micrograms &&
    metric <= micrograms &&
    metric + step(micrograms) > micrograms
  );
}

const all = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);

describe("netLabel", () => {
  it("never overstates in either unit, nor understates by a step, from 1 g to 20 kg in tenths of a gram", () => {
    const tried = all(10, 200_000).filter((tenths) => tenths % cases(7, 1) === 0);
    const wrong = tried.filter((tenths) => {
      const grams = tenths / 10;
      const label = netLabel(grams, "g");
      const isSame =
        netLabel(grams / 1000, "kg") === label && `(${netLabel(grams, "g", "metric")})` === label.split(/ (?=\()/)[1];
      return !isSame || !isRight(tenths * (GRAM / 10), label);
    });
    expect(wrong).toEqual([]);
  });

  it("keeps ounces as they are weighed, to 44 lb in hundredths of an ounce", () => {
    const wrong = all(4, 70_400).filter((hundredths) => {
      const label = netLabel(hundredths / 100, "oz");
      return declared(label).hundredths !== hundredths || !isRight(hundredths * HUNDREDTH_OUNCE, label);
    });
    expect(wrong).toEqual([]);
  });

  it("takes pounds as 16 ounces", () => {
    for (const pounds of all(1, 44)) expect(netLabel(pounds, "lb")).toBe(netLabel(pounds * 16, "oz"));
  });

  it.each([
    [8, "oz", "Net Wt 8 oz (226 g)"], // 8 oz is 226.796 g: 226 g is safe (NIST)
    [226.796, "g", "Net Wt 8 oz (226 g)"],
    [226.7, "g", "Net Wt 7.99 oz (226 g)"],
    [21, "oz", "Net Wt 1 lb 5 oz (595 g)"], // whole pounds and the remainder: 16 CFR 500
    [1, "lb", "Net Wt 1 lb (453 g)"], // 16 CFR 500.19(a): 453.592 g
    [0.5, "oz", "Net Wt 0.5 oz (14 g)"],
    [1.25, "lb", "Net Wt 1 lb 4 oz (566 g)"],
    [1.5, "kg", "Net Wt 3 lb 4.91 oz (1.5 kg)"],
    [999.9, "g", "Net Wt 2 lb 3.27 oz (999 g)"],
    [5.27, "g", "Net Wt 0.18 oz (5.2 g)"],
  ])("declares %d %s as %s", (weight, unit, label) => {
    expect(netLabel(weight, unit)).toBe(label);
  });

  it.each([
    [226.796, "g", "226 g"],
    [1239, "g", "1.23 kg"],
    [12_390, "g", "12.3 kg"],
    [8, "oz", "226 g"],
    [0.1, "g", "0.1 g"],
  ])("declares %d %s as %s in metric units alone", (weight, unit, label) => {
    expect(netLabel(weight, unit, "Metric")).toBe(label);
  });

  it("takes noise of binary fractions for no ounce less", () => {
    // A weight worked out from others may lack a few of its last digits; twelve of them count.
    expect(netLabel(8 - 1e-12, "oz")).toBe("Net Wt 8 oz (226 g)");
    expect(netLabel(1000 - 1e-10, "g", "metric")).toBe("1 kg");
    expect(netLabel(8 - 1e-9, "oz")).toBe("Net Wt 7.99 oz (226 g)");
  });

  it("refuses what it cannot declare", () => {
    expect(() => netLabel(0, "g")).toThrow("weight: 0 is not above 0");
    expect(() => netLabel(0.28, "g")).toThrow("weight: 0.28 g is too little to declare");
    expect(() => netLabel(0.09, "g", "metric")).toThrow("too little");
    expect(() => netLabel(8, "floz")).toThrow('unit: "floz" is a volume; write g, kg, oz or lb');
    expect(() => netLabel(8, "oz", "uk")).toThrow('style: "uk" is not known here; write us or metric');
  });
});
