import { expect } from "vitest";
import { DOUBT } from "../../../src/core/burn/openings";
import { type Calculated, calculate } from "../../../src/engine/calculate";
import type { SeenWick } from "../../../src/runsheet/series/readSeries";
import { readSeries, seriesOf } from "../../../src/runsheet/series/readSeries";
import { seenSheet } from "../../../src/runsheet/series/seenSheet";
import type { Standing } from "../../../src/runsheet/series/seriesAdditions";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import type { Cell, CellValue, Sheet } from "../../../src/sheet/sheet";
import { metadataText, script } from "../../functions/built";

/** A series worked out on its sheet, and held to what its readings show without it. */

/** All invented. Lengths in other units than the sheet's, hours for minutes, names as they are typed. */
export const TESTS = [
  "Test",
  "Vessel",
  "Inside width (cm)",
  "Wick",
  "Wax",
  "Scent",
  "Load (% of wax)",
  "Cure days",
  "Product",
];
export const LOOKS = [
  ...["Test", "Cycle", "Burn time (h)", "Weight (kg)", "Flame (mm)", "Pool (in)", "Wax left (cm)", "Soot"],
  ...["Glass temperature (F)", "Throw", "Remarks"],
];

export const candle = (test: CellValue, wick: CellValue, change: Record<number, CellValue> = {}): CellValue[] =>
  [test, "Bowl", 7, wick, "Soft wax", "Rain", 0.06, 14, null].map((value, i) => change[i] ?? value);

interface Burnt {
  readonly rate: number;
  readonly flame?: number;
  readonly soot?: CellValue;
  /** Degrees Fahrenheit. */
  readonly glass?: number;
  readonly pools?: readonly number[];
  /** Cycles that were burnt, and those that have rows. */
  readonly cycles?: number;
  readonly rows?: number;
  readonly left?: number;
}

export function burnt(test: CellValue, how: Burnt): CellValue[][] {
  const {
    rate,
    flame = 31,
    soot = "none",
    glass = 113,
    pools = [25, 50, 70, 70],
    cycles = 2,
    rows = 2,
    left = 1,
  } = how;
  return Array.from({ length: rows }, (_, c) =>
    [0, 1, 2, 3, 4].map((hour): CellValue[] => {
      if (c >= cycles) return [test, c + 1, hour, null, null, null, null, null, null, null, null];
      const weight = hour === 0 || hour === 4 ? (400 - rate * (4 * c + hour)) / 1000 : null;
      if (hour === 0) return [test, c + 1, 0, weight, null, null, null, null, null, null, null];
      const ends = hour === 4;
      return [
        ...[test, c + 1, hour, weight, flame, (pools[hour - 1] as number) / 25.4],
        ...[
          // 5 g an hour are about 6 mm in four hours, in a vessel of 7 cm.
          ends ? left + 0.6 * (cycles - 1 - c) : null,
          ends ? soot : null,
          ends ? glass : null,
          hour === 3 ? 4 : null,
          null,
        ],
      ];
    }),
  ).flat();
}

export function tableOn<K extends "burnTests" | "readings">(
  type: K,
  name: string,
  headings: string[],
  rows: CellValue[][],
) {
  return { type, name, headings, rows, columns: matchColumns(type, headings) } as unknown as Standing<K>;
}

/** @param shown the headings as they stand there, where they were changed: formulas follow the columns all the same */
function sheetOf(sheet: string, table: string, headings: string[], rows: CellValue[][], shown = headings): Sheet {
  const cells = [shown, ...rows].flatMap((row, r) =>
    row.flatMap((value, column): Cell[] => {
      if (value === null || value === "" || typeof value === "object") return [];
      return [{ row: r, column, content: typeof value === "number" ? { number: value } : { text: String(value) } }];
    }),
  );
  return { name: sheet, widths: [], cells, tables: [{ name: table, row: 0, column: 0, headings, rows: rows.length }] };
}

export const SETTINGS = { unit: "g", paper: "a4", today: 46352 } as const;

/** The sheet worked out, and what the readings say by themselves. */
export async function worked(
  { tests, looks }: { tests: CellValue[][]; looks: CellValue[][] },
  written = { tests, looks },
  fill: number | undefined = 180,
  shown = { tests: TESTS, looks: LOOKS },
) {
  const read = (rows: CellValue[][]) => readTable(tableOn("burnTests", "Burns", TESTS, rows), "g") ?? new Map();
  const readings = readTable(tableOn("readings", "Looks", LOOKS, looks), "g") ?? new Map();
  const [first = []] = seriesOf(read(written.tests));
  const [now = []] = seriesOf(read(tests));
  const sheet = seenSheet(
    { name: "Bowl", tests: first, wicks: new Set(first.map(({ wick }) => wick.toLowerCase())).size, fill },
    {
      burnTests: tableOn("burnTests", "Burns", TESTS, written.tests),
      readings: tableOn("readings", "Looks", LOOKS, written.looks),
    },
    SETTINGS,
  );
  const [, , values = []] = await calculate(
    [
      sheetOf("Tests", "Burns", TESTS, tests, shown.tests),
      sheetOf("Readings", "Looks", LOOKS, looks, shown.looks),
      sheet,
    ],
    { script, metadata: metadataText },
  );
  return { sheet, values, wicks: readSeries(now, readings, fill) };
}

/** The rows below a heading, up to the first without a name. */
export function below(values: readonly Calculated[][], heading: string): Calculated[][] {
  const at = values.findIndex(([first]) => first === heading);
  const rows = values.slice(at + 1);
  const end = rows.findIndex(([first]) => !first);
  return end < 0 ? rows : rows.slice(0, end);
}
const figures = (row: Calculated[], from: number, to: number) => row.slice(from, to).map((value) => value ?? "");
const near = (value: number | undefined) => (value === undefined ? "" : expect.closeTo(value, 9));

export function expectSame(values: Calculated[][], wicks: readonly SeenWick[]) {
  expectWicks(values, wicks);
  expectVerdicts(values, wicks);
  const candles = wicks.flatMap((one) => one.candles);
  const byCandle = new Map(below(values, "By candle").map((row) => [row[0], row]));
  const words = new Map(below(values, "Candle").map((row) => [row[0], String(row[1])]));
  expect(byCandle.size).toBe(candles.length);
  for (const one of candles) {
    expectCandle(byCandle.get(one.test.test) as Calculated[], one);
    const said = words.get(one.test.test) ?? "";
    for (const finding of [...one.beyond, ...one.remarks]) expect(said).toContain(asOnSheet(finding));
    // One that is beyond the limits is asked nothing more.
    for (const doubt of one.beyond.length > 0 ? [] : one.lacks.filter(isDoubt))
      expect(said).toContain(asOnSheet(doubt));
  }
}

const isDoubt = (lack: string): boolean => Object.values(DOUBT).some((one) => lack.includes(` min: ${one}`));

/** Heat stands on the sheet in the unit of its column, in the pane in C: what is said of it is compared without. */
const asOnSheet = (finding: string): string =>
  /^.*(glass temperature|cold glass, )(?=.* C, )/.exec(finding)?.[0] ?? finding;

function expectWicks(values: Calculated[][], wicks: readonly SeenWick[]) {
  const byWick = below(values, "By wick");
  expect(byWick.map(([wick]) => wick)).toEqual(wicks.map(({ wick }) => wick.trim()));
  for (const [i, one] of wicks.entries()) {
    const { rate, flame, judged, passed, candles, bound, pools, life, alike } = one;
    const row = byWick[i] as Calculated[];
    expect(figures(row, 2, 7), String(row[0])).toEqual([
      // Whole percents, never more than it is.
      near(bound === undefined ? undefined : Math.floor(bound * 100) / 100),
      ...[near(rate?.mean), near(rate?.interval?.[0]), near(rate?.interval?.[1]), near(flame)],
    ]);
    const open = candles.length - judged;
    expect(row[1]).toBe(
      `${judged === 0 ? "none finished" : `${passed} of ${judged}`}${open > 0 ? `, ${open} open` : ""}`,
    );
    expect(figures(row, 7, 11)).toEqual(poolWords(pools));
    expect(row[11] === "not read").toBe(one.soot.length === 0);
    expect(row[12]).toEqual(one.throw ? near(one.throw.mean) : "not read");
    expect(row[13]).toBe(lifeWords(life));
    expect(row[22] || "").toBe(alike.join(" and "));
  }
}

function poolWords(pools: SeenWick["pools"]): string[] {
  const percent = (share: number) => Math.round(Number((share * 100).toPrecision(12)));
  return [1, 2, 3, 4].map((hour) => {
    const pool = pools.find((one) => one.hour === hour);
    if (!pool) return "";
    const [from, to] = [percent(pool.least), percent(pool.most)];
    return from === to ? `${from} %` : `${from} to ${to} %`;
  });
}

/** As a spreadsheet shows them: a half goes up, of what is left without the noise of the arithmetic. */
const tenths = (value: number): string => (Math.round(Number((value * 10).toPrecision(12))) / 10).toFixed(1);

function lifeWords(life: SeenWick["life"]): string {
  if (!life) return "not known";
  const interval = life.interval ? ` (${tenths(life.interval[0])} to ${tenths(life.interval[1])})` : "";
  return `${tenths(life.mean)} h${interval}, ${life.by === "burnt" ? "burnt" : "by rate"}`;
}

/** What comes first in a verdict, to the candle that it names: what is said of that one is put in other words. */
const HEAD =
  /^(beyond the limits in \d+ of \d+: .+?, |nothing can be said yet: .+?, |nothing beyond .* \(95 % confidence\)(; to look at in \d+: .+?, )?)/;

function expectVerdicts(values: Calculated[][], wicks: readonly SeenWick[]) {
  const at = values.findIndex(([first]) => first === "Wick") + 1;
  for (const [i, { wick, verdict, surer, contradictions }] of wicks.entries()) {
    const [name, said] = values[at + 2 * i] ?? [];
    expect(name).toBe(wick.trim());
    const head = HEAD.exec(verdict)?.[0];
    expect(head, verdict).toBeDefined();
    expect(String(said).slice(0, head?.length)).toBe(head);
    for (const asked of contradictions) expect(said).toContain(`; ${asked}`);
    expect(values[at + 2 * i + 1]?.[1]).toBe(`To be surer: ${surer}`);
  }
}

function expectCandle(row: Calculated[], one: SeenWick["candles"][number]) {
  const { test, rate, hours, flame, end, soot, throws, beyond, lacks, remarks, notes } = one;
  expect(figures(row, 2, 7), test.test).toEqual([
    ...[near(hours), near(rate), near(end), near(test.width), near(flame)],
  ]);
  expect(row[11] || "", test.test).toBe([...new Set(soot)].join(", "));
  expect(row[12] ?? "", test.test).toEqual(
    throws.length > 0 ? near(throws.reduce((sum, score) => sum + score, 0) / throws.length) : "",
  );
  expect(row[13], test.test).toBe(
    (beyond.length > 0 ? "beyond the limits" : lacks.length > 0 ? "not finished" : "nothing beyond") +
      (notes.length > 0 ? "; remarks" : ""),
  );
  expect(row[16] === 1, test.test).toBe(remarks.length > 0);
}

export const errorsIn = (values: Calculated[][]) =>
  values.flatMap((row, r) =>
    row.flatMap((value, c) => (typeof value === "object" && value !== null ? [[r, c, value]] : [])),
  );
