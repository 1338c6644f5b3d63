import { describe, expect, it } from "vitest";
import { readTemperature } from "../../../src/runsheet/tables/readTemperature";
import type { CellValue } from "../../../src/sheet/sheet";
import { HEADINGS, type ScentedRun, scentedRun } from "./scentedRun";

const BLEND: CellValue[][] = [
  ["Wax", 1, "part", null],
  ["Fir", 0.04, "of wax", "scent"],
  ["Moss", 0.02, "of wax", "scent"],
];

/** What is said of safety. */
const texts = (given: ScentedRun): string[] =>
  scentedRun(given)
    .problems.filter((one) => one.safety)
    .map(({ text }) => text);

describe("a temperature as makers write it", () => {
  it.each([
    // 65 C, 70 C by the words; 149 F and 200 F by (F - 32) / 1.8.
    ["65", "Pour at (C)", 65, 65],
    ["65", "Pour at (°C)", 65, 65],
    ["65", "Pour temp °C", 65, 65],
    ["65-70", "Pour at (C)", 65, 70],
    ["65 to 70", "Pour at (C)", 65, 70],
    ["65–70", "Pour at (C)", 65, 70],
    ["between 65 and 70 °C", "Pour at", 65, 70],
    ["about 65", "Pour at (C)", 65, 65],
    ["65,5", "Pour at (C)", 65.5, 65.5],
    ["65 C", "Pour at (F)", 65, 65],
    ["149F", "Pour at (C)", 65, 65],
    ["149 F (65 C)", "Pour at", 65, 65],
    ["149", "Pour at (deg F)", 65, 65],
    ["> 93", "Flash point (C)", 93, Number.POSITIVE_INFINITY],
    [">93 C", "Flash point", 93, Number.POSITIVE_INFINITY],
    ["93+ C closed cup", "Flash point", 93, Number.POSITIVE_INFINITY],
    ["< 60 C", "Flash point", Number.NEGATIVE_INFINITY, 60],
    ["-5", "Flash point (C)", -5, -5],
  ])("%s under %s", (text, heading, least, most) => {
    const read = readTemperature(text, heading);
    expect(read?.doubt).toBeUndefined();
    expect(read?.least).toBeCloseTo(least, 9);
    expect(read?.most).toBeCloseTo(most, 9);
  });

  it.each([
    ["warm", "Pour at (C)", "no number"],
    ["65", "Pour at", "no unit C or F"],
    ["65", "Pour at (C or F)", "no unit C or F"],
    ["340 K", "Pour at (C)", "more than a temperature"],
    ["65 then 60", "Pour at (C)", "more than a temperature"],
    ["not over 65", "Pour at (C)", "more than a temperature"],
  ])("%s under %s is in doubt", (text, heading, doubt) => {
    expect(readTemperature(text, heading)?.doubt).toBe(doubt);
  });
});

describe("the flash point", () => {
  const hot = (add: CellValue, pour: CellValue, flash: CellValue, headings = HEADINGS) =>
    texts({ headings, scents: [["Forest", 0.1, 0.1, add, pour, flash]] });

  it("is compared with adding and pouring", () => {
    expect(hot(65, 60, 93)).toEqual([]);
    expect(hot(75, 60, 75)[0]).toContain("Forest: added at 75 C, at or above the flash point, 75 C; keep below it");
    expect(hot(70, 80, 75)[0]).toContain("Forest: poured at 80 C, at or above");
    expect(hot(85, 80, 75)[0]).toContain("Forest: added at 85 C, poured at 80 C, at or above");
    expect(hot(null, "70-76", 75)).toHaveLength(1);
    expect(hot(null, 76, "75-80")).toHaveLength(1);
    // 170 F are 76.7 C, 190 F are 87.8 C.
    expect(hot(85, null, "170 F")).toHaveLength(1);
    expect(hot(85, null, "190F")).toEqual([]);
    expect(hot(85, null, "> 93")).toEqual([]);
    expect(hot(95, null, "> 93")).toHaveLength(1);
  });

  it("is said to be not compared where it is not known, or cannot be read", () => {
    expect(hot(65, 60, null)).toEqual(["Forest: flash point not known: not compared"]);
    expect(hot(null, null, null)).toEqual([
      "Forest: flash point not known, nor the temperatures of adding and pouring: not compared",
    ]);
    const unknown = "Forest: temperature of adding not known: not compared with the flash point, 93 C";
    expect(hot(null, null, 93)).toEqual([unknown]);
    expect(hot(null, 60, 93)).toEqual([unknown]);
    expect(hot(65, null, 93)).toEqual([]);
    expect(hot("warm", 60, 93)).toEqual(['Forest: added at "warm" (no number): not compared']);
    expect(hot(65, null, "high")).toEqual(['Forest: flash point "high" (no number): not compared']);
    expect(hot("> 65", null, 93)).toEqual(['Forest: added at "> 65 C" (no highest value): not compared']);
    expect(hot(50, null, "< 60")).toEqual(['Forest: flash point "< 60 C" (no lowest value): not compared']);
    const bare = [...HEADINGS.slice(0, 4), "Pour at", "Flash point"];
    expect(hot(null, 60, 93, bare)).toEqual([
      'Forest: flash point "93" (no unit C or F), poured at "60" (no unit C or F): not compared',
    ]);
  });

  it("is reached by a temperature without a unit where it would be in C and in F alike", () => {
    const bare = ["Scent", "Wax maximum", "Product limit", "Add at", "Pour at", "Flash point (F)"];
    // 180 F are 82.2 C and 149 F are 65 C; 140 would be above in C and below in F. By (F - 32) / 1.8.
    expect(hot(180, null, 149, bare)).toEqual([
      "Forest: added at 180, in C and in F alike at or above the flash point, 149 F; keep below it, or follow the supplier's documents",
    ]);
    expect(hot(140, null, 149, bare)).toEqual(['Forest: added at "140" (no unit C or F): not compared']);
    expect(hot(180, 140, 149, bare)).toEqual([
      "Forest: added at 180, in C and in F alike at or above the flash point, 149 F; keep below it, or follow the supplier's documents",
      'Forest: poured at "140" (no unit C or F): not compared',
    ]);
    // A flash point of 93, in C or in F, lies below 95 C.
    const flashBare = [...HEADINGS.slice(0, 5), "Flash point"];
    expect(hot(95, null, 93, flashBare)).toHaveLength(1);
    expect(hot(95, null, 93, flashBare)[0]).toContain("added at 95 C, in C and in F alike at or above");
    expect(hot(85, null, 93, flashBare)).toEqual(['Forest: flash point "93" (no unit C or F): not compared']);
    // Both without a unit may be in two units.
    expect(hot(180, null, 149, [...bare.slice(0, 5), "Flash point"])[0]).toContain("not compared");
  });

  it("is said once to be unknown for all scents of which no temperature is known either", () => {
    const rows = ["Forest", "Fig"].map((scent): CellValue[] => ["Tin", 10, 106, scent, 0.06, "of wax"]);
    const said = (headings: readonly string[], ...more: CellValue[]) =>
      texts({
        rows,
        headings,
        scents: [
          ["Forest", 0.1, 0.1, ...more],
          ["Fig", 0.1, 0.1],
        ],
      });
    expect(said(HEADINGS)).toEqual([
      "Forest and Fig: flash point not known, nor the temperatures of adding and pouring: not compared",
    ]);
    // A table without a column for it is asked nothing, but where a row says that the wax is heated.
    const none = [...HEADINGS.slice(0, 5), ""];
    expect(said(none)).toEqual([]);
    expect(said([...none, "Melt at (C)"], null, null, null, 85)).toEqual([
      "Forest: flash point not known, nor the temperatures of adding and pouring: not compared",
    ]);
    expect(said([...HEADINGS, "Melt at (C)"], null, null, null, 85)).toHaveLength(1);
    // What is said of one is not said of it again.
    expect(said(HEADINGS, 65)).toEqual([
      "Forest: flash point not known: not compared",
      "Fig: flash point not known, nor the temperatures of adding and pouring: not compared",
    ]);
  });

  it("is the lowest of a blend and its oils", () => {
    const scents = (moss: CellValue) => [
      ["Forest", 0.1, 0.1, 75, 60, 93],
      ["Fir", null, 0.1, null, null, 90],
      ["Moss", null, 0.1, null, null, moss],
    ];
    expect(texts({ recipe: BLEND, scents: scents(80) })).toEqual([]);
    expect(texts({ recipe: BLEND, scents: scents(70) })[0]).toContain(
      "added at 75 C, at or above the flash point of Moss, 70 C",
    );
    expect(texts({ recipe: BLEND, scents: scents(null) })).toEqual([
      "Forest: flash point of Moss not known: not compared",
    ]);
  });
});
