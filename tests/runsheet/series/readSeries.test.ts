import { describe, expect, it } from "vitest";
import { readSeries, seriesOf } from "../../../src/runsheet/series/readSeries";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { TableRows } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";
import { engineSum } from "../../core/burn/engineSum";

const TESTS = ["Test", "Vessel", "Inside width (mm)", "Wick", "Wax", "Scent", "Load"];
const LOOKS = [
  "Test",
  "Cycle",
  "Minutes",
  "Weight (g)",
  "Flame (mm)",
  "Pool (mm)",
  "Wax left (mm)",
  "Soot",
  "Glass (C)",
];

const tableOf = <K extends TableTypeId>(type: K, headings: string[], rows: CellValue[][]) =>
  ({ type, headings, rows, columns: matchColumns(type, headings) }) as TableRows<K>;

/** Two cycles of a candle that loses so much an hour, 5 g being about 1.5 mm of it, with a change to its readings. All invented. */
function burn(
  test: string,
  rate: number,
  change: Record<number, Partial<Record<string, CellValue>>> = {},
): CellValue[][] {
  return [1, 2].flatMap((cycle) =>
    [0, 60, 120, 180, 240].map((minutes, i): CellValue[] => {
      const hours = (cycle - 1) * 4 + minutes / 60;
      const ends = minutes === 0 || minutes === 240;
      const usual: Record<string, CellValue> = {
        ...{ Test: test, Cycle: cycle, Minutes: minutes, "Weight (g)": ends ? 400 - rate * hours : null },
        ...(minutes > 0 && { "Flame (mm)": 20 + i, "Pool (mm)": [0, 25, 50, 70, 70][i] as number }),
        ...(minutes === 240 && { "Wax left (mm)": cycle === 2 ? 10 : 16, Soot: "none", "Glass (C)": 45 }),
      };
      const all = { ...usual, ...change[(cycle - 1) * 5 + i] };
      return LOOKS.map((heading) => all[heading] ?? null);
    }),
  );
}

function seen(candles: readonly (readonly [test: string, wick: string, rows: CellValue[][]])[], fill?: number) {
  const rows = candles.map(([test, wick]): CellValue[] => [test, "Bowl", 70, wick, "Soft wax", "Rain", 0.06]);
  const tests = readTable(tableOf("burnTests", TESTS, rows), "g") ?? new Map();
  const looks = candles.flatMap(([, , own]) => own);
  const readings = readTable(tableOf("readings", LOOKS, looks), "g") ?? new Map();
  return { tests, wicks: seriesOf(tests).map((series) => readSeries(series, readings, fill)) };
}

const GOOD = [
  ["A", "Size 6", burn("A", 5)],
  ["B", "Size 6", burn("B", 5.4)],
  ["C", "Size 6", burn("C", 4.9)],
] as const;

describe("reading a series", () => {
  it("gives the rates of a wick as a spreadsheet engine works them out from the weighings", () => {
    const [[wick] = []] = seen(GOOD).wicks;
    // SLOPE of each candle's four weighings over the hours burnt, then mean and Student's interval of the three.
    const slopes = [5, 5.4, 4.9].map((rate) =>
      engineSum(`=-SLOPE({${[0, 4, 4, 8].map((h) => 400 - rate * h).join(";")}},{0;4;4;8})`),
    );
    expect(wick?.candles.map(({ rate }) => rate)).toEqual(slopes.map((slope) => expect.closeTo(slope, 10)));
    const three = `{${slopes.join(";")}}`;
    expect(wick?.rate?.mean).toBeCloseTo(engineSum(`=AVERAGE(${three})`), 10);
    const half = engineSum(`=CONFIDENCE.T(0.05,STDEV.S(${three}),3)`);
    expect(wick?.rate?.interval?.[0]).toBeCloseTo((wick?.rate?.mean ?? 0) - half, 8);
    expect(wick?.rate?.interval?.[1]).toBeCloseTo((wick?.rate?.mean ?? 0) + half, 8);
    expect(wick).toMatchObject({ flame: 24, judged: 3, passed: 3 });
    expect(wick?.candles[0]?.hours).toBe(8);
  });

  it("says what was seen in how many, what is still possible, and what would make it surer", () => {
    const [[wick] = []] = seen(GOOD).wicks;
    // 1 - 0.05^(1/3) is 63.2 %, 1 - 0.05^(1/6) 39.3 %: at most, so rounded up.
    expect(wick?.verdict).toBe(
      "nothing beyond the limits seen in 3 of 3; a fault in up to 64 % of all is still possible (95 % confidence)",
    );
    expect(wick?.surer).toBe("3 more candles of Size 6: if none shows a fault, up to 40 % could still have one");
    const [[two] = []] = seen(GOOD.slice(0, 2)).wicks;
    expect(two?.surer).toBe("1 more candle of Size 6: if none shows a fault, up to 64 % could still have one");
  });

  it("says what was beyond, and in which candle, however many passed", () => {
    const high = burn("D", 5, { 3: { "Flame (mm)": 80 } });
    const [[wick] = []] = seen([...GOOD, ["D", "size 6", high]]).wicks;
    expect(wick).toMatchObject({ judged: 4, passed: 3 });
    expect(wick?.verdict).toMatch(/^beyond the limits in 1 of 4: D, cycle 1 at 180 min: flame 80 mm high/);
    expect(wick?.surer).toContain("another wick");
  });

  it("says nothing of candles that are not burnt down, and takes empty rows for looks not yet taken", () => {
    const planned = burn("E", 5).map(([test, cycle, minutes]) => [test, cycle, minutes, ...Array(6).fill(null)]);
    const half = [
      ...burn("F", 5).slice(0, 5),
      ...planned.slice(5).map((row) => ["F", ...row.slice(1)]),
    ] as CellValue[][];
    const [[wick] = []] = seen([
      ["E", "Size 8", planned as CellValue[][]],
      ["F", "Size 8", half],
    ]).wicks;
    expect(wick).toMatchObject({ judged: 0, passed: 0 });
    expect(wick?.candles.map(({ rate, hours }) => [rate, hours])).toEqual([
      [undefined, 0],
      [expect.closeTo(5, 10), 4],
    ]);
    expect(wick?.verdict).toBe("nothing can be said yet: E, nothing is read yet; burn a first cycle");
    expect(wick?.candles[1]?.lacks).toEqual(["16 mm of wax left; burn down to 10 mm"]);
    expect(wick?.surer).toBe(
      "finish 2 candles, then 1 more candle of Size 8: if none shows a fault, up to 64 % could still have one",
    );
  });

  it.each([
    [{ Cycle: null, "Flame (mm)": 95 }, "a reading lacks its cycle or its minutes"],
    [{ Cycle: "two", "Flame (mm)": 95 }, 'Cycle: "two" is not a number'],
    [{ Minutes: "1h30", "Flame (mm)": 95 }, 'Minutes: "1h30" is not a number'],
    [{ Minutes: 1 / 24 }, "Minutes: 0.0416666666667 is a clock time"],
    [{ "Flame (mm)": "9,5" }, 'Flame: "9,5" is text: write 9.5'],
  ])("passes no candle of which something cannot be read: %j", (change, words) => {
    const [[wick] = []] = seen([["A", "Size 6", burn("A", 5, { 2: change })]]).wicks;
    expect(wick?.passed).toBe(0);
    expect(wick?.verdict).toContain(words);
  });

  it("looks at a pool before or behind the rule of thumb without failing the candle for it", () => {
    const [[wick] = []] = seen([...GOOD.slice(0, 2), ["C", "Size 6", burn("C", 5, { 1: { "Pool (mm)": 12 } })]]).wicks;
    expect(wick).toMatchObject({ judged: 3, passed: 3 });
    expect(wick?.verdict).toMatch(/in 3 of 3;.*; to look at in 1: C, cycle 1 at 60 min: pool behind: 12 mm/);
  });

  it("passes no candle with a flame of 0 or a vessel colder than a lit one, and fails none for them", () => {
    const odd = burn("C", 5, { 2: { "Flame (mm)": 0 }, 4: { "Glass (C)": 18 }, 5: { "Glass (C)": 18 } });
    const [[wick] = []] = seen([...GOOD.slice(0, 2), ["C", "Size 6", odd]]).wicks;
    expect(wick).toMatchObject({ judged: 2, passed: 2 });
    // Before it was lit a vessel may be as cold as its room.
    expect(wick?.candles[2]).toMatchObject({
      beyond: [],
      lacks: [
        "cycle 1 at 120 min: no flame (0 mm): out or drowned?",
        "cycle 1 at 240 min: cold glass, 18 C, below 30 C: is its unit right?",
      ],
    });
    expect(wick?.verdict).toContain("; C is not finished: cycle 1 at 120 min: no flame (0 mm): out or drowned?");
  });

  it("asks where the weights do not agree with the wax that is left", () => {
    // 8 h at 4.9 to 5.4 g/h are 39.2 to 43.2 g: of 203 g a fifth, of 50 g 78 to 86 %, of 36 g up to 120 %.
    const asked = (fill: number) => seen(GOOD, fill).wicks[0]?.[0]?.contradictions ?? [];
    expect(asked(203)).toEqual([
      "with 10 mm of wax left only about 19 % of the fill had burnt by the weights: check the wax left",
    ]);
    expect(asked(50)).toEqual([]);
    expect(asked(36)).toEqual([
      "by the weights about 120 % of the fill had burnt: check them, and the fill of the vessel",
    ]);
    expect(seen(GOOD, 203).wicks[0]?.[0]?.verdict).toMatch(
      /\(95 % confidence\); with 10 mm of wax left only about 19 %/,
    );
    // Half of what it holds, or less: 39.2 g of 78 and of 79 g.
    expect(asked(78)).toEqual([]);
    expect(asked(79)[0]).toMatch(/only about 50 % of the fill/);
    // 8 h at 4.5 g/h are 22.5 % of 160 g, rounded as on a sheet.
    const tie = seen([["A", "Size 6", burn("A", 4.5)]], 160).wicks[0]?.[0];
    expect(tie?.contradictions[0]).toContain("about 23 %");
    // One of three, read as burnt down after its first cycle and weighed on to the end of its second one.
    const early = burn("C", 5, { 4: { "Wax left (mm)": 10 }, 9: { "Wax left (mm)": 9 } });
    const one = seen([...GOOD.slice(0, 2), ["C", "Size 6", early]], 42).wicks[0]?.[0];
    expect(one?.contradictions).toEqual([
      "with 10 mm of wax left only about 48 % of the fill had burnt by the weights: check the wax left",
    ]);
    const late = seen([...GOOD.slice(0, 2), ["C", "Size 6", early]], 38).wicks[0]?.[0];
    expect(late?.contradictions.at(-1)).toBe(
      "by the weights about 114 % of the fill had burnt: check them, and the fill of the vessel",
    );
    expect(asked(0)).toEqual([]);
  });

  it("names the two weighings of which one is wrong, but not what a scale may be out between two cycles", () => {
    const swapped = burn("A", 5, { 4: { "Weight (g)": 360 }, 9: { "Weight (g)": 380 } });
    const [[wick] = []] = seen([["A", "Size 6", swapped]]).wicks;
    expect(wick?.candles[0]).toMatchObject({ rate: undefined });
    expect(wick?.candles[0]?.lacks).toEqual([
      "its weight rises from 360 (cycle 1 at 240 min) to 380 (cycle 2 at 240 min); check both",
    ]);
    // 380 g at the end of the first cycle, 380.1 g before the second.
    const [[scale] = []] = seen([["A", "Size 6", burn("A", 5, { 5: { "Weight (g)": 380.1 } })]]).wicks;
    expect(scale?.candles[0]).toMatchObject({ lacks: [], rate: expect.closeTo(5, 1) });
  });

  it("compares only candles that have all but the wick in common", () => {
    const tests = readTable(
      tableOf("burnTests", TESTS, [
        ["A", "Bowl", 70, "6", "Soft wax", "Rain", 0.06],
        ["B", "bowl ", 70, "8", "soft wax", "Rain", 0.06],
        ["C", "Bowl", 70, "6", "Hard wax", "Rain", 0.06],
        ["D", "Bowl", 70, "6", "Soft wax", "Rain", 0.07],
      ]),
      "g",
    );
    expect(seriesOf(tests ?? new Map()).map((series) => series.map(({ test }) => test))).toEqual([
      ["A", "B"],
      ["C"],
      ["D"],
    ]);
  });
});
