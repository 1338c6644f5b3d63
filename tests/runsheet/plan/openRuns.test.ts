import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import type { Beside, OpenRun } from "../../../src/runsheet/plan/beside";
import { usesWords } from "../../../src/runsheet/plan/openRuns";
import { openRun } from "../../../src/runsheet/record/openRun";
import { readBack } from "../../../src/runsheet/record/readBack";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import { NO_LOG } from "../../../src/runsheet/tables/runsLog";
import type { CellValue, Sheet } from "../../../src/sheet/sheet";
import { DAY } from "../stock/moved";

const SETTINGS = { ...FIRST_SETTINGS, live: false, load: 0, loss: 0 };
const table = <K extends "pour" | "items" | "components" | "vessels">(
  type: K,
  headings: string[],
  rows: CellValue[][],
) => ({
  type,
  headings,
  rows,
  columns: matchColumns(type, headings),
});

/**
 * A batch of so many tins of 200 g without scent, of 3000 g of wax, 30 tins, and two lids for each, where nothing else
 * is given.
 */
function batch(
  tins: number,
  openRuns: readonly OpenRun[] = [],
  fill = 200,
  {
    lids = 2,
    wick = "",
    ...beside
  }: { lids?: number | null; wick?: string } & Pick<Beside, "openFittings" | "unread"> = {},
) {
  const items: CellValue[][] = [
    ["Wax", 3000, null],
    ["Tin", 30, 5],
    ["Lid", 100, null],
    ["W-21", 25, null],
  ];
  const tables = {
    pour: table("pour", ["Vessel", "Quantity", "Fill weight"], [["Tin", tins, fill]]),
    items: table("items", ["Item", "On hand", "Reorder below"], items),
    components: table("components", ["Vessel", "Item", "Each"], [["Tin", "Lid", lids]]),
    vessels: table("vessels", ["Vessel", "Water weight", "Wick"], [["Tin", 240, wick]]),
  };
  return buildRun(tables, SETTINGS, { today: DAY, openRuns, ...beside });
}

function cellsOf({ cells }: Sheet): CellValue[][] {
  const rows: CellValue[][] = Array.from({ length: 1 + Math.max(...cells.map(({ row }) => row)) }, () => []);
  for (const { row, column, content } of cells) {
    (rows[row] as CellValue[])[column] =
      content && !("formula" in content) ? (Object.values(content)[0] as CellValue) : null;
  }
  return rows;
}

/** The run that is written for a batch, read back from its own sheet. */
function written(made: ReturnType<typeof batch>, lot: string, date = DAY, counts?: boolean): OpenRun {
  const poured = readBack(cellsOf(describeRun(made, { lot, date, settings: SETTINGS })));
  const open = poured && openRun(poured, NO_LOG, "g");
  if (!open) throw new Error("no run");
  return { ...open, counts };
}
const lacks = ({ shelf }: ReturnType<typeof batch>) => shelf?.lacks.map(({ item, missing }) => `${item} ${missing}`);
const states = ({ shelf }: ReturnType<typeof batch>) => shelf?.openRuns.map(({ lot, state }) => `${lot} ${state}`);
const texts = ({ problems }: ReturnType<typeof batch>) => problems.map(({ text }) => text);

describe("runs that are written and not logged", () => {
  it("take what goes with their own vessels beside a plan whose tables are made up, and are none of its batch", () => {
    const open = written(batch(10), "2026-330-01");
    const openFittings = {
      vessels: new Map(),
      components: new Map([["tin", [{ vessel: "Tin", item: "Lid", each: 4, wrong: [] }]]]),
    };
    const made = batch(10, [open], 200, { openFittings });
    expect(states(made)).toEqual(["2026-330-01 counted"]);
    // Wax: 2000 and 2000 of 3000 g. Lids: 10 x 2 and 10 x 4 of 100 are enough; with 40 x 4 they would not be.
    expect(lacks(made)).toEqual(["Wax 1000"]);
    const lids = new Map([["tin", [{ vessel: "Tin", item: "Lid", each: 9, wrong: [] }]]]);
    expect(lacks(batch(10, [open], 200, { openFittings: { ...openFittings, components: lids } }))).toEqual([
      "Wax 1000",
      "Lid 10",
    ]);
  });

  it("do not count their own batch twice, also when weights changed since or it was written twice", () => {
    const first = written(batch(10), "2026-330-01");
    expect(lacks(batch(10, [first]))).toEqual([]);
    expect(states(batch(10, [first]))).toEqual(["2026-330-01 of this batch"]);
    // 10 x 250 of 3000 g.
    expect(lacks(batch(10, [first], 250))).toEqual([]);
    const twice = batch(10, [first, written(batch(10), "2026-330-02")]);
    expect(states(twice)).toEqual(["2026-330-01 of this batch", "2026-330-02 of this batch"]);
    expect(lacks(twice)).toEqual([]);
  });

  it("count once the batch is another one, by name, with vessels and components", () => {
    const monday = written(batch(10), "2026-330-01");
    const tuesday = batch(12, [monday]);
    // 3000 - 2000 leaves 1000 of wax for 2400.
    expect(lacks(tuesday)).toEqual(["Wax 1400"]);
    expect(texts(tuesday)).toEqual(["Wax: also planned: run 2026-330-01, 2000 g"]);
    expect(tuesday.shelf?.openRuns).toMatchObject([
      {
        state: "counted",
        uses: [
          { item: "Wax", amount: 2000 },
          { item: "Tin", amount: 10 },
          { item: "Lid", amount: 20 },
        ],
      },
    ]);
    // 30 tins less 10 and 16 leave 4.
    expect(texts(batch(16, [monday]))).toContain("Time to reorder: Tin (4 left, below 5)");
  });

  it("are said once for all that is missing by them, and not once for each item", () => {
    const made = batch(30, [written(batch(10), "2026-330-01"), written(batch(5), "2026-330-02")]);
    expect(lacks(made)).toHaveLength(2);
    expect(texts(made).filter((text) => text.includes("also planned"))).toEqual([
      "Wax, Tin: also planned: run 2026-330-01, Wax 2000 g, Tin 10; run 2026-330-02, Wax 1000 g, Tin 5",
    ]);
  });

  it("say on the paper what they take of what it uses", () => {
    const made = batch(12, [written(batch(10), "2026-330-01")]);
    const paper = cellsOf(describeRun(made, { lot: "2026-330-02", date: DAY, settings: SETTINGS })).flat();
    expect(paper).toContain("Also planned, taken off what is on hand: run 2026-330-01, Wax 2000 g, Tin 10, Lid 20");
  });

  it("count where the same batch was written for another day: the newest is that of the batch", () => {
    const made = batch(10, [written(batch(10), "2026-329-01", DAY - 1), written(batch(10), "2026-330-01")]);
    expect(states(made)).toEqual(["2026-329-01 counted", "2026-330-01 of this batch"]);
    expect(lacks(made)).toEqual(["Wax 1000"]);
  });

  it("count, or do not, as the maker says", () => {
    expect(lacks(batch(10, [written(batch(10), "2026-330-01", DAY, true)]))).toEqual(["Wax 1000"]);
    const left = batch(12, [written(batch(10), "2026-330-01", DAY, false)]);
    expect([lacks(left), states(left), texts(left)]).toEqual([[], ["2026-330-01 left out"], []]);
  });

  it("count the wick of a vessel that no component counts: 25 less 10 leave 15 for 16", () => {
    const wick = "W-21";
    const made = batch(16, [written(batch(10), "2026-330-01")], 20, { wick });
    expect(lacks(made)).toEqual(["W-21 1"]);
    expect(texts(made)).toContain("W-21: also planned: run 2026-330-01, 10");
  });

  it("say of which items it is not known how many they take", () => {
    const made = batch(16, [written(batch(10), "2026-330-01")], 20, { lids: null });
    const unknown = "how many of Lid its candles take is not known, so what it takes is counted short";
    expect(texts(made)).toContain(`Run 2026-330-01: ${unknown}. Write it in the table of components`);
    expect(made.shelf?.openRuns.map((one) => usesWords(one, "g"))).toEqual([
      "Wax 2000 g, Tin 10, Lid (how many is not known)",
    ]);
    const out = batch(16, [written(batch(10), "2026-330-01", DAY, false)], 20, { lids: null });
    expect(texts(out).filter((text) => text.includes("counted short"))).toEqual([]);
  });

  it("are named when their day is over and nobody logged them, and so are sheets that cannot be read", () => {
    expect(texts(batch(1, [], 200, { unread: ["Run 2026-331-01"] }))).toEqual([
      "Run 2026-331-01: not all of it can be read, so what it takes is counted short. Look at its sheet",
    ]);
    expect(texts(batch(1, [written(batch(2), "2026-300-01", DAY - 30)]))).toEqual([
      "Run 2026-300-01 of 2026-10-27 is not logged, so what it takes still counts as planned. Log it, or leave it out under Also planned",
    ]);
  });
});
