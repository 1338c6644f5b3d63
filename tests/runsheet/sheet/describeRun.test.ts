import { beforeAll, describe, expect, it } from "vitest";
import { type Calculated, calculate } from "../../../src/engine/calculate";
import { buildRun } from "../../../src/runsheet/buildRun";
import { CAUTIONS } from "../../../src/runsheet/cautions";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT, LIVE_MARK, PLAIN_MARK } from "../../../src/runsheet/sheet/layout";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import type { CellValue, Sheet } from "../../../src/sheet/sheet";
import { metadataText, script } from "../../functions/built";

const settings: Settings = { ...FIRST_SETTINGS, potCapacity: 2000, loss: 0.03, division: 0.1 };
const columns = { vessel: 0, quantity: 1, fill: 2, scent: 3, load: 4, basis: 5 };
const table: CellValue[][] = [
  ["Tin", 7, 172.3, "Cedar", 0.08, "of wax"],
  ["=1+1", 3, 340.25, "Cedar", 0.08, "of wax"],
  ["Bowl", 4, 255.5, "Fig", 0.06, "of total"],
  ["Plain", 5, 120, "", null, ""],
];
const run = buildRun({ pour: { type: "pour", headings: [], rows: table, columns } }, settings);
const describeIt = (live: boolean): Sheet =>
  describeRun(run, { lot: "2026-330-01", date: 46352, settings: { ...settings, live } });

const calculated = async (...sheets: Sheet[]) => calculate(sheets, { script, metadata: metadataText });

describe("the run sheet", () => {
  let live: Calculated[][];
  let frozen: Calculated[][];
  beforeAll(async () => {
    [live, frozen] = (await calculated(
      { ...describeIt(true), name: "Live" },
      { ...describeIt(false), name: "Frozen" },
    )) as [Calculated[][], Calculated[][]];
  });

  it("says the same live as in plain numbers, cell by cell", () => {
    expect(run.problems.map(({ text }) => text)).toEqual([
      "Cedar: wax maximum and product limit not known: not checked",
      "Fig: wax maximum and product limit not known: not checked",
      "Plain names no scent and is poured without; a scent with a load of 0 % would say that it is meant so",
    ]);
    // A live sheet has a line more, for what to fix in its head: nothing.
    const same = live.filter((row) => row[AT.key] !== "* head");
    expect(live.filter((row) => row[AT.key] === "* head").map(([remark]) => remark || "")).toEqual([""]);
    expect(same.length).toBe(frozen.length);
    for (const [r, row] of frozen.entries()) {
      for (const [c, value] of row.entries()) {
        // The line that says which of the two it is; what is said of a pot by the counts of a live sheet.
        if (r === 3 || c === AT.potRemark) continue;
        if (r === 0 && c === AT.mark) {
          expect([same[r]?.[c], value]).toEqual([LIVE_MARK, PLAIN_MARK]);
          continue;
        }
        if (typeof value === "number") expect(same[r]?.[c], `row ${r} column ${c}`).toBeCloseTo(value, 9);
        else expect(same[r]?.[c] || null, `row ${r} column ${c}`).toBe(value || null);
      }
    }
  });

  it("holds no error, and of plain numbers only what follows the pour as formulas", () => {
    const formulas = describeIt(false).cells.filter(({ content }) => content && "formula" in content);
    const keys = new Map(
      describeIt(false).cells.flatMap(({ row, column, content }) =>
        column === AT.key && content && "text" in content ? [[row, content.text.split(" ")[1]] as const] : [],
      ),
    );
    // Actual weights: remark, sum and load, with what is over a limit. Vessels: the net weight. Totals: the yield. What is
    // to say of a pot is gathered in a row without a key.
    const places = new Set(formulas.map(({ row, column }) => `${keys.get(row)} ${column}`));
    expect([...places].sort()).toEqual([
      ...["loads 11", "loads 4", "melted 4", "scent 10", "scents 6", "totals 6"],
      ...["undefined 0", "vessel 7", "wax 10"],
    ]);
    for (const row of [...live, ...frozen]) {
      for (const value of row) expect(typeof value === "object" && value !== null, String(value)).toBe(false);
    }
  });

  it("names packs of another unit in figures that one shops by", () => {
    const pour = { type: "pour" as const, headings: [], rows: [["Tin", 6, 100, "Fig", 0.06, "of wax"]], columns };
    const stock = {
      type: "stock" as const,
      headings: ["Item", "On hand (lb)", "Pack size (lb)", "Pack price"],
      rows: [["Fig", 0, 1, 30]],
      columns: { item: 0, onHand: 1, packSize: 2, packPrice: 3 },
    };
    const { cells } = describeRun(buildRun({ pour, stock }, settings), { lot: "2026-330-01", date: 46352, settings });
    expect(cells.map(({ content }) => content)).toContainEqual({ text: "1 x 453.592 g" });
  });

  it("lacks of a wick what all vessels take of it, approved for one and a component of another", async () => {
    const table = <K extends "pour" | "vessels" | "components" | "items">(
      type: K,
      [headings = [], ...rows]: CellValue[][],
    ) => {
      const names = headings.map(String);
      return { type, headings: names, rows, columns: matchColumns(type, names) };
    };
    const made = buildRun(
      {
        pour: table("pour", [
          ["Vessel", "Quantity", "Fill weight"],
          ["Bowl", 4, 200],
          ["Tin", 10, 100],
        ]),
        vessels: table("vessels", [
          ["Vessel", "Water weight", "Wick"],
          ["Bowl", 240, "CL-8"],
        ]),
        components: table("components", [
          ["Vessel", "Item", "Each"],
          ["Tin", "CL-8", 2],
        ]),
        items: table("items", [
          ["Item", "On hand"],
          ["CL-8", 1],
        ]),
      },
      { ...settings, load: 0 },
    );
    const sheet = describeRun(made, { lot: "2026-330-01", date: 46352, settings: { ...settings, live: true } });
    const [rows] = (await calculated(sheet)) as [Calculated[][]];
    // By hand: 4 and 10 x 2 are 24, of which 1 is on hand.
    const lacking = rows.filter(([name]) => name === "CL-8").map((row) => row.slice(2, 4));
    expect(lacking.at(-1)).toEqual([1, 23]);
  });

  it("begins with lot and date, shows every caution, and ends with room for notes", () => {
    expect(frozen[0]?.[0]).toBe("Run sheet 2026-330-01");
    expect(frozen[1]?.slice(0, 2)).toEqual(["Date", 46352]);
    const texts = frozen.flat();
    for (const caution of CAUTIONS) expect(texts).toContain(caution);
    expect(frozen.at(-1)?.[0]).toBe("Notes: anything unusual");
  });

  it("weighs by hand: Fig, four of 255.5 and 3 % more, 6 % of total", () => {
    // 4 x 255.5 x 1.03 = 1052.66, on a 0.1 scale 1052.7; scent 63.16 -> 63.2, wax 989.5.
    const at = frozen.findIndex(([name]) => name === "Fig: pot 1 of 1") + 1;
    expect(frozen[at + 1]?.slice(0, 4)).toEqual(["Wax", 1, "part", 989.5]);
    expect(frozen[at + 2]?.slice(0, 4)).toEqual(["Scent: Fig", 0.06, "of total", 63.2]);
    expect(frozen[at + 3]?.[3]).toBeCloseTo(1052.7, 9);
    expect(frozen[at + 4]?.[1]).toBeCloseTo(63.2 / 1052.7, 12);
  });

  it("weighs an unscented pot as wax alone", () => {
    const at = live.findIndex(([name]) => name === "Unscented: pot 1 of 1");
    expect(live[at + 1]?.slice(0, 4)).toEqual(["Wax", 1, "part", 618]);
    expect(live[at + 2]?.[0]).toBe("Total in the pot");
  });

  it("keeps a vessel's name as text", () => {
    const cells = describeIt(true).cells.filter(
      ({ content }) => content && "text" in content && content.text === "=1+1",
    );
    // In its pot, and in the list of what to fetch.
    expect(cells.map(({ column }) => column)).toEqual([AT.nameRight, AT.name]);
    expect(live.flat().filter((value) => value === "=1+1")).toHaveLength(2);
    // The list counts them, however they are called.
    expect(live.find((row) => row[AT.nameRight] === "=1+1")?.[AT.neededRight]).toBe(3);
  });

  it("adds up", () => {
    const totals = frozen.findIndex(([name]) => name === "Totals");
    const together = frozen.findIndex(([name], i) => i > totals && name === "Total");
    for (const column of [1, 2, 3, 4, 5]) {
      const parts = frozen.slice(totals + 1, together).map((row) => row[column] as number);
      expect(frozen[together]?.[column]).toBeCloseTo(
        parts.reduce((a, b) => a + b, 0),
        9,
      );
    }
    expect(frozen[together]?.[1]).toBe(19);
  });

  it("moves everything below when a count of a live sheet changes", async () => {
    const sheet = describeIt(true);
    const tin = [...sheet.cells]
      .reverse()
      .find(({ content }) => content && "text" in content && content.text === "Plain");
    const changed: Sheet = {
      ...sheet,
      cells: sheet.cells.map((cell) =>
        cell.row === tin?.row && cell.column === 1 ? { ...cell, content: { number: 20 } } : cell,
      ),
    };
    const [rows] = (await calculated(changed)) as [Calculated[][]];
    const at = rows.findIndex(([name]) => name === "Unscented: pot 1 of 1");
    expect(rows[at + 1]?.[3]).toBe(2472); // 20 x 120 x 1.03
    expect(rows[at + 2]?.[AT.potRemark]).toBe("More than the pot holds");
    // What is to say of a pot stands below its weights, across the page.
    expect(rows[at + 3]?.[0]).toBe("More than the pot holds. ");
    expect(rows.find((row) => row[AT.nameRight] === "Plain")?.[AT.neededRight]).toBe(20);
    const totals = rows.findIndex(([name]) => name === "Totals");
    expect(rows.slice(totals).find(([name]) => name === "Unscented")?.[1]).toBe(20);
  });

  /** The live sheet with other numbers in some cells, calculated. */
  const changing = async (sheet: Sheet, change: (row: number, column: number) => number | undefined) => {
    const [rows] = (await calculated({
      ...sheet,
      cells: sheet.cells.map((cell) => {
        const number = change(cell.row, cell.column);
        return number === undefined ? cell : { ...cell, content: { number } };
      }),
    })) as [Calculated[][]];
    return rows;
  };
  const rowOf = (sheet: Sheet, name: string) =>
    [...sheet.cells]
      .reverse()
      .find(({ column, content }) => column === 0 && content && "text" in content && content.text === name)?.row ?? -1;

  it("says on the sheet that a load passes a limit: as changed on a live sheet, and as weighed", async () => {
    const limited = buildRun(
      {
        pour: { type: "pour", headings: [], rows: [["Tin", 10, 106, "Cedar", 0.06, "of wax"]], columns },
        scents: {
          type: "scents",
          headings: [],
          rows: [["Cedar", 0.08, 0.07]],
          columns: { scent: 0, waxMaximum: 1, productLimit: 2 },
        },
      },
      { ...settings, loss: 0 },
    );
    expect(limited.problems).toEqual([]);
    const sheet = describeRun(limited, { lot: "2026-330-01", date: 46352, settings: { ...settings, loss: 0 } });
    const [wax, scent, load] = [rowOf(sheet, "Wax"), rowOf(sheet, "Scent: Cedar"), rowOf(sheet, "Load after rounding")];
    // Its steps have a row more than its weights.
    const say = load + 1;
    const before = await changing(sheet, () => undefined);
    expect(before[say]?.[0] || "").toBe("");
    const more = await changing(sheet, (row, column) => (row === scent && column === 1 ? 0.09 : undefined));
    // 9 of 109 is 8.26 % of total.
    expect(more[say]?.[0]).toBe("Over the wax maximum of 8 % of wax. Over the product limit of 7 % of total. ");
    const poured = await changing(sheet, (row, column) => {
      if (column !== 4) return undefined;
      return row === wax ? 1000 : row === scent ? 77 : undefined;
    });
    const none = await changing(sheet, (row, column) => {
      if (column !== 4) return undefined;
      return row === wax ? 0 : row === scent ? 77 : undefined;
    });
    // Wax that weighs nothing makes no load, and no error either.
    expect([none[load]?.[AT.actual] || "", none[load]?.[AT.loadRemark] || ""]).toEqual(["", ""]);
    // 77 / 1000 is within 8 % of wax, 77 / 1077 is 7.15 % of total.
    expect(poured[load]?.[AT.loadRemark]).toBe("Over the product limit of 7 % of total. ");
    expect(poured[say]?.[0]).toBe("Over the product limit of 7 % of total. ");
  });
});
