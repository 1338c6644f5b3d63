import { describe, expect, it } from "vitest";
import { type Calculated, calculate } from "../../../src/engine/calculate";
import { buildRun } from "../../../src/runsheet/buildRun";
import { compareRuns } from "../../../src/runsheet/record/compareRuns";
import { logAddition } from "../../../src/runsheet/record/logAddition";
import { logRows } from "../../../src/runsheet/record/logRows";
import { isPoured } from "../../../src/runsheet/record/poured";
import { pourWarnings } from "../../../src/runsheet/record/pourWarnings";
import { readBack } from "../../../src/runsheet/record/readBack";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT, LIVE_MARK, LIVE_NOTE, PLAIN_MARK, PLAIN_NOTE } from "../../../src/runsheet/sheet/layout";
import { plainNumbers } from "../../../src/runsheet/sheet/plainNumbers";
import { potsIn as potsInText, potsText } from "../../../src/runsheet/tables/potsWords";
import { LOG_COLUMNS, RUNS_LOG } from "../../../src/runsheet/tables/runsLog";
import type { Cell, CellValue, Sheet } from "../../../src/sheet/sheet";
import { metadataText, script } from "../../functions/built";
import { logTable, readLog } from "./logs";
import { pouredRun, readVessels, vesselsOf } from "./poured";

const settings = { ...FIRST_SETTINGS, potCapacity: 2000, loss: 0, division: 1 };
const columns = { vessel: 0, quantity: 1, fill: 2, scent: 3, load: 4 };
const table: CellValue[][] = [
  ["Tin", 6, 106, "Cedar", 0.06],
  ["Bowl", 4, 212, "Cedar", 0.06],
  ["Plain", 5, 100, "", null],
];
const runOf = (rows: CellValue[][]) => buildRun({ pour: { type: "pour", headings: [], rows, columns } }, settings);
const sheetOf = (rows = table, live = true): Sheet =>
  describeRun(runOf(rows), { lot: "2026-330-01", date: 46352, settings: { ...settings, live } });
const valuesOf = async (sheet: Sheet): Promise<Calculated[][]> => {
  const [rows] = await calculate([sheet], { script, metadata: metadataText });
  return rows as Calculated[][];
};

/** A sheet with cells written over, as a person does. */
const writtenOn = (sheet: Sheet, cells: readonly Cell[]): Sheet => ({
  ...sheet,
  cells: [
    ...sheet.cells.filter((old) => !cells.some(({ row, column }) => row === old.row && column === old.column)),
    ...cells,
  ],
});
const number = (row: number, column: number, value: number): Cell => ({ row, column, content: { number: value } });
/** Where the first pot begins. */
const potsIn = (rows: Calculated[][]) => rows.findIndex((row) => row[AT.key] === "1 pot");
const rowOf = (rows: Calculated[][], name: string, from = potsIn(rows)) =>
  rows.findIndex((row, i) => i >= from && row[0] === name);

/** The sheet after a pour: 1400 of wax and 85 of scent weighed, 6 tins of which 5 are good, one at 107, bowls at 210. */
async function pouredSheet() {
  const sheet = sheetOf();
  const rows = await valuesOf(sheet);
  const wax = rows.findIndex((row) => row[AT.key] === "1 wax");
  const [tin, bowl] = [rowOf(rows, "Tin"), rowOf(rows, "Bowl")];
  return writtenOn(sheet, [
    number(wax, 4, 1400),
    number(wax + 1, 4, 85),
    number(tin, 4, 5),
    number(tin, 5, 107),
    number(bowl, 4, 4),
    number(bowl, 5, 210),
  ]);
}

/** A table of vessels that knows the tin, its water in this unit. */
const vesselsIn = (unit: string, water: number) =>
  readVessels({
    type: "vessels",
    headings: ["Vessel", `Water weight (${unit})`],
    rows: [["Tin", water]],
    columns: { vessel: 0, water: 1 },
  });

describe("a run sheet read back", () => {
  it("holds what was planned before anything is written on it", async () => {
    const run = readBack(await valuesOf(sheetOf()));
    expect(run).toMatchObject({ lot: "2026-330-01", date: 46352 });
    expect(run?.pots.some(isPoured)).toBe(false);
    expect(run?.pots.map(({ scent, wax, scentWeight }) => [scent, wax.planned, scentWeight.planned])).toEqual([
      ["Cedar", 1400, 84],
      ["Unscented", 500, 0],
    ]);
  });

  it("shows the actual load and the yield on the sheet itself", async () => {
    const rows = await valuesOf(await pouredSheet());
    expect(rows[rowOf(rows, "Load after rounding")]?.[AT.actual]).toBeCloseTo(85 / 1400, 12);
    const totals = rowOf(rows, "Totals", 0);
    expect(rows[rowOf(rows, "Cedar", totals)]?.[6]).toBe("9 good of 10, 90%");
    expect(rows[rowOf(rows, "Unscented", totals)]?.[6] || null).toBe(null);
    expect(rows[rowOf(rows, "Total", 0)]?.[6]).toBe("9 good of 10, 90%");
  });

  it("is found by its keys, whatever rows were put in between", async () => {
    const rows = await valuesOf(await pouredSheet());
    const at = rows.findIndex((row) => row[AT.key] === "1 scent");
    const moved = [...rows.slice(0, at), ["a note of the maker"], ["", "and more"], ...rows.slice(at)];
    // All but the numbers of the rows.
    const found = (cells: CellValue[][]) =>
      JSON.stringify(readBack(cells))
        .replace(/"row":\d+/g, "")
        .replace(/Row \d+/g, "");
    expect(found(moved as CellValue[][])).toBe(found(rows));
  });

  it("says by row what is written and cannot be", async () => {
    const sheet = await pouredSheet();
    const rows = await valuesOf(sheet);
    const wax = rows.findIndex((row) => row[AT.key] === "1 wax");
    const tin = rowOf(rows, "Tin");
    const slips = writtenOn(sheet, [
      number(wax, 4, -5),
      { row: wax + 1, column: 4, content: { text: "about 80" } },
      number(tin, 4, 40),
      number(tin, 5, 0),
    ]);
    const run = readBack(await valuesOf(slips));
    expect(run?.wrong).toEqual([
      `Row ${wax + 1}, actual weight: "-5" is no number of 0 or more; fix it or clear it`,
      `Row ${wax + 2}, actual weight: "about 80" is no number of 0 or more; fix it or clear it`,
      `Row ${tin + 1}, good candles: 40 are more than the count of 6; raise the count or fix it`,
      `Row ${tin + 1}, weight of one: "0" is no number above 0; fix it or clear it`,
    ]);
    expect(readBack(rows)?.wrong).toEqual([]);
  });

  it("says so where a name is an error, a date is no day, or a number is beyond all weights", async () => {
    const rows = await valuesOf(sheetOf(table, false));
    const wrong = (row: number, column: number, value: CellValue) => {
      const cells: CellValue[][] = rows.map((one) => [...one]);
      (cells[row] as CellValue[])[column] = value;
      return readBack(cells)?.wrong;
    };
    const tin = rowOf(rows, "Tin");
    const said = "the cell shows #N/A; write the name again";
    expect(wrong(tin, AT.name, { error: "#N/A" })).toEqual([`Row ${tin + 1}, vessel: ${said}`]);
    expect(wrong(potsIn(rows), AT.name, { error: "#N/A" })).toEqual([`Row ${potsIn(rows) + 1}, pot: ${said}`]);
    expect(wrong(1, AT.figure, 1e300)).toEqual(['Row 2, date: "1e+300" is no day; write one such as 2026-11-26']);
    expect(wrong(tin, AT.weighed, 1.7e308)).toEqual([
      `Row ${tin + 1}, weight of one: "1.7e+308" is too large; fix it or clear it`,
    ]);
  });

  it("takes no count and no fill that is none for a number", async () => {
    const sheet = await pouredSheet();
    const tin = rowOf(await valuesOf(sheet), "Tin");
    const wrong = async (column: number, content: Cell["content"]) =>
      readBack(await valuesOf(writtenOn(sheet, [{ row: tin, column, ...(content && { content }) }])))?.wrong;
    expect(await wrong(1, { number: 5.5 })).toContain(`Row ${tin + 1}, count: "5.5" is no whole number; fix it`);
    expect(await wrong(1, undefined)).toContain(`Row ${tin + 1}, count: blank is no whole number; fix it`);
    expect(await wrong(2, { text: "about 100" })).toContain(
      `Row ${tin + 1}, fill: "about 100" is no number above 0; fix it`,
    );
    // Half a candle is no candle.
    expect(await wrong(4, { number: 4.5 })).toEqual([
      `Row ${tin + 1}, good candles: "4.5" is no whole number; fix it or clear it`,
    ]);
  });

  it("knows the load its shares ask for and what the scale reads to", async () => {
    const run = readBack(await valuesOf(sheetOf()));
    expect(run?.division).toBe(1);
    expect(run?.pots.map(({ load }) => load)).toEqual(["6 % of wax", ""]);
  });

  it("is asked about where a pot was forgotten, and no more once it is written", async () => {
    const sheet = await pouredSheet();
    const rows = await valuesOf(sheet);
    const plain = rows.findIndex((row) => row[AT.key] === "2 wax");
    expect(rows[plain + 4]?.[0]).toBe("Plain");
    const warnings = async (vessels = vesselsIn("g", 125), ...cells: Cell[]) => {
      const run = readBack(await valuesOf(writtenOn(sheet, cells)));
      return run && pourWarnings(run, vessels);
    };
    expect(await warnings()).toEqual([
      "Unscented: pot 1 of 1: no actual weight, no count of good candles; write what is known",
    ]);
    const whole = [number(plain, 4, 500), number(plain + 4, 4, 5)] as const;
    expect(await warnings(vesselsIn("g", 125), ...whole)).toEqual([]);
    // 4.409 oz of water are 125 g: the heading's unit is read, so 107 is what it should be.
    expect(await warnings(vesselsIn("oz", 4.409), ...whole)).toEqual([]);
    // A volume is no weight to learn a factor from.
    expect(vesselsIn("fl oz", 4).get("tin")).toMatchObject({ water: undefined, looks: [{ severity: "warning" }] });
  });

  it("names its pots so that a table's list of them is read back, whatever the scent is called", async () => {
    const rows = table.map((row) => row.map((cell) => (cell === "Cedar" ? "Cedar; smoke" : cell)));
    const pots = readBack(await valuesOf(sheetOf(rows)))?.pots ?? [];
    expect(pots.length).toBeGreaterThan(1);
    expect(potsInText(potsText(pots))).toEqual(pots.map(({ id }) => id));
  });

  it("is nothing when the sheet is another one", () => {
    expect(readBack([["Vessels"], ["Tin", 5]])).toBeUndefined();
  });
});

describe("the runs log", () => {
  const vessels = readVessels({
    type: "vessels",
    headings: [],
    rows: [
      ["Tin", 125, 0.86],
      ["Bowl", 250, null],
    ],
    columns: { vessel: 0, water: 1, factor: 2 },
  });
  const logged = async () => {
    const run = readBack(await valuesOf(await pouredSheet()));
    if (!run) throw new Error("no run sheet");
    const rows = logRows(run, vessels);
    const headings = LOG_COLUMNS.map(({ heading }) => heading as string);
    const plainRows = rows.map((row) =>
      LOG_COLUMNS.map(({ heading }): CellValue => {
        const content = row[heading];
        if (!content) return null;
        return "text" in content ? content.text : "number" in content ? content.number : null;
      }),
    );
    return { headings, rows: plainRows };
  };

  it("has a row for each vessel and scent, whose wax and scent add up to what was weighed", async () => {
    const { headings, rows } = await logged();
    const of = (row: number, heading: string) => rows[row]?.[headings.indexOf(heading)];
    expect(rows.map((row) => row.slice(0, 5))).toEqual(
      [
        ["2026-330-01", 46352, "Cedar", "Tin", 6],
        ["2026-330-01", 46352, "Cedar", "Bowl", 4],
        ["2026-330-01", 46352, "Unscented", "Plain", 5],
      ].map((row) => expect.arrayContaining(row)),
    );
    const [tin, bowl] = [0, 1];
    expect((of(tin, "Wax actual") as number) + (of(bowl, "Wax actual") as number)).toBeCloseTo(1400, 9);
    // 6 x 106 of 6 x 106 + 4 x 212 poured: 3 parts of 7.
    expect(of(tin, "Wax actual")).toBeCloseTo((1400 * 3) / 7, 9);
    expect(of(tin, "Load as weighed (of wax)")).toBeCloseTo(85 / 1400, 12);
    expect(of(tin, "Yield")).toBeCloseTo(5 / 6, 12);
    expect(of(tin, "Wax factor shown")).toBeCloseTo(107 / 125, 12);
    expect(of(2, "Scent actual")).toBe(null);
    expect(of(2, "Good")).toBe(null);
    expect(of(2, "Wax actual")).toBe(null);
  });

  it("takes the water of a table in other units, so that the factor is one", async () => {
    const run = readBack(await valuesOf(await pouredSheet()));
    if (!run) throw new Error("no run sheet");
    // 4.409 oz x 28.349523125 g = 124.993 g.
    const [tin] = logRows(run, vesselsIn("oz", 4.409));
    expect(tin?.["Water weight"]).toEqual({ number: expect.closeTo(124.993, 3) });
    expect(tin?.["Wax factor shown"]).toEqual({ number: expect.closeTo(107 / 124.993, 5) });
  });

  it("has a row of its own for each load of a scent, with the load that was weighed in", async () => {
    const two: CellValue[][] = [
      ["Tin", 6, 106, "Cedar", 0.06],
      ["Tin", 4, 106, "Cedar", 0.08],
    ];
    const sheet = sheetOf(two);
    const rows = await valuesOf(sheet);
    const at = (key: string) => rows.findIndex((row) => row[AT.key] === key);
    const run = readBack(
      await valuesOf(
        writtenOn(sheet, [
          number(at("1 wax"), 4, 600),
          number(at("1 scent"), 4, 36),
          number(at("2 wax"), 4, 393),
          number(at("2 scent"), 4, 31),
        ]),
      ),
    );
    if (!run) throw new Error("no run sheet");
    const found = logRows(run, vessels);
    expect(found.map((row) => [row.Candles, row["Load as weighed (of wax)"]])).toEqual([
      [{ number: 6 }, { number: expect.closeTo(0.06, 12) }],
      [{ number: 4 }, { number: expect.closeTo(31 / 393, 12) }],
    ]);
    // Two first pots of one title are told apart.
    expect(found.map((row) => row.Pots)).toEqual([{ text: "Cedar: pot 1 of 1" }, { text: "Cedar: pot 1 of 1 (2)" }]);
    expect(found.map((row) => row.Remarks)).toEqual([
      { text: "Planned at 6 % of wax." },
      { text: "Planned at 8 % of wax." },
    ]);
  });

  it("says what became of the wax, and leaves a candle weighed with its vessel out of the factor", () => {
    const pots = [{ lines: [{ weighed: 98 }] }, { lines: [{ weighed: 130 }] }];
    const [row] = logRows(pouredRun(pots), vesselsOf(["Tin", 120, 0.85]));
    // 2060 / 2280 - 1.
    expect(row?.["Loss shown"]).toEqual({ number: expect.closeTo(2060 / 2280 - 1, 12) });
    expect(row?.["Weighed each"]).toEqual({ number: 98 });
    expect(row?.["Wax factor shown"]).toEqual({ number: expect.closeTo(98 / 120, 12) });
    // Melted 2 x 1030, poured 10 x 98 + 10 x 130: 2060 / 2280 - 1 = -9.6 %.
    expect(row?.Remarks).toEqual({
      text: "Its 2 pots: melted 2060 g, poured 2280 g: no loss but 9.6 % more, planned a loss of 3 % (taken: 10 x Tin by the one weighed, 98 g each; 10 x Tin by the one weighed, 130 g each). Left out of the wax factor: one of 130 g, not within 0.7 to 1 of its water.",
    });
    const [alone] = logRows(pouredRun([{ lines: [{ weighed: 130 }] }]), vesselsOf(["Tin", 120, 0.85]));
    expect(alone?.["Weighed each"]).toEqual({ number: 130 });
    expect(alone?.["Wax factor shown"]).toBeUndefined();
  });

  it("shows no load where more scent than wax is written", () => {
    const parts = [
      { planned: 1000, actual: 30 },
      { sort: "scent" as const, label: "Scent: Cedar", planned: 30, actual: 1000 },
    ];
    expect(logRows(pouredRun([{ parts }]), vessels)[0]?.["Load as weighed (of wax)"]).toBeUndefined();
  });

  it("is known by its headings when it was renamed, and goes on with the words it was begun with", () => {
    const headings = LOG_COLUMNS.map(({ heading }) => heading as string);
    const old = headings.map((heading) => (heading.startsWith("Load as weighed") ? "Real load of wax" : heading));
    const headingsFor = (headings: readonly string[]) => {
      const added = logAddition([], logTable({ headings, rows: [] }));
      return "table" in added ? added.headings : undefined;
    };
    expect(headingsFor(headings)).toEqual(headings);
    expect(headingsFor(old)).toEqual(old);
    // One that was begun before there were notes takes rows without them.
    expect(headingsFor(old.slice(0, 17))).toEqual(old.slice(0, 17));
    // A heading that is missing is asked for by its name of today.
    const without = old.filter((heading) => heading !== "Real load of wax");
    expect(headingsFor(without)).toEqual(headings);
    expect(RUNS_LOG.isKnownBy?.(["My own", ...[...old].reverse()])).toBe(true);
    expect(RUNS_LOG.isKnownBy?.(["Vessel", "Quantity", "Scent", "Water weight"])).toBe(false);
    expect(
      readLog({
        headings: ["Note", "Lot"],
        rows: [
          ["x", " 2026-330-02 "],
          ["y", null],
        ],
      }).lots,
    ).toEqual(["2026-330-02"]);
  });
});

describe("a load over its limit", () => {
  it("is asked about before it is logged, and stays in the log", async () => {
    const run = buildRun(
      {
        pour: { type: "pour", headings: [], rows: [["Tin", 10, 106, "Cedar", 0.06]], columns },
        scents: { type: "scents", headings: [], rows: [["Cedar", 0.07]], columns: { scent: 0, waxMaximum: 1 } },
      },
      settings,
    );
    const sheet = describeRun(run, { lot: "2026-330-01", date: 46352, settings });
    const rows = await valuesOf(sheet);
    const [wax, tin] = [rows.findIndex((row) => row[AT.key] === "1 wax"), rowOf(rows, "Tin")];
    // 80 of 1000 is 8 % of wax; the wax holds 7 %.
    const poured = readBack(
      await valuesOf(writtenOn(sheet, [number(wax, 4, 1000), number(wax + 1, 4, 80), number(tin, 4, 10)])),
    );
    if (!poured) throw new Error("no run sheet");
    const remark = poured.pots[0]?.remark ?? "";
    expect(remark).toContain("7 %");
    expect(pourWarnings(poured, new Map())).toEqual([
      `Cedar: pot 1 of 1, as weighed: ${remark}`,
      `Row ${wax + 2}: Scent: Cedar is written as 80 g and was planned as 60 g; check the digits and the unit`,
    ]);
    expect(logRows(poured, new Map())[0]?.Remarks).toEqual({ text: remark });
  });
});

describe("freezing a live run sheet", () => {
  it("keeps every figure and moves no more, while what is written on it is still followed", async () => {
    const sheet = sheetOf();
    const rows = await valuesOf(sheet);
    const frozen = writtenOn(sheet, plainNumbers(rows));
    const after = await valuesOf(frozen);
    const note = rows.findIndex(([line]) => line === LIVE_NOTE);
    expect(after[note]?.[0]).toBe(PLAIN_NOTE);
    expect([rows[0]?.[AT.mark], after[0]?.[AT.mark]]).toEqual([LIVE_MARK, PLAIN_MARK]);
    for (const [r, row] of rows.entries()) {
      if (r === note || r === 0) continue;
      expect(after[r]?.map((value) => value || null)).toEqual(row.map((value) => value || null));
    }
    const tin = rowOf(rows, "Tin");
    const changed = await valuesOf(writtenOn(frozen, [number(tin, 1, 60), number(tin, 4, 6)]));
    expect(changed[rowOf(rows, "Wax")]?.[3]).toBe(1400);
    expect(changed[rowOf(rows, "Total", 0)]?.[6]).toContain("good of");
    expect(plainNumbers(after)).toEqual([]);
  });
  it("takes a tick in the list to fetch for no figure", async () => {
    const rows = await valuesOf(sheetOf());
    const ticked = rows.map((row) =>
      String(row[AT.key]).endsWith("thing")
        ? row.map((value, column) => (column < AT.key ? (value ?? true) : value))
        : row,
    );
    expect(ticked).not.toEqual(rows);
    expect(plainNumbers(ticked as CellValue[][])).toEqual(plainNumbers(rows));
  });
  it("leaves a sheet alone that shows an error", async () => {
    const rows = (await valuesOf(sheetOf())).map((row) =>
      row[AT.key] === "1 wax" ? row.map((value, i) => (i === 3 ? { error: "#VALUE!" } : value)) : row,
    );
    expect(() => plainNumbers(rows as CellValue[][])).toThrow(/Fix it/);
  });
});

describe("what has changed since a run sheet was written", () => {
  const made = (waxes: [number, number], pourAt: number, cure: number | null, dye: number | null = null) =>
    buildRun(
      {
        pour: { type: "pour", headings: [], rows: [["Tin", 6, 106, "Cedar"]], columns: { ...columns, load: -1 } },
        recipes: {
          type: "recipes",
          headings: [],
          rows: [
            ["Cedar", "Soft", waxes[0], "part", "wax"],
            ["Cedar", "Hard", waxes[1], "part", "wax"],
            ["Cedar", "Oil", 0.06, "of wax", "scent"],
            ...(dye === null ? [] : [["Cedar", "Dye", dye, "of wax", "dye"]]),
          ],
          columns: { scent: 0, ingredient: 1, share: 2, basis: 3, sort: 4 },
        },
        scents: {
          type: "scents",
          headings: ["", "Pour at (C)", ""],
          rows: [["Cedar", pourAt, cure]],
          columns: { scent: 0, pour: 1, cure: 2 },
        },
      },
      settings,
    );

  it("is said of blends, temperatures, additives and cure too", async () => {
    const old = made([1, 1], 60, 14);
    const sheet = describeRun(old, { lot: "2026-330-01", date: 46352, settings });
    const read = readBack(await valuesOf(sheet));
    if (!read) throw new Error("no run sheet");
    expect(compareRuns(read, old.plan)).toEqual([]);
    expect(compareRuns(read, made([7, 3], 45, 21, 0.01).plan)).toEqual([
      "Cedar: Wax: Soft 300 before, 416 now",
      "Cedar: Wax: Hard 300 before, 178 now",
      "Cedar: Dye new, 6",
      "Cedar: Pour at 60 C before, 45 C now",
      "Cedar: cure days 14 before, 21 now",
    ]);
    expect(compareRuns(read, made([1, 1], 60, null).plan)).toEqual(["Cedar: cure days left out, was 14"]);
  });

  it("is said candle by candle, and for the pots", async () => {
    const old = readBack(await valuesOf(sheetOf()));
    if (!old) throw new Error("no run sheet");
    expect(compareRuns(old, runOf(table).plan)).toEqual([]);
    const now = runOf([
      ["Tin", 20, 106, "Cedar", 0.06],
      ["Bowl", 4, 220, "Cedar", 0.06],
      ["Cup", 3, 50, "Cedar", 0.06],
    ]);
    expect(compareRuns(old, now.plan)).toEqual([
      "Tin, Cedar: 6 before, 20 now",
      "Bowl, Cedar: fill 212 before, 220 now",
      "Cup, Cedar: new, 3",
      // 20 x 106 + 4 x 220 + 3 x 50 = 3150 at 6 % of wax, in two pots.
      "Cedar: pots 1 before, 2 now",
      // Each pot is rounded for itself.
      expect.stringMatching(/^Cedar: Wax 1400 before, 297[12] now$/),
      expect.stringMatching(/^Cedar: Scent: Cedar 84 before, 17[89] now$/),
      "Plain, Unscented: left out, was 5",
    ]);
  });
});
