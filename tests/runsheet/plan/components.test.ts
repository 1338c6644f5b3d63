import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { Tables } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

const HEADINGS = {
  pour: ["Vessel", "Quantity", "Fill weight"],
  components: ["Vessel", "Item", "Each"],
  vessels: ["Vessel", "Water weight", "Wick"],
  stock: ["Item", "On hand", "Pack size", "Pack price"],
  prices: ["Item", "Unit price (per g)"],
  items: ["Item", "Kind"],
  burnTests: ["Test", "Vessel", "Wick"],
} satisfies Partial<Record<TableTypeId, string[]>>;

/** A run of unscented candles of 200 g: four bowls and ten tins, where nothing else is given. */
function run(rows: Partial<Record<keyof typeof HEADINGS, CellValue[][]>>) {
  const all = { pour: [["Bowl", 4, 200] as CellValue[], ["Tin", 10, 200] as CellValue[]], ...rows };
  const tables = Object.entries(all).map(([type, rows]) => {
    const headings = HEADINGS[type as keyof typeof HEADINGS];
    return [type, { type, headings, rows, columns: matchColumns(type as TableTypeId, headings) }];
  });
  return buildRun(Object.fromEntries(tables) as Tables, { ...FIRST_SETTINGS, load: 0, loss: 0 });
}
const texts = ({ problems }: ReturnType<typeof run>) => problems.map(({ severity, text }) => `${severity}: ${text}`);

const COMPONENTS: CellValue[][] = [
  ["bowl", "Wick", 3],
  ["Tin", "Wick", 1],
  ["Tin", "Lid", 1],
  ["Bowl", "Box for two", 0.5],
];

describe("components", () => {
  it("are checked against the shelf: 4 x 3 + 10 wicks, 10 lids, half a box for each of 4", () => {
    const stock: CellValue[][] = [
      ["Wax", 5000, null, null],
      ["Bowl", 4, null, null],
      ["Tin", 10, null, null],
      ["Wick", 20, 10, 2],
      ["Lid", 10, null, null],
      ["Box for two", 1, 5, 3],
    ];
    const made = run({ components: COMPONENTS, stock });
    expect(texts(made)).toEqual([]);
    const counted = { isCounted: true };
    expect(made.shelf).toMatchObject({
      unchecked: [],
      lacks: [
        { ...counted, item: "Wick", amount: 22, onHand: 20, missing: 2, buy: [{ count: 1, size: 10 }], cost: 2 },
        { ...counted, item: "Box for two", amount: 2, onHand: 1, missing: 1, buy: [{ count: 1, size: 5 }], cost: 3 },
      ],
    });
  });

  it("make a whole number of what is shared by several candles: three take two boxes for two", () => {
    const stock: CellValue[][] = [["Box for two", 0, null, null]];
    const { shelf } = run({ pour: [["Bowl", 3, 200]], components: [["Bowl", "Box for two", 0.5]], stock });
    expect(shelf?.lacks).toMatchObject([{ item: "Box for two", amount: 2 }]);
  });

  it("are paid for with the candle: 200 g of wax at 0.01, the tin at 1, a wick at 0.1 and a lid at 0.4", () => {
    const prices: CellValue[][] = [
      ["Wax", 0.01],
      ["Tin", 1],
      ["Wick", 0.1],
      ["Lid", 0.4],
    ];
    const made = run({ pour: [["Tin", 10, 200]], components: COMPONENTS, prices });
    expect(made.costs?.kinds).toMatchObject([{ vessel: "Tin", count: 10, each: expect.closeTo(3.5, 12) }]);
    const priceless = run({ pour: [["Tin", 10, 200]], components: COMPONENTS, prices: prices.slice(0, 3) });
    expect(priceless.costs).toBeUndefined();
    expect(texts(priceless)).toEqual(["warning: Lid has no price; the cost is left out"]);
  });

  it("that cannot be counted are neither checked nor paid for, and that is said", () => {
    const stock: CellValue[][] = [
      ["Wax", 5000, null, null],
      ["Tin", 10, null, null],
      ["Lid", 50, null, null],
    ];
    const prices: CellValue[][] = [
      ["Wax", 0.01],
      ["Tin", 1],
      ["Lid", 0.4],
    ];
    const made = run({ pour: [["Tin", 10, 200]], components: [["Tin", "Lid", null]], stock, prices });
    expect(texts(made)).toEqual(["warning: Each: the cell is blank; write how many one candle takes"]);
    expect(made.shelf).toMatchObject({ unchecked: ["Lid"], lacks: [] });
    expect(made.costs).toBeUndefined();
  });

  it("are joined by a wick that stands with the vessel alone, on hand and paid for", () => {
    const given = {
      pour: [["Tin", 10, 200]] as CellValue[][],
      vessels: [["Tin", 240, "2 x W-21"]] as CellValue[][],
      stock: [
        ["Wax", 5000, null, null],
        ["Tin", 10, null, null],
        ["W-21", 15, 10, 2],
      ] as CellValue[][],
    };
    const made = run(given);
    expect(made.shelf).toMatchObject({
      unchecked: [],
      lacks: [{ item: "W-21", isCounted: true, amount: 20, onHand: 15, missing: 5, buy: [{ count: 1, size: 10 }] }],
    });
    const prices: CellValue[][] = [
      ["Wax", 0.01],
      ["Tin", 1],
      ["W-21", 0.25],
    ];
    // 200 x 0.01 + 1 + 2 x 0.25.
    expect(run({ ...given, prices }).costs?.kinds).toMatchObject([{ each: expect.closeTo(3.5, 12) }]);
    // One that the components count is not counted twice, and one that is only alike is another one.
    const counted = (item: string) => run({ ...given, components: [["Tin", item, 2]] }).things.map(({ name }) => name);
    expect(counted("Wick, W-21")).toEqual(["Wax", "Tin", "Wick, W-21"]);
    expect(counted("Wick")).toEqual(["Wax", "Tin", "Wick"]);
    expect(counted("W-210")).toEqual(["Wax", "Tin", "W-21", "W-210"]);
  });

  it("and wicks of which no table says how many there are, or what they cost, are named", () => {
    const made = run({
      pour: [["Tin", 10, 200]],
      vessels: [["Tin", 240, "W-21"]],
      stock: [
        ["Wax", 5000, null, null],
        ["Tin", 10, null, null],
      ],
      prices: [
        ["Wax", 0.01],
        ["Tin", 1],
      ],
    });
    expect(made.shelf?.unchecked).toEqual(["W-21"]);
    expect(made.costs).toBeUndefined();
    expect(texts(made)).toEqual([
      "warning: W-21: in no table of items, so its stock is not checked",
      "warning: W-21 has no price; the cost is left out",
    ]);
  });

  it("are no other wick where they only go with one", () => {
    const vessels = [["Tin", 240, "W-21"]];
    const pour: CellValue[][] = [["Tin", 10, 200]];
    const said = (item: string) => texts(run({ pour, vessels, components: [["Tin", item, 1]] })).join();
    expect(said("Wick sticker")).not.toContain("approved wick");
    expect(said("Wick W-8")).toContain(
      "its approved wick is W-21, and its components name Wick W-8; fix the wrong one",
    );
  });

  it("are another wick by their kind, by a burn test or as the wick of another vessel, whatever they are called", () => {
    const pour: CellValue[][] = [["Amber jar", 10, 200]];
    const vessels: CellValue[][] = [["Amber jar", 240, "CL-8"]];
    const components: CellValue[][] = [["Amber jar", "CL-10", 1]];
    const said = (more: Parameters<typeof run>[0]) =>
      texts(run({ pour, vessels, components, ...more })).filter((text) => text.includes("approved wick"));
    const other = ["warning: Amber jar: its approved wick is CL-8, and its components name CL-10; fix the wrong one"];
    expect(said({})).toEqual([]);
    expect(said({ items: [["cl-10", "Wick"]] })).toEqual(other);
    expect(said({ burnTests: [["T-1", "Amber jar", "2 x CL-10"]] })).toEqual(other);
    expect(said({ vessels: [...vessels, ["Bowl", 500, "CL-10"]] })).toEqual(other);
    expect(said({ items: [["cl-10", "Wick sticker"]] })).toEqual([]);
    const both: CellValue[][] = [...components, ["Amber jar", "CL-8", 1]];
    expect(said({ components: both, items: [["CL-10", "Wick"]] })).toEqual([
      "warning: Amber jar: beside its approved wick, CL-8, its components name CL-10; both are counted. Check which it takes",
    ]);
    expect(said({ components: [["Amber jar", "CL-8", 1]], items: [["CL-8", "Wick"]] })).toEqual([]);
  });

  it("say how many of the wick a candle takes, which is said where the vessel says another number", () => {
    const said = (wick: string, ...components: CellValue[][]) => {
      const made = run({ pour: [["Tin", 10, 200]], vessels: [["Tin", 240, wick]], components });
      const things = made.things
        .filter(({ name }) => /w.*21|wick/i.test(name))
        .map(({ name, amount }) => [name, amount]);
      return { things, texts: texts(made) };
    };
    const other = (each: number, item: string) =>
      `warning: Tin: its approved wick is 2 x W-21, and its components count ${each} of ${item}, and so many are fetched. Fix the wrong one`;
    expect(said("2 x W-21", ["Tin", "W-21", 1])).toEqual({ things: [["W-21", 10]], texts: [other(1, "W-21")] });
    expect(said("2 x W-21", ["Tin", "Wick", 3])).toEqual({ things: [["Wick", 30]], texts: [other(3, "Wick")] });
    expect(said("2 x W-21", ["Tin", "W-21", 2]).texts).toEqual([]);
    // Without a number the vessel does not say that it is one; of what cannot be counted that is said.
    expect(said("W-21", ["Tin", "W-21", 2])).toEqual({ things: [["W-21", 20]], texts: [] });
    expect(said("2 x W-21", ["Tin", "W-21", null]).texts).toEqual([
      "warning: Each: the cell is blank; write how many one candle takes",
    ]);
    // Written otherwise it may be another wick: both are counted until the maker says.
    expect(said("W-21", ["Tin", "W21", 1])).toEqual({
      things: [
        ["W-21", 10],
        ["W21", 10],
      ],
      texts: ["warning: Tin: its approved wick is W-21, and its components name W21; fix the wrong one"],
    });
  });

  it("are missing by all that the run takes, also of what is the approved wick of one vessel and counted for another", () => {
    const made = run({
      vessels: [["Bowl", 240, "CL-8"]],
      components: [["Tin", "CL-8", 1]],
      stock: [["CL-8", 1, 10, 2]],
    });
    const { cells } = describeRun(made, { lot: "2026-330-01", date: 46352, settings: FIRST_SETTINGS });
    const rows = cells.filter(
      ({ column, content }) => column === 0 && content && "text" in content && content.text === "CL-8",
    );
    // One row of the list to fetch, and one of what is missing.
    expect(rows).toHaveLength(1);
    expect(made.things.filter(({ name }) => name === "CL-8")).toMatchObject([{ kind: "wick", amount: 14 }]);
    const at = rows.at(-1)?.row;
    const missing = cells.find(({ row, column }) => row === at && column === 3)?.content;
    // Four bowls and ten tins, by both kinds of rows: one more ROUNDUP would make two of two halves.
    const formula = missing && "formula" in missing ? missing.formula : "";
    expect(formula.match(/SUMIF/g)).toHaveLength(2);
    expect(formula).toContain('"vessel bowl"');
    expect(formula).toContain('"vessel tin"');
    expect(formula.match(/ROUNDUP/g)).toHaveLength(1);
  });

  it("are asked about for vessels that have none while others do, and not while the table is free", () => {
    expect(texts(run({ components: [["Tin", "Lid", 1]] }))).toEqual([
      "warning: Bowl: not in the table of components, so none are counted",
    ]);
    expect(texts(run({ components: [] }))).toEqual([]);
  });

  it("of a vessel that is called nearly so are offered, and not those of another vessel", () => {
    const pour: CellValue[][] = [["Amber jar", 4, 200]];
    const components: CellValue[][] = [["Ambre jar", "Lid", 1]];
    const none = "warning: Amber jar: not in the table of components, so none are counted";
    expect(texts(run({ pour, components }))).toEqual([`${none}. Is it Ambre jar?`]);
    const vessels: CellValue[][] = ["Amber jar", "Ambre jar"].map((name) => [name, 240, null]);
    expect(texts(run({ pour, components, vessels }))).toEqual([none]);
    const both: CellValue[][] = [...pour, ["Ambre jar", 4, 200]];
    expect(texts(run({ pour: both, components }))).toEqual([none]);
  });
});
