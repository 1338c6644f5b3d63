import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { isError } from "../../../src/runsheet/problem";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { headingUnit } from "../../../src/runsheet/tables/headings/headingUnit";
import { headingWords } from "../../../src/runsheet/tables/headings/headingWords";
import { potsIn, potsInNote, potsNote } from "../../../src/runsheet/tables/potsWords";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { TableRows, Tables } from "../../../src/runsheet/tables/tableRows";
import { wickIn } from "../../../src/runsheet/tables/vessels";
import { isForWicks, isThisWick, isWick, wickOf } from "../../../src/runsheet/tables/wick";
import type { CellValue } from "../../../src/sheet/sheet";

function tableOf<K extends TableTypeId>(type: K, headings: string[], ...rows: CellValue[][]): TableRows<K> {
  return { type, headings, rows, columns: matchColumns(type, headings) };
}
const POUR = tableOf("pour", ["Vessel", "Quantity", "Fill (g)"], ["Tin", 2, 200]);
const said = (tables: object) =>
  buildRun({ pour: POUR, ...tables } as Tables, { ...FIRST_SETTINGS, load: 0 }).problems.map(
    (one) => `${isError(one) ? "fix" : "check"} ${one.table} ${one.row} ${one.field}: ${one.text}`,
  );

describe("rows right below a table", () => {
  const below = (rows: number, isLeftOut = false) => said({ pour: { ...POUR, below: { rows, isLeftOut } } });
  it("stop the run until it is decided, and are only spoken of once they are left out", () => {
    expect(below(1)).toEqual([
      "fix pour 1 undefined: 1 row right below the table, no part of it: to be taken in or left out",
    ]);
    expect(below(3)).toEqual([
      "fix pour 1 undefined: 3 rows right below the table, no part of it: to be taken in or left out",
    ]);
    expect(below(2, true)).toEqual(["check pour 1 undefined: 2 rows below the table left out"]);
    expect(below(0)).toEqual([]);
  });
});

describe("pots in the note of a move", () => {
  it("are read as they were written, after whatever else stands there", () => {
    for (const pots of ["all", ["Cedar: pot 1 of 2"], ["A", "B"]] as const) {
      expect(potsInNote(potsNote(pots))).toEqual(pots);
      expect(potsInNote(`correction, ${potsNote(pots)}`)).toEqual(pots);
    }
    expect([potsNote(undefined), potsNote([])]).toEqual(["", ""]);
    expect(["", "small pots: none", "all pots were clean", "crackpots: A"].map(potsInNote)).toEqual([
      ...[undefined, ["none"], undefined, undefined],
    ]);
    expect(potsIn(" A ;; B;")).toEqual(["A", "B"]);
  });
});

describe("a recipe", () => {
  const read = (...rows: CellValue[][]) =>
    readTable(tableOf("recipes", ["Scent", "Ingredient", "Share", "Basis", "Kind"], ...rows), "g");
  const wrong = (...rows: CellValue[][]) =>
    read(...rows)
      ?.get("cedar")
      ?.wrong.map(({ field, text }) => `${field}: ${text}`);

  it("names each ingredient, and leaves out rows without a share", () => {
    expect(wrong(["Cedar", "", 1, "part", null])).toEqual([
      "ingredient: Ingredient: the cell is blank; name the ingredient",
    ]);
    expect(read(["Cedar", "", null, null, null], [null, "Soft wax", 1, "part", null])?.size).toBe(0);
  });

  it("takes a load without a kind for scent, asks about one called otherwise, and knows dye by its kind", () => {
    const one = (...row: CellValue[]) => read(["Cedar", ...row])?.get("cedar")?.ingredients[0];
    expect(one("Cedar oil", 0.06, "of wax", null)).toMatchObject({ isScent: true, isDye: false });
    for (const kind of ["scent", "fragrance", "Oil"])
      expect(one("X", 0.06, "of wax", kind)).toMatchObject({ isScent: true });
    for (const kind of ["dye", "Colour", "color"]) {
      expect(one("X", 0.01, "of wax", kind)).toMatchObject({ isScent: false, isDye: true });
    }
    expect(one("X", 0.01, "of total", "additive")).toMatchObject({ isScent: false, isDye: false, basis: "of total" });
    expect(one("Soft wax", 3, "Parts", null)).toMatchObject({ basis: "part", isScent: false });
    for (const name of ["Green dye", "Mica gold", "UV stabilizer", "colour chip"]) {
      expect(wrong(["Cedar", name, 0.01, "of wax", null])).toEqual([
        `sort: ${name} has no kind and is taken as scent; write dye or other`,
      ]);
    }
  });

  // Dye colours by tenths of a percent, other additives by a few: common practice, no source.
  it("asks about more dye or additive than candles take: 0.5 is half, and not 0.5 %", () => {
    expect(wrong(["Cedar", "Red dye", 0.5, "of wax", "dye"])).toEqual([
      "share: Red dye at 50 % of wax is more than candles take of it as a rule; if 0.5 % was meant, write 0.5%",
    ]);
    expect(wrong(["Cedar", "Hard wax", 0.25, "of total", "additive"])).toHaveLength(1);
    expect(wrong(["Cedar", "Red dye", 0.03, "of wax", "colour"], [null, "Hard wax", 0.2, "of wax", "other"])).toEqual(
      [],
    );
    expect(wrong(["Cedar", "Soft wax", 70, "part", "wax"])).toEqual([]);
  });

  it("has no scent among the parts, where no limit would count it", () => {
    expect(wrong(["Cedar", "Cedar oil", 1, "part", "scent"])).toEqual([
      "basis: Basis: Cedar oil is scent by its kind; give it a load, of wax or of total, and not parts",
    ]);
  });
});

describe("a column of numbers", () => {
  const batch = (heading: string, ...cells: CellValue[]) =>
    said({
      pour: tableOf("pour", ["Vessel", "Quantity", "Fill (g)", heading], ...cells.map((cell) => ["Tin", 2, 200, cell])),
    }).filter((text) => text.startsWith("fix"));

  it("is not read as the names of waxes", () => {
    expect(batch("Wax", 180, "175,5")).toEqual([
      'fix pour undefined wax: The column "Wax" holds numbers and is read as the names of the waxes; write a unit in its heading, or choose another column as Wax under Columns',
    ]);
    expect(batch("Wax", 464, "Soft wax")).toEqual([]);
    expect(batch("Wax", null)).toEqual([]);
  });

  const AMOUNTS = ["188 g", "188g", "6.6 oz.", "1 lb 4 oz", "1 lb, 4 oz", "0,2 kg", "1,200 grams", "200 ml", "~188 g"];
  const MORE = ["188 g each", "about 188 g", "188 g per candle", "188 g wax", "188 g/tin", "１８８ g", "12 fl oz"];
  it.each([...AMOUNTS, ...MORE])("is not read as names either where they are texts: %s", (amount) => {
    const asked = (heading: string, field: string, name: string) => [
      `fix pour undefined ${field}: The column "${heading}" holds amounts, such as ${amount}, and is read as the names of the ${field}s; write a unit in its heading, or choose another column as ${name} under Columns`,
    ];
    // One of them is enough: no wax is called so.
    expect(batch("Wax needed", "Soft wax", amount)).toEqual(
      asked("Wax needed", "wax", "Wax").map((text) => text.replace("waxs", "waxes")),
    );
    expect(batch("Fragrance", amount, null)).toEqual(asked("Fragrance", "scent", "Scent"));
    // With a unit in its heading it is no column of names.
    expect(matchColumns("pour", ["Wax needed (g)"])).toEqual({});
  });

  it("is one of names where numbers stand in them", () => {
    const names = [
      "464",
      "Soft 464",
      "80/20",
      "5 lb block",
      "2 g soft",
      "No. 5",
      "3 parts soft",
      "100% soft",
      "g",
      "12 C",
    ];
    expect(batch("Wax", "Soft wax", ...names, `${"1".repeat(32_000)} g`)).toEqual([]);
    expect(batch("Scent", "Fig", "No. 5", "7 seas", "4711 kgb", "1 litre of rain", "5 o'clock")).toEqual([]);
  });
});

describe("the water of a vessel", () => {
  const vesselOf = (heading: string, ...cells: CellValue[]) =>
    readTable(tableOf("vessels", ["Vessel", heading, "Wick"], ["Tin", ...cells]), "g")?.get("tin");

  it("is a weight above 0 in the unit of its heading, or none", () => {
    expect(vesselOf("Water (g)", 240)?.water).toBe(240);
    // An ounce is 28.349523125 g, by definition.
    expect(vesselOf("Water (oz)", 8)?.water).toBeCloseTo(226.796185, 9);
    for (const water of [0, -5, null, "a cup"]) expect(vesselOf("Water (g)", water)?.water).toBeUndefined();
    expect(vesselOf("Water (ml)", 240)).toMatchObject({ water: undefined });
  });

  it("stands beside a wick, unless its cell says that there is none yet or shows an error", () => {
    expect(vesselOf("Water (g)", 240, " W-21 ")?.wick).toBe("W-21");
    for (const none of ["none", "No wick", "n/a", "NA", "TBD", "tba", "?", "-", "––"]) expect(wickIn(none)).toBe("");
    for (const some of ["none yet W-21", "W-21?", "7-"]) expect(wickIn(some)).toBe(some);
    expect(vesselOf("Water (g)", 240, { error: "#REF!" })).toMatchObject({
      ...{ wick: "", water: 240, wrong: [] },
      looks: [{ field: "wick", text: "Tin: the cell of its wick shows #REF!" }],
    });
  });
});

describe("a day in a table", () => {
  const dateOf = (cell: CellValue) => {
    const table = tableOf("moves", ["Date", "Item", "Lot", "Change"], [cell, "Wax", "A", 5]);
    const [move] = readTable(table, "g")?.rows ?? [];
    return move?.date;
  };
  it("is read as it is kept or typed, without the spaces around it or its time, and nothing else is a day", () => {
    expect([46352, 46352.75, " 2026-11-26 "].map(dateOf)).toEqual([46352, 46352, 46352]);
    expect(["26.11.", "soon", null].map(dateOf)).toEqual([undefined, undefined, undefined]);
  });
});

describe("the limits of a scent", () => {
  const doubts = (...headings: string[]) =>
    said({
      pour: tableOf("pour", ["Vessel", "Quantity", "Fill (g)", "Scent"], ["Tin", 2, 200, "Cedar"]),
      scents: tableOf("scents", ["Scent", ...headings], ["Cedar", ...headings.map(() => 0.1)]),
    }).filter((text) => text.includes("as such limits are"));

  it("are held as shares of the wax and of the total, and a heading that says otherwise is asked about", () => {
    expect(doubts("Wax maximum (of total)", "Product limit (of wax)")).toEqual([
      "check scents undefined waxMaximum: The heading Wax maximum (of total) says of total; it is held as a share of wax, as such limits are",
      "check scents undefined productLimit: The heading Product limit (of wax) says of wax; it is held as a share of total, as such limits are",
    ]);
    expect(doubts("Wax maximum (of wax)", "Product limit (of total)")).toEqual([]);
    expect(doubts("Wax maximum", "Product limit")).toEqual([]);
  });
});

describe("the name of a wick", () => {
  it.each([
    ["W-21", "W-21", 1],
    ["2 x W-21", "W-21", 2],
    ["3×W-21", "W-21", 3],
    ["2*W-21", "W-21", 2],
    ["W-21 x 2", "W-21", 2],
    ["W-21 (2)", "W-21", 2],
    ["W-21 (2 pcs)", "W-21", 2],
    ["W-21 (2x)", "W-21", 2],
    // The number of its size is no count.
    ["100 x W-21", "100 x W-21", 1],
    ["Box 2", "Box 2", 1],
    ["W-21x2", "W-21x2", 1],
  ])("%s is %s, %d of it", (text, name, each) => {
    expect(wickOf(text)).toEqual({ name, each });
  });

  it("is known among the words of a component, and a tool for wicks is none", () => {
    expect(isThisWick("Wick, W-21", "W-21")).toBe(true);
    expect(isThisWick("wicks", "W-21")).toBe(true);
    expect(isThisWick("Label 6", "6")).toBe(false);
    expect(isThisWick("Wick 6", "6")).toBe(true);
    expect(isThisWick("6", "6")).toBe(true);
    expect(isThisWick("W-210", "W-21")).toBe(false);
    for (const item of [
      ...["Wick stickers", "wick-tab", "Wick centering bar", "wicks trimmer", "Wick centring tool", "Wick sustainers"],
      ...["Wick bars", "Wick clips", "Wick, centring", "Centring tools for wicks", "wick pin W-21"],
    ]) {
      expect([isWick(item), isForWicks(item), isThisWick(item, "W-21")], item).toEqual([false, true, false]);
    }
    // Wicks that come with one.
    expect(["Tabbed wick W-21", "Wick W-21 with sustainer"].map(isWick)).toEqual([true, true]);
    expect([isWick("Wick W-8"), isWick("Wicker basket")]).toEqual([true, false]);
  });
});

describe("the unit of a heading", () => {
  it.each([
    ["Fill (g)", { weight: "g" }],
    ["Fill [oz.]", { weight: "oz" }],
    ["Price per kg (EUR)", { weight: "kg" }],
    ["Price (EUR/kg)", { weight: "kg" }],
    ["On hand (g or pieces)", { weight: "g" }],
    ["Grams of water", { weight: "g" }],
    ["Water (fl oz)", { other: "a volume", words: "fl oz" }],
    ["Water (ml)", { other: "a volume", words: "ml" }],
    ["Inside width in mm", { other: "a length", words: "mm" }],
    ["Melt at (deg C)", { other: "a temperature", words: "deg C" }],
    ["Stir (minutes)", { other: "a time", words: "minutes" }],
    ["Cure weeks", { other: "a time", words: "weeks" }],
    ["Price (per 100 g)", { other: "several units at once", words: "per 100 g" }],
    ["Price (per 1 kg)", { weight: "kg" }],
    ["Weight (g/oz)", { other: "several units at once", words: "g/oz" }],
    ["Fill (stone)", { unknown: "stone" }],
    ["Fill (grams", { weight: "g" }],
    // One word of a temperature makes none of the others one.
    ["Shade (C number)", { unknown: "C number" }],
    ["Fill (per candle)", undefined],
    ["Paper cup", undefined],
    ["Fill", undefined],
    // A figure in brackets is no unit of its own.
    ["Water weight (total) (g)", { weight: "g" }],
  ])("%s says %j", (heading, unit) => expect(headingUnit(heading)).toEqual(unit));
});

describe("the words of a heading", () => {
  it.each([
    ["FillWeight_g", ["fill", "weight"]],
    ["Fill per jar (g)", ["fill", "each"]],
    ["Fill/jar", ["fill", "each"]],
    ["jar/container", ["jar", "container"]],
    ["Load2", ["load", "2"]],
    ["F.O. %", ["scent", "%"]],
    ["# of candles", ["number", "of", "candles"]],
    ["Wax + jar (g)", ["wax", "gross"]],
    ["Wax & tin", ["wax", "gross"]],
    ["+/- g", ["change"]],
    ["Fragrance oil scent", ["scent"]],
    ["Stir (min)", ["stir"]],
    ["Stir for (mins.)", ["stir", "for"]],
    ["Max usage rate", ["maximum", "load"]],
  ])("%s are %j", (heading, words) => expect(headingWords(heading).words).toEqual(words));

  it("say of what a share is, and that it is unclear where they say both", () => {
    const basisOf = (heading: string) => headingWords(heading).basis;
    expect(["Load (% of wax)", "Load by total weight", "FO % in the wax"].map(basisOf)).toEqual([
      ...["of wax", "of total", "of wax"],
    ]);
    expect(["Load (of wax or of total)", "Load", "Weight of wax"].map(basisOf)).toEqual([
      ...["unclear", undefined, undefined],
    ]);
    expect(headingWords("Max load (of wax)")).toMatchObject({ words: ["maximum", "load"], aside: [] });
  });
});
