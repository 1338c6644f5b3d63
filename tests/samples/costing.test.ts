import { beforeAll, describe, expect, it } from "vitest";
import { costing } from "../../src/samples/costing";
import { expectedRange } from "./expectedRange";
import { byName, number, type Row, SavedBook, text, total, withEdits } from "./saved";

/** The saved values of the workbook, read back, against the core functions and against figures worked out by hand. */

let book: SavedBook;
beforeAll(async () => {
  book = await SavedBook.open("2-costing.xlsx");
});

/** Tables are called as their sheets, but where the pane would take them for a table of its own. */
const TABLES: Readonly<Record<string, string>> = {
  Prices: "Ingredients",
  Components: "ComponentPrices",
  Vessels: "VesselCosts",
};
const rowsOf = (sheet: string): Row[] => book.rows(sheet, TABLES[sheet] ?? sheet);
/** Pound in grams: UK Weights and Measures Act 1985, Schedule 1 Part V. */
const POUND = 453.59237;

describe("the prices", () => {
  it("of a gram count the pack, its unit and its delivery", () => {
    const perGram = (name: string) => number(byName(rowsOf("Prices"), "Ingredient", name), "Price of a gram");
    // By hand: price and delivery over the grams of the pack.
    expect(perGram("Soy wax")).toBeCloseTo(103.5 / 20_000, 15);
    expect(perGram("Beeswax")).toBeCloseTo(80.5 / (10 * POUND), 15);
    expect(perGram("Attic cedar")).toBeCloseTo(32 / POUND, 15);
    expect(perGram("Rain on slate")).toBeCloseTo(27 / 500, 15);
    expect(number(byName(rowsOf("Prices"), "Ingredient", "Beeswax"), "Pack in g")).toBeCloseTo(4535.9237, 9);
  });

  it("with dearer wax rise for waxes alone, and their delivery stays", () => {
    // By hand: 92 x 1.15 + 11.5 for 20 kg.
    const soy = byName(rowsOf("Prices"), "Ingredient", "Soy wax");
    expect(number(soy, "With dearer wax")).toBeCloseTo(117.3 / 20_000, 15);
    for (const row of rowsOf("Prices").filter(({ Kind }) => Kind !== "wax")) {
      expect(row["With dearer wax"]).toBe(row["Price of a gram"]);
    }
    expect(rowsOf("Prices").filter(({ Kind }) => Kind === "wax").length).toBeGreaterThanOrEqual(3);
  });
});

describe("the components", () => {
  it("share out a pack and its delivery, and a free row stays blank", () => {
    const rows = rowsOf("Components");
    for (const row of rows.filter(({ Component }) => Component !== null)) {
      const pack = number(row, "Pack price") + Number(row.Delivery ?? 0);
      expect(number(row, "Each")).toBeCloseTo(pack / number(row, "Pieces"), 12);
    }
    expect(byName(rows, "Component", null).Each).toBe("");
  });

  it("and the work come together for each vessel", () => {
    // By hand: vessel 25.8 / 12, wick 0.08, lid 0.8, label 0.072; five minutes at 15 an hour.
    const tumbler = byName(rowsOf("Vessels"), "Vessel", "Straight tumbler");
    expect(number(tumbler, "Components")).toBeCloseTo(2.15 + 0.08 + 0.8 + 0.072, 12);
    expect(number(tumbler, "Labour")).toBeCloseTo(1.25, 12);
    // Without a lid, and with three wicks.
    const bowl = byName(rowsOf("Vessels"), "Vessel", "Wide bowl");
    expect(number(bowl, "Components")).toBeCloseTo(7.7 + 3 * 0.065 + 0.072, 12);
  });
});

describe("the recipes", () => {
  const inHundred = (): Row[] => book.range("Recipes", "A4:F32").filter(({ Scent }) => Scent !== null);

  it("are divided to a hundred grams each", () => {
    const scents = new Set(inHundred().map(({ Scent }) => Scent));
    expect(scents.size).toBe(6);
    for (const scent of scents) {
      const rows = inHundred().filter(({ Scent }) => Scent === scent);
      expect(total(rows, "In 100 g")).toBeCloseTo(100, 10);
    }
    // By hand: wax W with 100 = 1.07 W + 0.1, three fifths of it soy; 4 % and 3 % of it the two scents.
    const wax = 99.9 / 1.07;
    const weights = inHundred()
      .filter(({ Scent }) => Scent === "Quince and cedar")
      .map((row) => number(row, "In 100 g"));
    for (const [i, weight] of [0.6 * wax, 0.2 * wax, 0.2 * wax, 0.04 * wax, 0.03 * wax, 0.1].entries()) {
      expect(weights[i]).toBeCloseTo(weight, 10);
    }
  });

  it("have soy wax in each, and two scents in one", () => {
    for (const scent of new Set(inHundred().map(({ Scent }) => Scent))) {
      const own = inHundred().filter((row) => row.Scent === scent);
      expect(own.map((row) => row.Ingredient)).toContain("Soy wax");
    }
    const oils = inHundred().filter((row) => row.Scent === "Quince and cedar" && row.Basis === "of wax");
    expect(oils).toHaveLength(2);
  });
});

describe("the range", () => {
  it("is twenty candles, each weight by weight its fill", () => {
    const candles = rowsOf("Candles");
    expect(candles).toHaveLength(20);
    const ingredients = rowsOf("Prices").map((row) => text(row, "Ingredient"));
    for (const row of candles) {
      const vessel = byName(rowsOf("Vessels"), "Vessel", row.Vessel);
      expect(row["Fill (g)"]).toBe(vessel["Fill (g)"]);
      const weights = ingredients.map((name) => number(byName(rowsOf("Weights"), "Candle", row.Candle), name));
      expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(number(row, "Fill (g)"), 8);
    }
    expect(book.saved("Candles", "A3")).toBe("");
    expect(book.saved("Range", "A10")).toBe("");
  });

  it("costs, and leaves, and asks what the core functions say", () => {
    const expected = expectedRange(book);
    expect(expected).toHaveLength(20);
    for (const [i, row] of rowsOf("Range").entries()) {
      const one = expected[i];
      expect(row.Candle).toBe(one?.candle);
      expect(number(row, "Cost")).toBeCloseTo(one?.cost ?? Number.NaN, 10);
      expect(number(row, "Margin now")).toBeCloseTo(one?.margin ?? Number.NaN, 10);
      expect(number(row, "Asking price")).toBeCloseTo(one?.ask ?? Number.NaN, 10);
      expect(number(row, "Cost with dearer wax")).toBeCloseTo(one?.costThen ?? Number.NaN, 10);
      expect(number(row, "Margin with dearer wax")).toBeCloseTo(one?.marginThen ?? Number.NaN, 10);
      expect(number(row, "Asking price with dearer wax")).toBeCloseTo(one?.askThen ?? Number.NaN, 10);
    }
  });

  it("is as worked out by hand for a bare tumbler", () => {
    // 172.8 g soy and 43.2 g beeswax, parts 3.102, labour 1.25, a reject in 25; price 15, fees 6.5 % and 0.25.
    const row = byName(rowsOf("Range"), "Candle", "Bare, tumbler");
    const cost = (172.8 * 0.005175 + (43.2 * 80.5) / (10 * POUND) + 3.102 + 1.25) / 0.96;
    const left = 15 * 0.935 - 0.25 - cost;
    expect(number(row, "Cost")).toBeCloseTo(cost, 10);
    expect(number(row, "Margin now")).toBeCloseTo(left / 15, 10);
    expect(number(row, "Asking price")).toBeCloseTo((cost + 0.25) / 0.435, 10);
    expect(row["Break even"]).toBe(Math.ceil(260 / left));
  });

  it("asks more, and keeps less, when wax is dearer", () => {
    for (const row of rowsOf("Range")) {
      expect(number(row, "Cost with dearer wax")).toBeGreaterThan(number(row, "Cost"));
      expect(number(row, "Margin with dearer wax")).toBeLessThan(number(row, "Margin now"));
      expect(number(row, "Asking price with dearer wax")).toBeGreaterThan(number(row, "Asking price"));
    }
  });

  it("says by how much to raise a price that is below the asking price, and else nothing", () => {
    const gaps = expectedRange(book).map(({ ask }, i) => ask - number(rowsOf("Range")[i] as Row, "Price now"));
    expect(rowsOf("Range").map(({ Check }) => Check)).toEqual(
      gaps.map((gap) => (gap > 0 ? `raise by ${(Math.ceil(gap * 100) / 100).toFixed(2)}` : "")),
    );
  });

  it("prints on one page of A4", () => {
    const page = book.page("Range");
    const sum = (of: readonly number[]) => of.reduce((all, one) => all + one, 0);
    // Pixels of a width: ECMA-376 Part 1, 18.3.1.13, from memory. A row is 15 points unless it says its height.
    const width = sum(Array.from({ length: 10 }, (_, i) => ((page.getColumn(i + 1).width ?? 0) * 7 + 5) * 0.75));
    const height = sum(Array.from({ length: 32 }, (_, i) => page.getRow(i + 1).height ?? 15));
    // A4 is 297 by 210 mm (ISO 216).
    const { left = 0, right = 0, top = 0, bottom = 0 } = page.pageSetup.margins ?? {};
    const scale = Math.min(1, ((297 / 25.4 - left - right) * 72) / width);
    expect(height * scale).toBeLessThan((210 / 25.4 - top - bottom) * 72);
  });

  it("has candles on both sides of the target margin, counted on the sheet Margins", () => {
    const below = (heading: string) => rowsOf("Range").filter((row) => number(row, heading) < 0.5).length;
    expect(below("Margin now")).toBeGreaterThan(0);
    expect(below("Margin now")).toBeLessThan(20);
    expect([book.saved("Margins", "B5"), book.saved("Margins", "C5")]).toEqual(
      ["Margin now", "Margin with dearer wax"].map(below),
    );
    expect(rowsOf("Range").filter(({ Check }) => Check !== "")).toHaveLength(below("Margin now"));
    const now = rowsOf("Range").map((row) => number(row, "Margin now"));
    expect([book.saved("Margins", "B6"), book.saved("Margins", "B7")]).toEqual([Math.min(...now), Math.max(...now)]);
  });
});

describe("the stock", () => {
  it("has cost what its oldest lots or the mean of all have cost", () => {
    // By hand: 46 kg are the first 20 at 4.9 and 26 of the next at 4.75; all 100 kg have cost 493.
    expect(book.saved("Lots", "B4")).toBe(46);
    expect(book.number("Lots", "B7")).toBeCloseTo(98 + 26 * 4.75, 10);
    expect(book.number("Lots", "B8")).toBeCloseTo(46 * 4.93, 10);
    expect(book.number("Lots", "D7")).toBeCloseTo(493 - 221.5, 10);
    expect(book.number("Lots", "D8")).toBeCloseTo(54 * 4.93, 10);
  });

  it("is of dated lots, the oldest first, with two free rows", () => {
    const lots = rowsOf("Lots").filter(({ Bought }) => Bought !== null);
    const days = lots.map((row) => number(row, "Bought"));
    expect(days).toEqual([...days].sort((a, b) => a - b));
    // 12 January is the 12th day of its year, 23 February the 54th.
    expect(lots.map(({ Lot }) => Lot).slice(0, 2)).toEqual(["SOY-2026-012-01", "SOY-2026-054-01"]);
    const free = rowsOf("Lots").filter(({ Bought }) => Bought === null);
    expect(free.map((row) => [row.Lot, row["Price of a kg"]])).toEqual([
      ["", ""],
      ["", ""],
    ]);
  });
});

describe("what to buy", () => {
  const rows = [8, 9, 10, 11, 12, 13, 14, 15, 16];

  it("is what all candles to make take beyond what is on hand, with the loss", () => {
    for (const row of rows) {
      const ingredient = String(book.saved("To buy", `A${row}`));
      const taken = rowsOf("Candles").reduce((sum, one) => {
        const weights = byName(rowsOf("Weights"), "Candle", one.Candle);
        return sum + number(one, "To make") * number(weights, ingredient);
      }, 0);
      expect(book.number("To buy", `B${row}`)).toBeCloseTo(taken * 1.03, 8);
      const missing = Math.ceil(Math.max(0, taken * 1.03 - book.number("To buy", `C${row}`)));
      expect(book.saved("To buy", `D${row}`)).toBe(missing);
    }
  });

  it("covers it at the least cost: no other packs do better", () => {
    for (const row of rows) {
      const cells = (letters: string) => [...letters].map((letter) => book.number("To buy", `${letter}${row}`));
      const [missing = 0] = cells("D");
      const [sizes, prices, counts] = [cells("EFG"), cells("HIJ"), cells("KLM")];
      const sumOf = (of: readonly number[], times: readonly number[]) =>
        of.reduce((sum, one, i) => sum + one * (times[i] ?? 0), 0);
      let least = Number.POSITIVE_INFINITY;
      const most = sizes.map((size) => (size > 0 ? Math.ceil(missing / size) : 0)) as [number, number, number];
      for (let a = 0; a <= most[0]; a++) {
        for (let b = 0; b <= most[1]; b++) {
          for (let c = 0; c <= most[2]; c++) {
            if (sumOf(sizes, [a, b, c]) >= missing) least = Math.min(least, sumOf(prices, [a, b, c]));
          }
        }
      }
      expect(sumOf(sizes, counts)).toBeGreaterThanOrEqual(missing);
      expect(sumOf(prices, counts)).toBeCloseTo(least, 8);
      expect(book.number("To buy", `N${row}`)).toBeCloseTo(least, 8);
    }
    const costs = rows.map((row) => book.number("To buy", `N${row}`));
    expect(book.number("To buy", "N17")).toBeCloseTo(
      costs.reduce((sum, cost) => sum + cost, 0),
      8,
    );
  });

  it("takes the first pack from the prices, in grams and with its delivery", () => {
    expect(book.number("To buy", "E8")).toBeCloseTo(20_000, 9);
    expect(book.number("To buy", "E13")).toBeCloseTo(POUND, 9);
    expect(book.number("To buy", "H8")).toBeCloseTo(103.5, 12);
  });
});

describe("the labels", () => {
  it("never say more than there is, and carry the lot of their day and run", () => {
    const rows = rowsOf("Labels");
    expect(rows.map(({ Candle }) => Candle)).toEqual(rowsOf("Range").map(({ Candle }) => Candle));
    // By hand with 16 CFR 500.19: 216 g are 7.619 oz; 631 g are 1 lb and 177.408 g, 6.2579 oz.
    expect(byName(rows, "Candle", "Bare, tumbler")).toMatchObject({
      "Ounces and grams": "Net Wt 7.61 oz (216 g)",
      Metric: "216 g",
      // 26 November is the 330th day of 2026.
      Lot: "OST-2026-330-06",
    });
    expect(byName(rows, "Candle", "Quince, wide bowl")).toMatchObject({
      "Ounces and grams": "Net Wt 1 lb 6.25 oz (631 g)",
      Lot: "OST-2026-330-01",
    });
  });
});

describe("the first sheet", () => {
  it("says that all is invented, what to change, and cautions", () => {
    const all = book.words("Read me");
    for (const word of ["invented", "pack of soy wax", "licensed", "Test-burn", "Rules", "#NAME?"])
      expect(all).toContain(word);
  });
});

describe("a change", () => {
  it("of one wax price moves cost, margin and asking price of every candle", async () => {
    expect(book.saved("Prices", "A5")).toBe("Soy wax");
    const now = expectedRange(book);
    const then = expectedRange(book, { "Soy wax": 120 });
    const valueAt = await withEdits(costing(), { "Prices!C5": 120 });
    for (const [i, one] of then.entries()) {
      const row = 13 + i;
      expect(valueAt("Range", `A${row}`)).toBe(one.candle);
      const read = ["C", "D", "E", "H", "I", "J"].map((letter) => Number(valueAt("Range", `${letter}${row}`)));
      const wanted = [one.cost, one.margin, one.ask, one.costThen, one.marginThen, one.askThen];
      for (const [k, value] of wanted.entries()) expect(read[k]).toBeCloseTo(value, 10);
      const before = now[i] as typeof one;
      expect(one.cost - before.cost).toBeGreaterThan(0.05);
      expect(before.margin - one.margin).toBeGreaterThan(0.003);
      expect(one.ask - before.ask).toBeGreaterThan(0.1);
    }
  });

  it("of a price is checked against the asking price, as the sheet Margins counts", async () => {
    const column = (valueAt: Awaited<ReturnType<typeof withEdits>>, letter: string) =>
      Array.from({ length: 20 }, (_, i) => valueAt("Range", `${letter}${13 + i}`) ?? "");
    const priced = (prices: readonly number[], others: Record<string, number> = {}) =>
      withEdits(costing(), {
        ...Object.fromEntries(prices.map((price, i) => [`Range!B${13 + i}`, price])),
        ...others,
      });
    const expectEnough = (valueAt: Awaited<ReturnType<typeof withEdits>>) => {
      expect(column(valueAt, "F")).toEqual(Array(20).fill(""));
      expect(valueAt("Margins", "B5")).toBe(0);
    };

    // By hand, as above: a bare tumbler costs 6.2635 and asks 14.9735, which is 0.9735 above 14.
    expect(book.saved("Range", "A32")).toBe("Bare, tumbler");
    const low = await priced(Array<number>(20).fill(14));
    expect(low("Range", "F32")).toBe("raise by 0.98");
    const checks = column(low, "F").map(String);
    expect(low("Margins", "B5")).toBe(checks.filter((check) => check !== "").length);
    expectEnough(await priced(checks.map((check) => 14 + Number(check.replace("raise by ", "")))));

    // At the very asking price some margins come out as 0.44999999999999996.
    const noFees = { "Range!B4": 0.45, "Range!B5": 0, "Range!B6": 0 };
    const asks = column(await priced([], noFees), "E").map(Number);
    const exact = await priced(asks, noFees);
    expect(column(exact, "D").some((margin) => Number(margin) < 0.45)).toBe(true);
    expectEnough(exact);
  });

  it("of how much dearer wax may become moves the columns with dearer wax, and no other", async () => {
    const valueAt = await withEdits(costing(), { "Range!B9": 0 });
    for (let row = 13; row <= 32; row++) {
      expect(valueAt("Range", `C${row}`)).toBe(book.saved("Range", `C${row}`));
      expect(valueAt("Range", `H${row}`)).toBe(valueAt("Range", `C${row}`));
      expect(valueAt("Range", `I${row}`)).toBe(valueAt("Range", `D${row}`));
    }
    expect(valueAt("Margins", "C5")).toBe(book.saved("Margins", "B5"));
  });

  it("to a scent without a recipe gives no cost, and says why", async () => {
    const valueAt = await withEdits(costing(), { "Candles!B8": "Moonlit fog" });
    expect(valueAt("Candles", "H8")).toMatchObject({ error: "#N/A" });
    expect(valueAt("Range", "C15")).toMatchObject({ error: "#N/A" });
    expect(valueAt("Range", "D15")).toMatchObject({ error: "#N/A" });
    expect(valueAt("Range", "D16")).toBe(book.saved("Range", "D16"));
    expect(valueAt("Candles", "A3")).toMatch(/its scent has no recipe/);
    expect(valueAt("Range", "A10")).toMatch(/Candles/);
  });

  it("of the order of the sheet Weights changes nothing, and a candle that is missing there has no cost", async () => {
    const swapped = await withEdits(costing(), { "Weights!A7": "Bare, tumbler", "Weights!A26": "Quince, small tin" });
    expect(swapped("Weights", "B7")).toBe(216);
    for (const row of [6, 25]) expect(swapped("Candles", `H${row}`)).toBe(book.saved("Candles", `H${row}`));
    for (let row = 8; row <= 16; row++) {
      expect(Number(swapped("To buy", `B${row}`))).toBeCloseTo(book.number("To buy", `B${row}`), 8);
    }
    const missing = await withEdits(costing(), { "Weights!A7": "Bare, tumbler" });
    expect(missing("Candles", "H6")).toMatchObject({ error: "#N/A" });
    expect(missing("Candles", "A3")).toMatch(/no row on the sheet Weights/);
  });

  it("to an ingredient that Weights has no column for gives no cost either", async () => {
    const valueAt = await withEdits(costing(), { "Recipes!B25": "Palm wax" });
    expect(valueAt("Candles", "H24")).toMatchObject({ error: "#N/A" });
    expect(valueAt("Candles", "A3")).toMatch(/no column/);
  });

  it("of what was used beyond the stock is spoken of", async () => {
    const valueAt = await withEdits(costing(), { "Lots!B4": 101 });
    expect(valueAt("Lots", "B7")).toMatchObject({ error: "#N/A", message: expect.stringContaining("100 in stock") });
  });

  it("of what is to be made changes what to buy", async () => {
    const valueAt = await withEdits(costing(), { "Candles!D6": 0, "To buy!C8": 0 });
    // By hand: 24 small tins fewer, 99 g each with 70.6132 % soy wax, and the loss; the rest as saved.
    const soy = book.number("To buy", "B8") - ((24 * 99 * 0.75 * 99.8) / 100 / 1.06) * 1.03;
    expect(Number(valueAt("To buy", "B8"))).toBeCloseTo(soy, 6);
    expect(valueAt("To buy", "D8")).toBe(Math.ceil(soy));
  });
});
