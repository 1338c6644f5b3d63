import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { call, cell, down, messageOf, type Value } from "./built";

describe("FILLWEIGHT", () => {
  it("fills 215 where water weighed 250", () => {
    // Common practice, no source: a soy-type container wax fills about 0.86 of the water; worked by hand.
    expect(cell("FILLWEIGHT", 250)).toBeCloseTo(215, 12);
  });
  it("refuses a factor above 2 and says what may have been meant", () => {
    expect(messageOf(cell("FILLWEIGHT", 100, 86))).toBe(
      "waxFactor: 86 is not above 0 and at most 2; write 0.86 if 86 % was meant",
    );
    expect(messageOf(cell("FILLWEIGHT", 100, 0))).toContain("wax is near 0.86");
  });
});

describe("WATERVOLUME", () => {
  // kg/m3, Tanaka et al. 2001 (CIPM); 997.047021671824 at 25 C is the formula's own published check.
  const tanaka: [number, number, number][] = [
    [0, 999.8428, 1e-4],
    [4, 999.9749, 1e-4],
    [10, 999.7027, 1e-4],
    [15, 999.1026, 1e-4],
    [20, 998.2067, 1e-4],
    [25, 997.047021671824, 1e-11],
    [30, 995.6488, 1e-4],
    [35, 994.0326, 1e-4],
    [40, 992.2152, 1e-4],
  ];
  it.each(tanaka)("at %d C water weighs %d kg in a cubic metre", (temperature, density, within) => {
    const litres = cell("WATERVOLUME", 1, "kg", "l", temperature) as number;
    expect(Math.abs(1000 / litres - density)).toBeLessThan(within * 0.6);
  });

  it("agrees with Kell 1975 within 3.3e-6 g/mL (to two digits) from 0 to 40 C", () => {
    // Kell 1975, J. Chem. Eng. Data 20, as cited at second hand.
    const kell = (t: number) =>
      (999.83952 +
        16.945176 * t -
        7.9870401e-3 * t ** 2 -
        46.170461e-6 * t ** 3 +
        105.56302e-9 * t ** 4 -
        280.54253e-12 * t ** 5) /
      (1 + 16.87985e-3 * t) /
      1000;
    for (let t = 0; t <= 40; t += 0.5) {
      const density = 1 / (cell("WATERVOLUME", 1, "g", "ml", t) as number);
      expect(Math.abs(density - kell(t))).toBeLessThan(3.35e-6);
    }
  });

  it("knows that a fluid ounce of water is not an ounce", () => {
    // 1 US fl oz of water at 20 C weighs 1.0413 oz: computed from 231 in3 a gallon and Tanaka's density.
    expect(1 / (cell("WATERVOLUME", 1, "oz", "floz") as number)).toBeCloseTo(1.0413, 4);
  });

  it("takes Fahrenheit, and 20 C when no temperature is given, whatever the unit", () => {
    // 60 F: 999.0170 kg/m3 by Tanaka et al. 2001.
    expect(1000 / (cell("WATERVOLUME", 1, "kg", "l", 60, "F") as number)).toBeCloseTo(999.017, 3);
    expect(cell("WATERVOLUME", 100, "g", "ml", null, "F")).toBe(cell("WATERVOLUME", 100, "g", "ml", 20, "C"));
  });

  it("refuses what it cannot know", () => {
    expect(messageOf(cell("WATERVOLUME", 100, "g", "ml", 41))).toContain("0 to 40 C");
    expect(messageOf(cell("WATERVOLUME", 100, "stone"))).toBe(
      'weightUnit: "stone" is not known here; write g, kg, oz or lb',
    );
    expect(messageOf(cell("WATERVOLUME", 100, null))).toBe("weightUnit: nothing is given; write g, kg, oz or lb");
    expect(messageOf(cell("WATERVOLUME", 100, "g", "oz"))).toBe(
      'volumeUnit: "oz" is a weight; write ml, l, floz, in3 or cm3; a fluid ounce is floz',
    );
    expect(messageOf(cell("FILLBYVOLUME", 1, "gal", "g"))).toBe(
      'volumeUnit: "gal" is not worked out here; write ml, l, floz, in3 or cm3',
    );
    expect(messageOf(cell("WATERVOLUME", 100, "g", "ml", null, "K"))).toContain("temperatureUnit");
  });
});

describe("units", () => {
  it.each([
    // Weights and Measures Act 1985 (UK), Schedule 1 Part V: lb = 453.59237 g, oz = lb / 16.
    ["lb", 453.59237],
    ["oz", 28.349523125],
    ["kg", 1000],
    ["g", 1],
    ["OZ", 28.349523125],
    ["Ounces", 28.349523125],
    ["lbs.", 453.59237],
    ["Kilos", 1000],
    ["gr", 1],
  ])("a weight of 1 %s is %d g", (unit, grams) => {
    expect(cell("FILLBYVOLUME", grams, "ml", unit, 1)).toBeCloseTo(1, 12);
  });
  it.each([
    // 16 CFR 500.19: inch = 2.54 cm; the US gallon is 231 in3 (second-hand) and 128 fluid ounces.
    ["in3", 16.387064],
    ["floz", 29.5735295625],
    ["Fl. Oz.", 29.5735295625],
    ["fluid ounces", 29.5735295625],
    ["cu in", 16.387064],
    ["Litres", 1000],
    ["cm3", 1],
    ["l", 1000],
  ])("a volume of 1 %s is %d mL", (unit, millilitres) => {
    expect(cell("FILLBYVOLUME", 1, unit, "g", 1)).toBeCloseTo(millilitres, 10);
  });
});

describe("VESSELVOLUME", () => {
  it("is the solid geometry of each shape", () => {
    expect(cell("VESSELVOLUME", "round", 8, 10, "cm")).toBeCloseTo(Math.PI * 16 * 10, 10); // cylinder
    expect(cell("VESSELVOLUME", "round", 6, 9, "cm", 0)).toBeCloseTo((Math.PI * 9 * 9) / 3, 10); // cone
    expect(cell("VESSELVOLUME", "box", 7, 9, "cm")).toBeCloseTo(441, 12);
    expect(cell("VESSELVOLUME", "bowl", 10, 5, "cm")).toBeCloseTo((2 / 3) * Math.PI * 125, 10); // half a ball
    // An ellipse is a circle of 6 drawn out to 8; a regular hexagon is six triangles with a height of half its flats.
    expect(cell("VESSELVOLUME", "oval", 8, 10, "cm", 6)).toBeCloseTo(Math.PI * 3 ** 2 * (8 / 6) * 10, 10);
    expect(cell("VESSELVOLUME", "oval", 8, 10, "cm", 8)).toBeCloseTo(Math.PI * 16 * 10, 10);
    const side = 8 / Math.sqrt(3);
    expect(cell("VESSELVOLUME", "hexagon", 8, 10, "cm")).toBeCloseTo(6 * ((side * 4) / 2) * 10, 10);
  });
  it("a frustum is a cone less its tip", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 30, noNaN: true }),
        (foot, h) => {
          const frustum = cell("VESSELVOLUME", "round", foot, h, "cm", 2 * foot) as number;
          const cone = (width: number, height: number) => (Math.PI * width ** 2 * height) / 12;
          expect(frustum).toBeCloseTo(cone(2 * foot, 2 * h) - cone(foot, h), 6);
        },
      ),
    );
  });
  it("converts both units", () => {
    expect(cell("VESSELVOLUME", "box", 1, 1, "in", 1, "in3")).toBeCloseTo(1, 12);
    expect(cell("VESSELVOLUME", "box", 100, 100, "mm", 100, "l")).toBeCloseTo(1, 12);
  });
  it("takes no unit for granted", () => {
    expect(messageOf(cell("VESSELVOLUME", "box", 8, 10))).toBe("lengthUnit: nothing is given; write mm, cm or in");
    expect(messageOf(cell("VESSELVOLUME", "box", 8, 10, 6))).toContain('lengthUnit: "6" is not known here');
  });
  it("names a shape it does not know, and a measure too many or too few", () => {
    expect(messageOf(cell("VESSELVOLUME", "heart", 8, 10, "cm"))).toBe(
      'shape: "heart" is not known here; write round, box, oval, hexagon or bowl',
    );
    expect(messageOf(cell("VESSELVOLUME", "bowl", 8, 4, "cm", 3))).toContain("second: a bowl has no second measure");
    expect(messageOf(cell("VESSELVOLUME", "hexagon", 8, 4, "cm", 3))).toContain("second: a hexagon has no second");
    expect(messageOf(cell("VESSELVOLUME", "oval", 8, 4, "cm"))).toContain("second: an oval has two axes");
  });
});

describe("WAXFACTOR and WAXFACTORSPREAD", () => {
  // NIST StRD NoInt2: 0.727272727272727, standard error 0.0420827318078432.
  it("agrees with NIST StRD NoInt2 to 12 digits, whatever the scale", () => {
    for (const by of [1, 1e9, 1e-9]) {
      const [water, poured] = [
        [4, 5, 6],
        [3, 4, 4],
      ].map((values) => down(...values.map((value) => value * by))) as [Value[][], Value[][]];
      expect(cell("WAXFACTOR", water, poured) as number).toBeCloseTo(0.727272727272727, 12);
      const spread = cell("WAXFACTORSPREAD", water, poured) as number;
      const t = 0.95 / Math.sqrt(2 * 0.975 * 0.025); // closed form for 2 degrees of freedom
      expect(spread / t).toBeCloseTo(0.0420827318078432, 12);
    }
  });
  // That no wax weighs less than 0.6 or more than 1.1 of its water: common practice, no source.
  it("refuses weights that no wax has, and asks for order and unit", () => {
    for (const id of ["WAXFACTOR", "WAXFACTORSPREAD"]) {
      expect(messageOf(cell(id, down(172, 258), down(200, 300)))).toBe(
        "row 1 of the range: poured: 200 of wax beside 172 of water is a factor of 1.163, and waxes lie between 0.6 and 1.1; give the water first, then the wax, both in one unit and without the vessel",
      );
      expect(messageOf(cell(id, down(8.8, 8.9), down(215, 216)))).toContain("both in one unit");
      // Grams beside kilograms: the number itself says nothing any more.
      expect(messageOf(cell(id, down(0.2, 0.3), down(172, 258)))).toContain("is a factor over 100, and");
      // One pour weighed with its vessel among good ones.
      expect(messageOf(cell(id, down(200, 300, 250), down(172, 258, 415)))).toContain(
        "row 3 of the range: poured: 415",
      );
    }
    expect(cell("WAXFACTOR", 100, 60)).toBe(0.6);
    expect(cell("WAXFACTOR", 100, 110)).toBeCloseTo(1.1, 14);
    expect(messageOf(cell("WAXFACTOR", 100, 59.9))).toContain("factor of 0.599");
  });
  it("leaves out rows with a blank", () => {
    expect(cell("WAXFACTOR", down(100, 150, 200), down(86, null, 172))).toBeCloseTo(0.86, 14);
    expect(cell("WAXFACTOR", down(100, null, 200), down(86, 500, 172))).toBeCloseTo(0.86, 14);
  });
  it("pairs a block with a block of its own shape, and with a row or a column", () => {
    // Twelve cells each: three rows of two beside two rows of three would pair the wrong pours.
    const water = [
      [100, 200],
      [300, 400],
      [500, 600],
    ];
    const poured = water.map((row) => row.map((weight) => weight * 0.86));
    const wide = [poured.flat().slice(0, 3), poured.flat().slice(3)];
    expect(cell("WAXFACTOR", water, poured)).toBeCloseTo(0.86, 14);
    expect(cell("WAXFACTOR", water, down(...poured.flat()))).toBeCloseTo(0.86, 14);
    expect(cell("WAXFACTOR", water, [poured.flat()])).toBeCloseTo(0.86, 14);
    expect(messageOf(cell("WAXFACTOR", water, wide))).toBe("poured: 2 rows beside 3; give ranges of the same shape");
  });
  it("has no answer without enough pours, and says how many there are", () => {
    expect(messageOf(cell("WAXFACTOR", down(100), down(null)), "#N/A")).toContain("at least 1");
    expect(messageOf(cell("WAXFACTORSPREAD", down(100, 90), down(86, null)), "#N/A")).toContain("at least 2");
  });
  it("wants ranges of one size, and weights above 0", () => {
    expect(messageOf(cell("WAXFACTOR", down(100, 110, 120), down(86, 90)))).toContain("same size");
    expect(messageOf(cell("WAXFACTOR", down(100, 110), down(86, 0)))).toContain("row 2 of the range: poured: 0");
    expect(messageOf(cell("WAXFACTOR", down(200, 300), 172))).toContain("same size");
    expect(cell("WAXFACTOR", [[200, 300]], down(172, 258))).toBeCloseTo(0.86, 14);
    expect(messageOf(cell("WAXFACTOR", down(200, 300), down(172, "x")))).toContain(
      'row 2 of the range: poured: "x" is text',
    );
  });
});

describe("BLENDFACTOR", () => {
  it("adds volumes", () => {
    // 50 wt% of 0.998 and 1.834 gives 1.2926: computed from ideal mixing, 1/rho = sum(w/rho).
    expect(cell("BLENDFACTOR", 0.998, 1.834, 0.5, "of total")).toBeCloseTo(1.2926, 4);
    const [[light], [heavy]] = call("BLENDFACTOR", down(0.86, 0.9), 1, 0) as [[number], [number]];
    expect(light).toBeCloseTo(0.86, 14);
    expect(heavy).toBeCloseTo(0.9, 14);
  });
  it("names the basis it does not know", () => {
    expect(messageOf(cell("BLENDFACTOR", 0.86, 1, 0.06, "wax"))).toContain('basis: "wax"');
  });
});
