import { beforeAll, describe, expect, it } from "vitest";
import { netLabel } from "../../src/core/label/netLabel";
import { Supplies } from "../../src/runsheet/stock/supplies";
import type { Items } from "../../src/runsheet/tables/items";
import type { Moves } from "../../src/runsheet/tables/moves";
import { readTable } from "../../src/runsheet/tables/readTables";
import { matchColumns } from "../../src/runsheet/tables/registry";
import { studio } from "../../src/samples/studio";
import type { Cell, Sheet } from "../../src/sheet/sheet";
import { cases } from "../cases";
import { type Expected, expectedCandles } from "./expectedCandles";
import { byName, number, type Row, SavedBook, type Typed, text, withEdits } from "./saved";

/** Costs, margins and labels of the studio's workbook, against the core functions and figures worked out by hand. */

let book: SavedBook;
beforeAll(async () => {
  book = await SavedBook.open("1-studio.xlsx");
});

const rowsOf = (sheet: string): Row[] => book.rows(sheet, sheet);
const candles = (): Row[] => rowsOf("Candles").filter(({ Candle }) => Candle !== null);

/** Where things stand on the sheet Candles. */
const FIRST = 14;
const LAST = 27;
const FREE = 28;
type ValueAt = Awaited<ReturnType<typeof withEdits>>;
const typed = (edits: Record<string, Typed>, sheets: readonly Sheet[] = studio()) => withEdits(sheets, edits);
/** What is typed into a row of the candles: name, vessel, scent, minutes, price. */
const row = (at: number, ...values: readonly Exclude<Typed, null>[]): Record<string, Typed> =>
  Object.fromEntries(values.map((value, i) => [`Candles!${"ABCDE"[i]}${at}`, value]));
const shown = (valueAt: ValueAt, at: number) => {
  const of = (letter: string) => valueAt("Candles", `${letter}${at}`) ?? "";
  return {
    ...{ fill: of("F"), materials: of("G"), components: of("H"), cost: of("I"), margin: of("J") },
    ...{ ask: of("K"), marginThen: of("L"), net: of("M"), check: of("N") },
  };
};

describe("the price of an item", () => {
  it("stands once, and is what the pane takes it for when it goes by what was paid last", () => {
    const tableOf = (type: "items" | "moves", sheet: string) => {
      const rows = rowsOf(sheet);
      const headings = Object.keys(rows[0] ?? {});
      const columns = matchColumns(type, headings);
      return readTable({ type, headings, columns, rows: rows.map((one) => Object.values(one)) } as never, "g");
    };
    const supplies = new Supplies(
      { items: tableOf("items", "Items") as Items, moves: tableOf("moves", "Moves") as Moves },
      "last paid",
      undefined,
    );
    const items = rowsOf("Items").filter(({ Item }) => Item !== null);
    for (const one of items) {
      const use = ["vessel", "component"].includes(text(one, "Kind")) ? "count" : "weight";
      const { price } = supplies.price(text(one, "Item"), use, 0);
      expect(number(one, "Price of one"), text(one, "Item")).toBeCloseTo(price ?? Number.NaN, 12);
    }
    // By hand: the later of two lots of wax cost 60.5 for 10 kg.
    expect(number(byName(items, "Item", "Wax"), "Price of one")).toBeCloseTo(0.00605, 12);
    expect(rowsOf("Items").filter(({ Item }) => Item === null)[0]?.["Price of one"]).toBe("");
  });

  it("is that of its pack, or the unit price, when prices come from packs", async () => {
    // The first pack of cedar oil: 50 g at another price than was paid; the dye has a unit price alone, per kilogram.
    const valueAt = await typed({ "Candles!B4": "pack", "Items!E8": 6 });
    expect(valueAt("Items", "J8")).toBeCloseTo(6 / 50, 12);
    expect(valueAt("Items", "J12")).toBeCloseTo(0.042, 12);
    expect(valueAt("Items", "J35")).toBeCloseTo(0.04, 12);
  });

  it("follows a further lot that was paid for", async () => {
    const at = 5 + rowsOf("Moves").findIndex(({ Item }) => Item === null);
    const lot = Object.entries({ A: 46_352, B: "Wax", D: 5000, E: 40 });
    const valueAt = await typed(Object.fromEntries(lot.map(([letter, value]) => [`Moves!${letter}${at}`, value])));
    expect(valueAt("Items", "J5")).toBeCloseTo(0.008, 12);
    const wanted = expectedCandles(book, { Wax: 0.008 });
    expectRows(valueAt, wanted);
    const dearer = wanted.filter((one, i) => one.cost > (expectedCandles(book)[i] as Expected).cost + 0.01);
    expect(dearer.length).toBeGreaterThan(5);
  });

  it("that is missing is named beside it and at each candle that takes it, which has no cost", async () => {
    const gone = Object.fromEntries(
      [...(studio().find(({ name }) => name === "Moves")?.cells ?? [])]
        .filter(({ column, content }) => column === 1 && content && "text" in content && content.text === "Tumbler lid")
        .map(({ row: at }) => [`Moves!E${at + 1}`, null]),
    );
    const valueAt = await typed({ ...gone, "Items!E33": null });
    expect(valueAt("Items", "J33")).toBe("no price");
    expect(valueAt("Components", "D19")).toBe("Tumbler lid: no price");
    expect(valueAt("Vessels", "H11")).toBe("Tumbler lid: no price");
    const at = FIRST + candles().findIndex(({ Candle }) => Candle === "Quince, tumbler");
    expect(shown(valueAt, at)).toMatchObject({ cost: "", margin: "", ask: "", check: "Tumbler lid: no price" });
    // Candles in other vessels stay as they were.
    expect(valueAt("Candles", `I${FIRST}`)).toBe(book.saved("Candles", `I${FIRST}`));
    expect(valueAt("Margins", "B5")).toBe(book.saved("Margins", "B5"));
    const inTumblers = candles().filter(({ Vessel }) => String(Vessel).endsWith("tumbler"));
    expect(valueAt("Margins", "A8")).toMatch(new RegExp(`^${inTumblers.length} without a margin`));
  });
});

function expectRows(valueAt: ValueAt, wanted: readonly Expected[]): void {
  for (const [i, one] of wanted.entries()) {
    const { fill, cost, margin, ask, marginThen } = shown(valueAt, FIRST + i);
    expect(valueAt("Candles", `A${FIRST + i}`)).toBe(one.candle);
    expect(fill).toBeCloseTo(one.fill, 8);
    expect(cost, one.candle).toBeCloseTo(one.cost, 10);
    expect(margin, one.candle).toBeCloseTo(one.margin, 10);
    expect(ask, one.candle).toBeCloseTo(one.ask, 10);
    expect(marginThen, one.candle).toBeCloseTo(one.marginThen, 10);
  }
}

describe("the candles", () => {
  it("cost, leave and ask what the core functions say", () => {
    expect(candles()).toHaveLength(LAST - FIRST + 1);
    expectRows((sheet, address) => book.saved(sheet, address), expectedCandles(book));
    for (const one of candles()) {
      expect(one["Net weight"]).toBe(netLabel(number(one, "Fill (g)"), "g", "us"));
    }
  });

  it("are as worked out by hand for a bare tin", () => {
    // 175.44 g of wax at 6.05 a kilogram, the tin 1.025, wick 0.08, label 0.04, four minutes at 15 an hour, a reject
    // in 25; price 8.5, fees 6.5 % and 0.25.
    const tin = byName(candles(), "Candle", "Bare, medium tin");
    const cost = (175.44 * 0.00605 + 1.025 + 0.08 + 0.04 + 1) / 0.96;
    expect(number(tin, "Cost")).toBeCloseTo(cost, 10);
    expect(number(tin, "Margin now")).toBeCloseTo((8.5 * 0.935 - 0.25 - cost) / 8.5, 10);
    expect(number(tin, "Asking price")).toBeCloseTo((cost + 0.25) / 0.435, 10);
    // 175 g are 6.1729 oz of 28.3495 g (16 CFR 500.19).
    expect(tin["Net weight"]).toBe("Net Wt 6.18 oz (175 g)");
  });

  it("are raised where they do not leave the target margin, and Margins counts them", () => {
    const expected = expectedCandles(book);
    const gaps = expected.map(({ ask }, i) => ask - number(candles()[i] as Row, "Price now"));
    expect(candles().map(({ Check }) => Check)).toEqual(
      gaps.map((gap) => (gap > 0 ? `raise by ${(Math.ceil(gap * 100) / 100).toFixed(2)}` : "")),
    );
    const below = (key: "margin" | "marginThen") => expected.filter((one) => one[key] < 0.5).length;
    expect([book.saved("Margins", "B5"), book.saved("Margins", "C5")]).toEqual([below("margin"), below("marginThen")]);
    expect(below("margin")).toBeGreaterThan(0);
    expect(below("marginThen")).toBeGreaterThan(below("margin"));
    const now = expected.map(({ margin }) => margin);
    expect(book.number("Margins", "B6")).toBeCloseTo(Math.min(...now), 10);
    expect(book.number("Margins", "B7")).toBeCloseTo(Math.max(...now), 10);
    // By hand: a tumbler at 17 leaves 17 x 0.935 - 0.25 and its cost; 260 are to be paid.
    const { cost = Number.NaN } = expected.find(({ candle }) => candle === "Quince, tumbler") ?? {};
    expect(book.saved("Margins", "B11")).toBe(Math.ceil(260 / (17 * 0.935 - 0.25 - cost)));
  });

  it("at their very asking price are not asked to be raised, however computers round", async () => {
    const noFees = { "Candles!B7": 0.45, "Candles!B8": 0, "Candles!B9": 0 };
    const rows = Array.from({ length: LAST - FIRST + 1 }, (_, i) => FIRST + i);
    const asks = await typed(noFees);
    const exact = await typed({
      ...noFees,
      ...Object.fromEntries(rows.map((at) => [`Candles!E${at}`, Number(asks("Candles", `K${at}`))])),
    });
    expect(rows.map((at) => shown(exact, at).check)).toEqual(rows.map(() => ""));
    expect(exact("Margins", "B5")).toBe(0);
  });
});

describe("a new candle", () => {
  const NEW = ["Rain, hexagon jar", "Hexagon jar", "Rain on slate", 5, 14] as const;

  /** The workbook with one more row below the table, as a table grows: each column's formula filled down. */
  function grown(): Sheet[] {
    return studio().map((sheet) => {
      if (sheet.name !== "Candles") return sheet;
      const last = FREE; // The last free row, from 0.
      const more: Cell[] = sheet.cells.filter(({ row: at }) => at === last).map((cell) => ({ ...cell, row: last + 1 }));
      const tables = sheet.tables?.map((one) => ({ ...one, rows: one.rows + 1 })) ?? [];
      return { ...sheet, cells: [...sheet.cells, ...more], tables };
    });
  }

  it.each([
    ["in a free row", FREE, studio],
    ["right below the table", FREE + 2, grown],
  ] as const)("is one row, %s: all the rest follows", async (_, at, sheets) => {
    const valueAt = await typed(row(at, ...NEW), sheets());
    // By hand: 172 x 0.86 g of fill; wax and 5 % of wax of oil; jar 1.5, wick 0.09, lid 0.6, label 0.04.
    const fill = 172 * 0.86;
    const materials = (fill / 1.05) * 0.00605 + (fill / 1.05) * 0.05 * 0.054;
    const cost = (materials + 2.23 + 1.25) / 0.96;
    const dearer = cost + ((fill / 1.05) * 0.00605 * 0.15) / 0.96;
    const found = shown(valueAt, at);
    expect(found.fill).toBeCloseTo(fill, 9);
    expect(found.materials).toBeCloseTo(materials, 9);
    expect(found.components).toBeCloseTo(2.23, 9);
    expect(found.cost).toBeCloseTo(cost, 9);
    expect(found.margin).toBeCloseTo((14 * 0.935 - 0.25 - cost) / 14, 9);
    expect(found.ask).toBeCloseTo((cost + 0.25) / 0.435, 9);
    expect(found.marginThen).toBeCloseTo((14 * 0.935 - 0.25 - dearer) / 14, 9);
    // 147.92 g are 5.2177 oz.
    expect(found.net).toBe("Net Wt 5.21 oz (147 g)");
    expect(found.check).toBe("");
  });

  const LACKING = [
    [["Fog, tin", "Small tin", "Moonlit fog", 4, 8], { cost: "", check: "no such scent" }],
    [["Rain, urn", "Urn", "Rain on slate", 4, 8], { cost: "", check: "no such vessel" }],
    [["Rain, sample jar", "Sample jar", "Rain on slate", 4, 8], { cost: "", check: "not weighed" }],
    [["Rain, votive", "Votive glass", "Rain on slate", 4, 8], { cost: "", check: "Votive glass: no price" }],
    [["Oil alone", "Small tin", "Cedar oil", 4, 8], { cost: "", check: "no load" }],
    [["Nothing yet"], { fill: "no such vessel", cost: "", check: "no such vessel" }],
  ] as const;
  it.each(LACKING.slice(0, cases(2, LACKING.length)))(
    "says what it lacks, and has no cost: %j",
    async (values, wanted) => {
      expect(shown(await typed(row(FREE, ...values)), FREE)).toMatchObject(wanted);
    },
  );

  it("says when labour or its price is not in it yet", async () => {
    const tin = ["Rain, small tin", "Small tin", "Rain on slate"] as const;
    const valueAt = await typed({ ...row(FREE, ...tin), ...row(FREE + 1, ...tin, 4) });
    expect(shown(valueAt, FREE).check).toBe("no minutes: no labour");
    expect(shown(valueAt, FREE + 1)).toMatchObject({ margin: "", marginThen: "", check: "no price now" });
    expect(Number(shown(valueAt, FREE + 1).cost) - Number(shown(valueAt, FREE).cost)).toBeCloseTo(1 / 0.96, 9);
  });

  it("is not there while its row is free", () => {
    const free = rowsOf("Candles").filter(({ Candle }) => Candle === null);
    expect(free).toHaveLength(2);
    for (const one of free) expect(Object.values(one).slice(5)).toEqual(Array(9).fill(""));
  });
});

describe("a change", () => {
  it("of a water weight, a load or a component is followed by cost, margin and label", async () => {
    const valueAt = await typed({ "Vessels!C11": 250, "Scents!B5": 0.09, "Components!C19": 2 });
    // By hand: 218 g of fill, 200 g of wax and 18 g of oil; two lids.
    const at = FIRST + candles().findIndex(({ Candle }) => Candle === "Quince, tumbler");
    const cost = (200 * 0.00605 + 18 * 0.0528 + 2.15 + 0.1 + 0.04 + 1.6 + 1.25) / 0.96;
    expect(shown(valueAt, at).cost).toBeCloseTo(cost, 9);
    expect(shown(valueAt, at).net).toBe(netLabel(218, "g", "us"));
    expect(valueAt("Label", "B10")).toBe(netLabel(218, "g", "us"));
  });

  it("of a recipe is followed by the candles of its scent alone", async () => {
    const valueAt = await typed({ "Recipes!C12": 0.05 });
    for (const [i, one] of candles().entries()) {
      const same = valueAt("Candles", `I${FIRST + i}`) === one.Cost;
      expect(same, text(one, "Candle")).toBe(one.Scent !== "Attic cedar");
    }
    const missing = await typed({ "Recipes!B13": "Old book oil" });
    expect(missing("Recipes", "G13")).toBe("Old book oil: no price");
    const at = FIRST + candles().findIndex(({ Scent }) => Scent === "Attic cedar");
    expect(shown(missing, at)).toMatchObject({ cost: "", check: "Old book oil: no price" });
  });

  it("of how much dearer wax may become moves that margin and no other", async () => {
    const valueAt = await typed({ "Candles!B10": 0 });
    for (let at = FIRST; at <= LAST; at++) {
      expect(valueAt("Candles", `I${at}`)).toBe(book.saved("Candles", `I${at}`));
      expect(valueAt("Candles", `L${at}`)).toBe(valueAt("Candles", `J${at}`));
    }
  });
});

describe("the label", () => {
  it("has the net weight of the candle's row, the lot of the day and what belongs to it", async () => {
    // 26 November is the 330th day of 2026; two weeks of cure; the batch pours 12 of them.
    expect(["B10", "B11", "B14", "B15"].map((at) => book.saved("Label", at))).toEqual([
      ...["Net Wt 7.62 oz (216 g)", "OST-2026-330-01", 46_352 + 14, 12],
    ]);
    const other = await typed({ "Label!B4": "Bare, tea-light cup", "Candles!B11": "metric" });
    expect(["B10", "B14", "B15"].map((at) => other("Label", at))).toEqual(["15 g", 46_352 + 3, 20]);
    expect((await typed({ "Label!B4": "Moonlit fog" }))("Label", "B10")).toBe("not on the sheet Candles");
    expect(book.words("Label")).toMatch(/differs from place to place/);
  });
});
