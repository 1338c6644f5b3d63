import { describe, expect, it } from "vitest";
import type { Reads } from "../../../src/runsheet/tables/headings/field";
import { textForNumber } from "../../../src/runsheet/tables/textForNumber";
import { wantedIn } from "../../../src/runsheet/tables/wanted";

const said = (text: string, reads: Reads, heading: string) => textForNumber(text, wantedIn(reads, heading, "g"));
const SIGN = ", with the decimal sign of your spreadsheet";

describe("a text where a number is to stand", () => {
  // One avoirdupois ounce is 28.349523125 g and one pound 453.59237 g: NIST SP 811, table B.8.
  it.each<[string, Reads, string, string]>([
    ["236 g", "weight", "Fill (g)", "236; the unit stands in the heading"],
    ["236grams", "weight", "Fill (g)", "236; the unit stands in the heading"],
    ["236 g", "weight", "Fill", "236; g is the unit here"],
    ["3 oz", "weight", "Fill (g)", "85.0486, that is 3 oz in g; the heading says g"],
    ["3 oz", "weight", "Fill", "85.0486, that is 3 oz in g; g is the unit here"],
    ["1 lb 4 oz", "weight", "Fill (g)", "566.99, that is 1 lb 4 oz in g; the heading says g"],
    ["1 lb, 4 oz", "weight", "Fill (g)", ""],
    ["1 lb 4 oz", "weight", "Fill (lb)", "1.25, that is 1 lb 4 oz in lb; the heading says lb"],
    ["12 kg", "amount", "On hand (g)", "12000, that is 12 kg in g; the heading says g"],
    ["-200 g", "amount", "Change (g)", "-200; the unit stands in the heading"],
    ["12 pcs", "count", "Quantity", "12, without words"],
    ["20 jars", "amount", "On hand (g)", "20, without words"],
    ["2 dozen", "count", "Quantity", ""],
    ["5 packs", "amount", "On hand", ""],
    ["8,0 %", "share", "Load", "8%"],
    ["8,5 %", "share", "Load", `8.5%${SIGN}`],
    ["70,5 %", "parts", "Share", `70.5%${SIGN}`],
    ["0,86", "factor", "Wax factor", `0.86${SIGN}`],
    ["9,50 €", "money", "Paid", `9.5${SIGN}, without the currency`],
    ["$9.50", "money", "Paid", "9.5, without the currency"],
    ["12 EUR", "money", "Paid", "12, without the currency"],
    ["12 per kg", "money", "Unit price", ""],
    ["7.5 cm", "length", "Inside width (mm)", "75, that is 7.5 cm in mm; the heading says mm"],
    ["75 mm", "length", "Inside width", ""],
    ["90 min", "time", "Minutes", "90; minutes is the unit here"],
    ["1 h 30 min", "time", "Minutes", "90, that is 1 h 30 min in minutes; minutes is the unit here"],
    ["2 weeks", "days", "Cure days", "14, that is 2 weeks in days; days is the unit here"],
    ["much", "weight", "Fill (g)", ""],
    ["about 236 g", "weight", "Fill (g)", ""],
    ["200-236 g", "weight", "Fill (g)", ""],
    ["1/2 oz", "weight", "Fill (oz)", ""],
    ["½ oz", "weight", "Fill (oz)", ""],
    ["236 g", "weight", "Water (ml)", ""],
  ])("%s of %s below %s", (text, reads, heading, write) => {
    const rest = write === "" ? "is not a number; write a plain number" : `is text: write ${write}`;
    expect(said(text, reads, heading)).toBe(`"${text}" ${rest}`);
  });

  // The signs for thousands and decimals that countries use: ISO 80000-1, 7.3, takes either as the decimal one.
  it.each([
    ["1.250,5", `1250.5${SIGN}`],
    ["1,250.5", `1250.5${SIGN}`],
    ["1 250,5", `1250.5${SIGN}`],
    ["1'250.5", "1250.5"],
    ["1\u00a0250", "1250"],
    ["1,250,000", "1250000"],
    ["1,250", `1250 or 1.25${SIGN}`],
    ["0,250", `0.25${SIGN}`],
    ["12,5", `12.5${SIGN}`],
    ["1.250 g", "1.25 or 1250; the unit stands in the heading"],
    ["1.250,5 g", `1250.5${SIGN}; the unit stands in the heading`],
    ["1,250 kg", "1250000 or 1250, that is 1,250 kg in g; the heading says g"],
    ["1,25,0", ""],
    ["1 25", ""],
    ["1.2.3", ""],
    ["9999999999999999 g", ""],
  ])("reads %s in every way that it may be meant, and names them", (text, write) => {
    const rest = write === "" ? "is not a number; write a plain number" : `is text: write ${write}`;
    expect(said(text, "weight", "Fill (g)")).toBe(`"${text}" ${rest}`);
  });

  it("reads nothing out of a long text, of which only the beginning is shown", () => {
    const long = `236 g${" ".repeat(40)}and more`;
    expect(said(long, "weight", "Fill (g)")).toBe(`"${long.slice(0, 40)}" is not a number; write a plain number`);
  });

  it.each<[string, Reads, string]>([
    ["250 ml", "weight", "a volume and not a weight; weigh it, or use POUR.FILLBYVOLUME"],
    ["2 cups", "amount", "a volume and not a weight; weigh it, or use POUR.FILLBYVOLUME"],
    ["12 oz", "count", "a weight; write how many"],
    ["12 g", "share", "a weight; write a share such as 6%"],
  ])("says of %s as a %s what it is", (text, reads, what) => {
    expect(said(text, reads, "Heading")).toBe(`"${text}" is ${what}`);
  });

  it.each(["12", "8%", "0.86", ".5", "1.250"])("names the way to make %s a number", (text) => {
    expect(said(text, "weight", "Fill (g)")).toBe(
      `"${text}" is kept as text; choose "Text to Number" in the menu of the cell, in Excel "Convert to Number", or type it again`,
    );
  });
});
