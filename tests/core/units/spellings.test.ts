import { describe, expect, it } from "vitest";
import { celsius } from "../../../src/core/units/celsius";
import { checkedUnit } from "../../../src/core/units/checkedUnit";
import {
  lengthUnitOf,
  temperatureUnitOf,
  unitKindOf,
  unitsInWords,
  volumeUnitOf,
  weightUnitOf,
} from "../../../src/core/units/spellings";

describe("units as people spell them", () => {
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
    expect(() => celsius(20, "temperatureUnit", "K")).toThrow('temperatureUnit: "K" is not known here; write C or F');
  });
});
