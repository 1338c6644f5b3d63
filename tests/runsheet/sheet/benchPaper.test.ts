import { beforeAll, describe, expect, it } from "vitest";
import { type Calculated, calculate } from "../../../src/engine/calculate";
import { rowHeights } from "../../../src/host/excel/rowHeights";
import { buildRun } from "../../../src/runsheet/buildRun";
import { readBack } from "../../../src/runsheet/record/readBack";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT } from "../../../src/runsheet/sheet/layout";
import { pagesOf } from "../../../src/sheet/pageBreaks";
import type { CellValue, Sheet } from "../../../src/sheet/sheet";
import { metadataText, script } from "../../functions/built";

const settings: Settings = { ...FIRST_SETTINGS, loss: 0 };
const table = (type: string, headings: string[], columns: string[], rows: CellValue[][]) => ({
  type,
  headings,
  rows,
  columns: Object.fromEntries(columns.map((field, i) => [field, i])),
});
/** Ten tins of cedar in the wax of its recipe, and five in coconut: two pots of one scent. */
const TABLES = {
  pour: table(
    "pour",
    [],
    ["vessel", "quantity", "fill", "scent", "wax"],
    [
      ["Tin", 10, 107, "Cedar", null],
      ["Tin", 5, 107, "Cedar", "Coconut wax"],
    ],
  ),
  recipes: table(
    "recipes",
    [],
    ["scent", "ingredient", "share", "basis", "sort"],
    [
      ["Cedar", "Soft wax", 1, "part", "wax"],
      ["Cedar", "Cedar oil", 0.06, "of wax", "scent"],
      ["Cedar", "Green dye", 0.01, "of wax", "dye"],
    ],
  ),
  vessels: table(
    "vessels",
    ["Vessel", "Water weight (g)", "Wick"],
    ["vessel", "water", "wick"],
    [["Tin", 125, "2 x W-21"]],
  ),
  prices: table(
    "prices",
    ["Item", "Unit price (per g)"],
    ["item", "price"],
    [
      ...["Soft wax", "Coconut wax", "Cedar oil", "Green dye"].map((item): CellValue[] => [item, 0.01]),
      ["Tin", 1],
      ["W-21", 0.1],
    ],
  ),
};
const runOf = (tables: object = TABLES) => buildRun(tables as never, settings);
const sheetOf = (changes: Partial<Settings> = {}, tables?: object): Sheet =>
  describeRun(runOf(tables), { lot: "2026-330-01", date: 46352, settings: { ...settings, ...changes } });
const valuesOf = async (sheet: Sheet): Promise<Calculated[][]> =>
  (await calculate([sheet], { script, metadata: metadataText }))[0] as Calculated[][];
const texts = (sheet: Sheet) =>
  sheet.cells.flatMap(({ content }) => (content && "text" in content ? [content.text] : []));

/** What the list says is needed of a thing, in either half of the page. */
function neededIn(rows: Calculated[][], name: string): Calculated | undefined {
  const pots = rows.findIndex((row) => row[AT.key] === "1 pot");
  for (const row of rows.slice(0, pots)) {
    if (row[AT.name] === name && row[AT.key] === "* thing") return row[AT.needed];
    if (row[AT.nameRight] === name) return row[AT.neededRight];
  }
  return undefined;
}

describe("the list of what to fetch", () => {
  let honest: Calculated[][];
  let changed: Calculated[][];
  beforeAll(async () => {
    const sheet = sheetOf();
    honest = await valuesOf(sheet);
    const tin = sheet.cells.find(({ row, column }) => column === AT.count && honest[row]?.[AT.key] === "1 vessel");
    const cells = sheet.cells.map((cell) => (cell === tin ? { ...cell, content: { number: 20 } } : cell));
    changed = await valuesOf({ ...sheet, cells });
  });

  it("adds up what all pots take, and follows a count of a live sheet", () => {
    // 107 g hold 100 of wax, 6 of oil and 1 of dye; each tin takes two wicks.
    const needed = (rows: Calculated[][]) =>
      ["Soft wax", "Coconut wax", "Scent: Cedar oil", "Green dye", "Dye: Green dye", "Tin", "Wick: W-21"].map((name) =>
        neededIn(rows, name),
      );
    expect(needed(honest)).toEqual([1000, 500, 90, 15, undefined, 15, 30]);
    expect(needed(changed)).toEqual([2000, 500, 150, 25, undefined, 25, 50]);
  });

  it("has a box to tick in each line, and one for the lot of each thing", () => {
    const sheet = sheetOf();
    const boxes = (...columns: number[]) =>
      sheet.cells.filter(
        ({ row, column, look }) => look === "blank" && honest[row]?.[AT.key] === "* thing" && columns.includes(column),
      );
    // Two waxes, oil, dye, tins, wicks, and the pots, which have no lot.
    expect(boxes(AT.box, AT.boxRight)).toHaveLength(7);
    expect(boxes(AT.lot, AT.lotRight)).toHaveLength(6);
  });

  it("is read back with the lots written there, which hold for pots that name none", async () => {
    const sheet = sheetOf();
    const find = (name: string, column: number) =>
      sheet.cells.find((cell) => cell.column === column && (cell.content as { text?: string })?.text === name)?.row;
    const write = new Map<string, string>([
      [`${find("Soft wax", AT.name)},${AT.lot}`, "S-1"],
      [`${find("Wick: W-21", AT.nameRight)},${AT.lotRight}`, "X-2"],
      [`${find("Tin", AT.nameRight)},${AT.lotRight}`, "T-2"],
    ]);
    const cells = sheet.cells.map((cell) => {
      const text = write.get(`${cell.row},${cell.column}`);
      return text === undefined ? cell : { ...cell, content: { text } };
    });
    const poured = readBack((await valuesOf({ ...sheet, cells })) as CellValue[][]);
    expect([...(poured?.lots ?? [])]).toEqual([
      ["wax soft wax", "S-1"],
      ["vessel tin", "T-2"],
      ["wick w-21", "X-2"],
    ]);
    const lots = poured?.pots.map(({ parts }) => parts.map(({ item, lot }) => [item, lot]));
    expect(lots?.map((pot) => pot[0])).toEqual([
      ["Soft wax", "S-1"],
      ["Coconut wax", ""],
    ]);
    // One that was written before has a number where now a lot stands, and no ids.
    const grams = (row: Calculated[]) => row.map((value, i) => (i === AT.lotRight ? 46_352 : value));
    const isThing = (row: Calculated[]) => row[AT.key] === "* thing";
    const now = honest.map((row) => (isThing(row) ? grams(row) : row));
    const before = now.map((row) =>
      isThing(row) ? row.map((value, i) => (i === AT.thing || i === AT.thingRight ? null : value)) : row,
    );
    expect(readBack(before as CellValue[][])).toMatchObject({ lots: new Map(), lotDays: [] });
    expect(readBack(now as CellValue[][])?.lotDays.map(({ day }) => day)).toEqual([46_352, 46_352]);
  });
});

describe("a pot on the bench", () => {
  it("is one for each wax of a scent, titled with it, and read back as the scent", async () => {
    const poured = readBack((await valuesOf(sheetOf())) as CellValue[][]);
    expect(poured?.pots.map(({ title, scent }) => [title, scent])).toEqual([
      ["Cedar: pot 1 of 1", "Cedar"],
      ["Cedar: pot 1 of 1 in Coconut wax", "Cedar"],
    ]);
  });

  it("has dye before scent, and each step with two boxes, also without targets", () => {
    const sheet = sheetOf();
    const labels = texts(sheet);
    expect(labels.lastIndexOf("Green dye")).toBeLessThan(labels.lastIndexOf("Scent: Cedar oil"));
    const steps = sheet.cells.filter(({ column, content }) => column === AT.step && content && "text" in content);
    const named = steps.filter(({ content }) => /^(Melt|Add|Stir|Pour)/.test((content as { text: string }).text));
    expect(named).toHaveLength(8);
    for (const { row } of named) {
      const boxes = sheet.cells.filter(
        (cell) => cell.row === row && cell.look === "blank" && cell.column >= AT.temperature,
      );
      expect(boxes.map(({ column }) => column)).toEqual([AT.temperature, AT.time]);
    }
  });

  it("names the approved wick beside its vessel", () => {
    expect(texts(sheetOf()).filter((text) => text === "wick 2 x W-21")).toHaveLength(2);
  });

  it("says what candles cost only where it is asked for", () => {
    expect(runOf().costs).toBeDefined();
    expect(texts(sheetOf()).join()).not.toContain("Cost");
    expect(texts(sheetOf({ costs: "shown" })).join()).toContain("Cost of materials");
  });
});

describe("a wax that a row names", () => {
  const said = (wax: string) => {
    const pour = { ...TABLES.pour, rows: [["Tin", 5, 107, "Cedar", wax]] };
    return runOf({ ...TABLES, pour }).problems.filter(({ field }) => field === "wax");
  };
  it("is asked about where no recipe and no item knows it", () => {
    expect(said("Coconut  WAX")).toEqual([]);
    expect(said("Soft wax")).toEqual([]);
    expect(said("Coconot wax")).toMatchObject([
      { severity: "warning", row: 0, text: expect.stringContaining("Coconot") },
    ]);
  });
});

describe("a sheet that was written before", () => {
  it("is read by the columns that it had", () => {
    const row = (key: string, ...cells: CellValue[]): CellValue[] => [
      ...cells,
      ...Array(7 - cells.length).fill(null),
      key,
    ];
    const old: CellValue[][] = [
      ["Run sheet 2026-320-01"],
      ["Date", 46342],
      ["Scale reads to (g)", 1],
      row("1 pot", "Cedar: pot 1 of 1"),
      row("1 wax", "Wax", 1, "part", 1000, 1001),
      row("1 scent", "Scent: Cedar", 0.06, "of wax", 60, 61, "L7"),
      row("1 load", "Load after rounding", 0.06, "of wax", "planned remark"),
      row("1 weighed", "Load as weighed", 0.061, "of wax", "Over it."),
      row("1 step", "Add scent at", "65 C (flash 93 C)", null, null, 64),
      row("1 vessel", "Tin", 10, 106, 106, 9, 105, "Net Wt"),
      row("1 cure", "Cedar", 14, 46356),
    ];
    const read = readBack(old);
    expect(read?.pots[0]).toMatchObject({
      remark: "Over it.",
      parts: [{ actual: 1001 }, { actual: 61, lot: "L7" }],
      lines: [{ vessel: "Tin", count: 10, good: 9, weighed: 105 }],
    });
    expect([...(read?.pots[0]?.steps ?? [])]).toEqual([["Add scent at", "65 C"]]);
    expect(read?.cure.get("Cedar")).toBe(14);
    expect(read?.wrong).toEqual([]);
  });
});

describe("the pages of a program that is told where they end", () => {
  it.each(["letter", "a4"] as const)("hold letters of ten points and whole pots on %s", (paper) => {
    const rows = Array.from({ length: 10 }, (_, i): CellValue[] => ["Tin", 15, 107, `Scent ${i}`, null]);
    const sheet = sheetOf({ paper }, { ...TABLES, pour: { ...TABLES.pour, rows } });
    const heights = rowHeights(sheet);
    const { scale, breaks } = pagesOf(sheet, heights, 15);
    expect((11 * scale) / 100).toBeGreaterThanOrEqual(10);
    const titles = sheet.cells.flatMap(({ row, column, content }) =>
      column === AT.key && content && "text" in content && content.text.endsWith(" pot") ? [row] : [],
    );
    expect(titles).toHaveLength(10);
    // The first pot begins a page of its own; no page breaks elsewhere than before a pot.
    for (const row of breaks) expect(titles).toContain(row);
    expect(breaks[0]).toBe(titles[0]);
    expect(breaks.length).toBeLessThanOrEqual(3);
  });
});
