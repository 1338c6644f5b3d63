import { beforeAll, describe, expect, it } from "vitest";
import { calculate } from "../../../src/engine/calculate";
import { seriesOf } from "../../../src/runsheet/series/readSeries";
import { seenSheet } from "../../../src/runsheet/series/seenSheet";
import type { Standing } from "../../../src/runsheet/series/seriesAdditions";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import { tableSheet } from "../../../src/sheet/tableSheet";
import { metadataText, script } from "../../functions/built";

type Rows = readonly (readonly (string | number | null)[])[];

/** All invented: two vessels with as many candles of the same two wicks, their tests in turn. */
const TESTS = ["Test", "Vessel", "Inside width (mm)", "Wick", "Wax"];
const LOOKS = [
  ...["Test", "Cycle", "Minutes", "Weight (g)", "Flame (mm)", "Pool (mm)", "Wax left (mm)", "Soot"],
  "Glass temperature (C)",
];
/** With the weight that each loses an hour, and its flame. */
const CANDLES = [
  ["B-1", "Bowl", "Size 4", 3, 20],
  ["C-1", "Cup", "Size 4", 5, 40],
  ["B-2", "Bowl", "Size 6", 4, 25],
  ["C-2", "Cup", "Size 6", 6, 50],
  ["B-3", "Bowl", "Size 4", 3.5, 21],
  ["C-3", "Cup", "Size 4", 5.5, 41],
  ["B-4", "Bowl", "Size 6", 4.5, 26],
  ["C-4", "Cup", "Size 6", 6.5, 51],
] as const;
const TEST_ROWS: Rows = CANDLES.map(([test, vessel, wick]) => [test, vessel, 70, wick, "Soft wax"]);
const looks = (changed: Readonly<Record<string, number>> = {}): Rows =>
  CANDLES.flatMap(([test, , , rate, flame]) =>
    [0, 60, 120, 180, 240].map((minutes) => {
      const weight = minutes % 240 === 0 ? 300 - (rate * minutes) / 60 : null;
      if (minutes === 0) return [test, 1, minutes, weight, null, null, null, null, null];
      const high = minutes === 60 ? (changed[test] ?? flame) : flame;
      return [test, 1, minutes, weight, high, Math.min(70, 25 * (minutes / 60)), 70 - minutes / 4, "none", 40];
    }),
  );

const tableOn = <K extends "burnTests" | "readings">(type: K, name: string, headings: string[], rows: Rows) =>
  ({ type, name, headings, rows, columns: matchColumns(type, headings) }) as unknown as Standing<K>;
const sheetOf = (name: string, table: string, headings: readonly string[], rows: Rows) =>
  tableSheet(
    { name, table, columns: headings.map((heading) => ({ heading })) },
    rows.map((row) =>
      row.map((value) => (value === null ? null : typeof value === "number" ? { number: value } : { text: value })),
    ),
  );

/** Both sheets worked out in one workbook. */
async function worked(readings: Rows) {
  const burnTests = tableOn("burnTests", "BurnTests", TESTS, TEST_ROWS);
  const standing = { burnTests, readings: tableOn("readings", "Readings", LOOKS, looks()) };
  const found = seriesOf(readTable(burnTests, "g") ?? new Map());
  const sheets = found.map((tests) =>
    seenSheet({ name: String(tests[0]?.vessel), tests, wicks: 2, fill: 180 }, standing, {
      ...{ unit: "g", paper: "a4", today: 46352 },
    }),
  );
  const [, , ...values] = await calculate(
    [sheetOf("Burn tests", "BurnTests", TESTS, TEST_ROWS), sheetOf("Readings", "Readings", LOOKS, readings), ...sheets],
    { script, metadata: metadataText },
  );
  return values.map((rows) => {
    const at = rows.findIndex(([first]) => first === "By wick");
    const own = rows.slice(at + 1).filter(([first]) => /^Size \d$/.test(String(first)));
    return own.slice(0, 2).map((row) => [row[0], row[1], row[3], row[6]]);
  });
}

describe("two sheets of series in one workbook", () => {
  let before: unknown[];
  let after: unknown[];
  beforeAll(async () => {
    [before, after] = [await worked(looks()), await worked(looks({ "C-2": 90 }))];
  });

  // By hand: 3 and 3.5 g an hour are 3.25, and so on; behind it the highest flame.
  const BOWL = [
    ["Size 4", "2 of 2", expect.closeTo(3.25, 9), 21],
    ["Size 6", "2 of 2", expect.closeTo(4.25, 9), 26],
  ];
  const CUP = [
    ["Size 4", "2 of 2", expect.closeTo(5.25, 9), 41],
    ["Size 6", "2 of 2", expect.closeTo(6.25, 9), 51],
  ];

  it("each have the figures of their own vessel", () => {
    expect(before).toEqual([BOWL, CUP]);
  });

  it("keep them where a reading of the other one changes, which follows", () => {
    expect(after).toEqual([BOWL, [CUP[0], ["Size 6", "1 of 2", expect.closeTo(6.25, 9), 90]]]);
  });
});
