import { beforeAll, describe, expect, it } from "vitest";
import { studio } from "../../src/samples/studio";
import { SavedBook, type Typed, withEdits } from "./saved";

/**
 * What is typed into the studio's workbook and cannot be counted with is said in words, and no figure that needs it is
 * shown as if it were right. Figures by hand, from what stands in the workbook.
 */

let book: SavedBook;
beforeAll(async () => {
  book = await SavedBook.open("1-studio.xlsx");
});

type ValueAt = Awaited<ReturnType<typeof withEdits>>;
/** What cells show, an empty text where that is nothing. */
async function typed(edits: Record<string, Typed>): Promise<ValueAt> {
  const sheets = studio().filter(({ name }) => name !== "Read me");
  const valueAt = await withEdits(sheets, edits);
  return (sheet, address) => valueAt(sheet, address) ?? "";
}
/** The candles are in the rows 14 to 27 of their sheet. */
const CANDLES = Array.from({ length: 14 }, (_, i) => 14 + i);
const rowOf = (valueAt: ValueAt, at: number) => {
  const [margin, ask, check] = ["J", "K", "N"].map((letter) => valueAt("Candles", `${letter}${at}`));
  return { cost: valueAt("Candles", `I${at}`), margin, ask, check };
};
const NONE = { cost: "", margin: "", ask: "" };
const sayings = (valueAt: ValueAt) => ({
  candles: valueAt("Candles", "A12"),
  moves: valueAt("Moves", "A3"),
  components: valueAt("Components", "A3"),
  recipes: valueAt("Recipes", "A3"),
  batch: valueAt("Batch", "A3"),
  pots: valueAt("Pots", "A7"),
});

it("says nothing while nothing is wrong", () => {
  const places = ["Candles!A12", "Moves!A3", "Components!A3", "Recipes!A3", "Batch!A3", "Pots!A7"];
  for (const place of places) {
    const [sheet = "", address = ""] = place.split("!");
    expect(book.page(sheet).getCell(address).formula, place).toBeTruthy();
    expect(book.saved(sheet, address), place).toBe("");
  }
  expect(book.rows("Items", "Items").map(({ Check }) => Check)).toEqual(book.rows("Items", "Items").map(() => ""));
});

describe("minutes", () => {
  let valueAt: ValueAt;
  beforeAll(async () => {
    const minutes = ["5 min", 5 / 1440, "five", -5, "5", 0, 0.5, 5.5 / 24, 0.1];
    valueAt = await typed(Object.fromEntries(minutes.map((one, i) => [`Candles!D${14 + i}`, one])));
  });

  it.each([
    [14, "5 min", "Minutes: write a number"],
    [15, "0:05", "Minutes: write 5, not 0:05"],
    [16, "five", "Minutes: write a number"],
    [17, "-5", "Minutes: below 0"],
    [18, "5 as a text", "Minutes: write a number"],
  ])("in row %i that are no count of minutes, %s, leave no cost and no price", (at, _, check) => {
    expect(rowOf(valueAt, at)).toEqual({ ...NONE, check });
  });

  it("of 0 are no labour, as blank ones are", () => {
    expect(rowOf(valueAt, 19).check).toBe("no minutes: no labour");
  });

  it("below 1 are asked about: half past five may be five and a half", () => {
    // The small tin in row 20 and the jar in row 21 leave their margin with hardly any labour; the bowl does too.
    for (const at of [20, 21, 22]) expect(rowOf(valueAt, at).check, `row ${at}`).toMatch(/^minutes below 1\?/);
    // Half a minute of an hour at 15, a reject in 25.
    const withAll = book.number("Candles", "I20");
    expect(Number(rowOf(valueAt, 20).cost)).toBeCloseTo(withAll - (3.5 / 60) * (15 / 0.96), 9);
  });

  it("leave the other candles as they were", () => {
    for (const at of [23, 27]) expect(rowOf(valueAt, at).cost).toBe(book.saved("Candles", `I${at}`));
  });
});

it("a price now that is a text is asked for as a number", async () => {
  const valueAt = await typed({ "Candles!E15": "17 EUR" });
  expect(rowOf(valueAt, 15)).toMatchObject({ margin: "", check: "Price now: write a number" });
});

describe("the settings of the candles", () => {
  it.each<[Typed, string]>([
    ["packs", "a word that is neither"],
    [null, "nothing"],
  ])("take prices from one of two words, and there is no price by %j, %s", async (word) => {
    const valueAt = await typed({ "Candles!B4": word });
    expect(valueAt("Items", "J5")).toBe("no price");
    expect(valueAt("Items", "K5")).toBe('Prices from: write "last paid" or "pack".');
    expect(valueAt("Candles", "A12")).toBe('Prices from: write "last paid" or "pack".');
    for (const at of CANDLES) expect(rowOf(valueAt, at), `row ${at}`).toMatchObject(NONE);
    expect(rowOf(valueAt, 27).check).toMatch(/no price/);
  });

  it("know the two words with spaces around them and in capitals", async () => {
    // The first pack of cedar oil: 50 g at 5.2.
    const valueAt = await typed({ "Candles!B4": " Pack " });
    expect(valueAt("Items", "J8")).toBeCloseTo(5.2 / 50, 12);
    expect(valueAt("Candles", "A12")).toBe("");
  });

  it.each<[string, Typed, RegExp]>([
    ["B5", null, /^Labour, one hour: write a number, 0 for none\.$/],
    ["B8", "6.5 percent", /^Fee, of the price: write a number/],
    ["B9", -1, /^Fee, each sale: write 0 or more\.$/],
    ["B10", 15, /are shares: write 4% or 0\.04/],
    ["B7", 50, /are shares/],
  ])("%s as %j is asked for above the table", async (at, value, words) => {
    expect((await typed({ [`Candles!${at}`]: value }))("Candles", "A12")).toMatch(words);
  });
});

describe("a move", () => {
  /** What row 48 says of the wax that was bought last. */
  const PAID: [Typed, string][] = [
    ["60.5 EUR", "in another way than as a number"],
    [0, "as nothing"],
    [-60.5, "below 0"],
  ];
  it.each(PAID)("that says %j in Paid, %s, gives the item no price", async (paid) => {
    const valueAt = await typed({ "Moves!E48": paid });
    const words = "Row 48: write Paid as a number above 0, without the currency, or leave it blank.";
    expect(sayings(valueAt)).toMatchObject({ moves: words, candles: `Moves: ${words}` });
    expect(valueAt("Items", "J5")).toBe("no price");
    expect(valueAt("Items", "K5")).toBe("Paid on the sheet Moves: write numbers above 0");
    // A bare tin is of wax alone.
    expect(rowOf(valueAt, 27)).toEqual({ ...NONE, check: "Wax: no price" });
    // The cedar candles have other waxes.
    expect(rowOf(valueAt, 17).cost).toBe(book.saved("Candles", "I17"));
  });

  it("that was paid for and brought nothing in gives the item no price", async () => {
    const valueAt = await typed({ "Moves!D48": 0 });
    const words = "Row 48: Paid stands beside nothing that came in.";
    expect(sayings(valueAt)).toMatchObject({ moves: words, candles: `Moves: ${words}` });
    expect(valueAt("Items", "K5")).toBe("Paid on the sheet Moves: beside nothing that came in");
    expect(rowOf(valueAt, 27)).toEqual({ ...NONE, check: "Wax: no price" });
  });

  it("without what was paid leaves the price that was paid before, as it is said", async () => {
    // By hand: the first lot cost 56 for 10 kg.
    expect((await typed({ "Moves!E48": null }))("Items", "J5")).toBeCloseTo(0.0056, 12);
  });

  it("does not matter for prices from packs", async () => {
    const valueAt = await typed({ "Moves!E48": "60.5 EUR", "Candles!B4": "pack" });
    expect(valueAt("Items", "J5")).toBeCloseTo(0.00605, 12);
  });

  it.each<[Typed]>([["10000 g"], [null]])("that changes by %j leaves what is on hand unknown", async (change) => {
    const valueAt = await typed({ "Moves!D5": change });
    expect(sayings(valueAt).moves).toBe("Row 5: write Change as a number.");
    expect([valueAt("Items", "C5"), valueAt("Items", "K5")]).toEqual([
      "see Check",
      "Change on the sheet Moves: write numbers",
    ]);
    expect(valueAt("Shelf", "B17")).toBe("see Check on Items");
    expect(valueAt("Shelf", "B24")).toMatchObject({ error: "#VALUE!" });
  });

  it.each<[Typed]>([["Waxx"], [null]])(
    "of %j, no item, is named where it stands and above the candles",
    async (item) => {
      const words = "Row 48: no such item on the sheet Items, so nothing counts it.";
      expect(sayings(await typed({ "Moves!B48": item }))).toMatchObject({ moves: words, candles: `Moves: ${words}` });
    },
  );
});

describe("an item", () => {
  it("with a figure that is none has no price, and Check says what to write", async () => {
    const SLIPS: [string, Typed, string][] = [
      ["D8", "50 g", "Pack size: write a number above 0"],
      ["D6", 0, "Pack size: write a number above 0"],
      ["E7", "34.5 EUR", "Pack price: write a number"],
      ["E11", -9.6, "Pack price: write a number"],
      ["F13", "x", "Unit price: write a number"],
      ["G14", "few", "Reorder below: write a number"],
      ["I15", "free", "Delivery: write a number"],
    ];
    const valueAt = await typed(Object.fromEntries(SLIPS.map(([at, value]) => [`Items!${at}`, value])));
    for (const [at, , check] of SLIPS) {
      const row = at.slice(1);
      expect([valueAt("Items", `J${row}`), valueAt("Items", `K${row}`)], at).toEqual(["no price", check]);
    }
    expect(rowOf(valueAt, 21)).toEqual({ ...NONE, check: "Plum thunder: no price" });
  });

  it("with a unit price needs a kind: it is for a kilogram, or for a piece", async () => {
    const valueAt = await typed({ "Items!B35": "wik", "Candles!B4": "pack" });
    expect([valueAt("Items", "J35"), valueAt("Items", "K35")]).toEqual([
      "no price",
      "Kind: write wax, scent, dye, other, vessel or component",
    ]);
  });
});

describe("a component", () => {
  it.each<[Typed]>([["xyz"], [null]])("of %j, no vessel, is named above the candles", async (vessel) => {
    const words = "Row 19: no such vessel on the sheet Vessels, so no candle pays for it.";
    const found = sayings(await typed({ "Components!A19": vessel }));
    expect(found).toMatchObject({ components: words, candles: `Components: ${words}` });
  });

  it("without its item or how many of it leaves the candle without a cost", async () => {
    const edits = { "Components!B10": null, "Components!C12": 0, "Components!C15": -1, "Components!C19": "one" };
    const valueAt = await typed({ ...edits, "Shelf!B28": "Tumbler lid" });
    expect(rowOf(valueAt, 17)).toEqual({ ...NONE, check: "which item?" });
    expect(rowOf(valueAt, 21)).toEqual({ ...NONE, check: "Wick, cotton 5: how many?" });
    expect(rowOf(valueAt, 14)).toEqual({ ...NONE, check: "Wick, cotton 4: how many?" });
    expect(rowOf(valueAt, 15)).toEqual({ ...NONE, check: "Tumbler lid: how many?" });
    expect(valueAt("Shelf", "C21")).toBe("how many?");
    expect(valueAt("Shelf", "B29")).toBe("Each on Components: no number");
  });
});

describe("a recipe", () => {
  it.each<[string, Typed, string, string]>([
    ["C10", null, "Soy wax: what share?", "Row 10: write its share as a number above 0."],
    ["C12", 0, "Cedar oil: what share?", "Row 12: write its share as a number above 0."],
    ["C12", "6 of 100", "recipe not right yet", "Row 12: write its share as a number above 0."],
    ["B12", null, "which ingredient?", "Row 12: which ingredient?"],
  ])("with %s as %j leaves its candles without a cost", async (at, value, check, words) => {
    const valueAt = await typed({ [`Recipes!${at}`]: value });
    expect(rowOf(valueAt, 17)).toEqual({ ...NONE, check });
    expect(sayings(valueAt)).toMatchObject({ recipes: words, candles: `Recipes: ${words}` });
  });

  it("of a scent that is not known is named, and is not weighed out", async () => {
    const valueAt = await typed({ "Recipes!A10": "xyz", "Recipes!B6": "Attic" });
    const words = "Row 10: no such scent on the sheet Scents.";
    expect(sayings(valueAt)).toMatchObject({ recipes: words, candles: `Recipes: ${words}` });
    expect([valueAt("Recipes", "H10"), valueAt("Recipes", "H8")]).toEqual(["no such scent", ""]);
  });
});

describe("other sheets", () => {
  let valueAt: ValueAt;
  beforeAll(async () => {
    valueAt = await typed({
      ...{ "Scents!C5": null, "Scents!D6": null, "Scents!E7": null, "Scents!L5": null, "Vessels!C12": 0 },
      ...{ "Batch!C6": null, "Pots!B5": null, "Pots!B6": "Quince", "Pots!A9": "xyz", "Test pours!C5": null },
    });
  });

  it("ask for what a scent's load is of, and for its limits", () => {
    expect(["F5", "F6", "F7"].map((at) => valueAt("Scents", at))).toEqual([
      ...["of wax or of total?", "no wax maximum", "no product limit"],
    ]);
  });

  it("have no day of cure without its days, or without the day of the pour", async () => {
    expect(valueAt("Label", "B14")).toBe("no cure days on Scents");
    const without = await typed({ "Label!B5": null, "Scents!L6": -14, "Label!B4": "Cedar, glass" });
    expect(without("Label", "B14")).toBe("write the day in Poured on");
    expect((await typed({ "Scents!L5": -14 }))("Label", "B14")).toBe("check Cure days on Scents");
  });

  it("take water of nothing for a vessel that is not weighed", () => {
    expect(rowOf(valueAt, 18)).toEqual({ ...NONE, check: "not weighed" });
  });

  it("name a row of the batch that lacks something, and a scent that the pots leave out", () => {
    expect(sayings(valueAt)).toMatchObject({
      batch: "Row 6: vessel, scent or quantity is missing.",
      pots: "Extra to melt (loss): write a share, 0 for none.",
    });
    expect(valueAt("Pots", "B9")).toBe("not on Batch");
  });

  it("plan and weigh out nothing for a scent that the batch does not have", () => {
    expect(["A17", "B17"].map((at) => valueAt("Pots", at))).toEqual(["not on the sheet Batch", ""]);
    expect(["B7", "B8", "B9"].map((at) => valueAt("Shelf", at))).toEqual(["not on Batch", "not on Batch", ""]);
    expect(valueAt("Shelf", "C7")).toMatchObject({ error: "#VALUE!" });
  });

  it("say that a test pour with one weight is left out", () => {
    expect(valueAt("Test pours", "D5")).toBe("left out");
  });

  it("name the scent's row that the pots leave out", async () => {
    expect(sayings(await typed({ "Pots!A9": "xyz" })).pots).toBe("Batch: Row 6: its scent is not below.");
  });
});
