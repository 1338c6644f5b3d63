import { describe, expect, it } from "vitest";
import { Fault } from "../../../src/core/fault";
import { celsius } from "../../../src/core/units/celsius";
import { checkedUnit } from "../../../src/core/units/checkedUnit";
import {
  lengthUnitOf,
  temperatureUnitOf,
  unitKindOf,
  unitOf,
  unitsInWords,
  weightUnitOf,
} from "../../../src/core/units/spellings";
import { unitRatio } from "../../../src/core/units/unitRatio";

describe("unitRatio", () => {
  it("is how many of one unit another is", () => {
    // A pound is 16 oz; the inch is 2.54 cm (16 CFR 500.19); a cubic inch its cube.
    expect(unitRatio("from", "lb", "to", "oz")).toBe(16);
    expect(unitRatio("from", "in", "to", "mm")).toBeCloseTo(25.4, 12);
    expect(unitRatio("from", "in3", "to", "ml")).toBeCloseTo(2.54 ** 3, 12);
  });
  it("says what is wrong with the two", () => {
    expect(() => unitRatio("from", " oz", "to", "floz ")).toThrow(
      new Fault("value", "to", "floz is a volume and oz a weight; write two units of one kind"),
    );
    const all = "g, kg, oz, lb, ml, l, floz, in3, cm3, mm, cm or in";
    expect(() => unitRatio("from", "C", "to", "F")).toThrow(
      new Fault("value", "from", `"C" is not known here; write ${all}`),
    );
    expect(() => unitRatio("from", "g", "to", "x".repeat(50))).toThrow(
      new Fault("value", "to", `"${"x".repeat(40)}" is not known here; write ${all}`),
    );
  });
});

describe("units as people spell them", () => {
  const volumeUnitOf = (text: string) => unitOf("volume", text);
  // English spellings, symbols and plurals: common practice, no source.
  it.each([
    [weightUnitOf, "g", "g G gr gm Gram GRAMS grammes g."],
    [weightUnitOf, "kg", "kg KG Kgs kilo kilos kilograms"],
    [weightUnitOf, "oz", "oz OZ oz. ozs ounce Ounces"],
    [weightUnitOf, "lb", "lb LB lbs Lbs. pound pounds"],
    [volumeUnitOf, "ml", "ml mL ML mls millilitre milliliters"],
    [volumeUnitOf, "l", "l L litre Liters"],
    [volumeUnitOf, "floz", "floz fl_oz fl.oz. Fl-Oz fluid_ounce fluid_ounces US_fl_oz"],
    [volumeUnitOf, "in3", "in3 in^3 in³ cu_in cubic_inches"],
    [volumeUnitOf, "cm3", "cm3 cm³ cc cu_cm"],
    [lengthUnitOf, "mm", "mm MM millimetres millimeter"],
    [lengthUnitOf, "cm", "cm Cm centimetre centimeters"],
    [lengthUnitOf, "in", 'in IN in. inch Inches "'],
    [temperatureUnitOf, "C", "C c °C deg_C Celsius degrees_celsius"],
    [temperatureUnitOf, "F", "F f °F deg._F fahrenheit"],
  ] as const)("%o reads %s", (unitOf, unit, spellings) => {
    for (const spelling of spellings.split(" ")) {
      expect(unitOf(` ${spelling.replaceAll("_", " ")}`), spelling).toBe(unit);
    }
  });

  it("spell no two units of one kind alike, nor a unit of another kind", () => {
    for (const text of ["", "x", "toString", "stone", "m", "ft", "K", "pieces"])
      expect(unitKindOf(text)).toBe(undefined);
    expect(weightUnitOf("floz")).toBe(undefined);
    expect(volumeUnitOf("oz")).toBe(undefined);
    expect(["g", "floz", "inch", "°F"].map(unitKindOf)).toEqual(["weight", "volume", "length", "temperature"]);
    // Other volumes, as cooks and shops write them: common practice, no source.
    const others = "cl dl teaspoon Tablespoons tsp tbsps cup pt pint qts quart gal gals gallon US_gallons imp_pint";
    for (const text of others.split(" ")) expect(unitKindOf(text.replace("_", " ")), text).toBe("volume");
    for (const text of ["mcl", "clx", "gallonage"]) expect(unitKindOf(text), text).toBe(undefined);
    // A US gallon is 231 cubic inches, an imperial one 4546.09 mL (from memory): a volume, but which?
    expect(["gal", "Pints", "cups", "cl"].map(unitKindOf)).toEqual(["volume", "volume", "volume", "volume"]);
    expect(["gal", "Pints", "cups"].map(volumeUnitOf)).toEqual([undefined, undefined, undefined]);
  });

  it("say what to write where a unit is not known", () => {
    expect(unitsInWords("length")).toBe("mm, cm or in");
    expect(() => checkedUnit("length", "lengthUnit", "m")).toThrow(
      'lengthUnit: "m" is not known here; write mm, cm or in',
    );
    expect(() => checkedUnit("weight", "unit", "fl oz")).toThrow('unit: "fl oz" is a volume; write g, kg, oz or lb');
    expect(() => checkedUnit("volume", "volumeUnit", "oz")).toThrow(
      'volumeUnit: "oz" is a weight; write ml, l, floz, in3 or cm3; a fluid ounce is floz',
    );
    expect(() => checkedUnit("volume", "volumeUnit", "kg")).toThrow(/cm3$/);
    expect(() => checkedUnit("length", "lengthUnit", "oz")).toThrow('lengthUnit: "oz" is a weight; write mm, cm or in');
    expect(() => checkedUnit("weight", "unit", "x".repeat(50))).toThrow(`unit: "${"x".repeat(40)}" is not known here`);
    expect(() => celsius(20, "temperatureUnit", "K")).toThrow('temperatureUnit: "K" is not known here; write C or F');
  });
});
