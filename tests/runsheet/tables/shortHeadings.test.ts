import { describe, expect, it } from "vitest";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";

/**
 * A table that was read once is read again: headings by the field they are, `none` for those that are no field. Which
 * one a heading means is a fact of the trade: common practice, no source.
 */
type Headings = Readonly<Partial<Record<TableTypeId, Readonly<Record<string, readonly string[]>>>>>;

/** Short headings, which name a field only where they say nothing else. */
const SHORT: Headings = {
  vessels: {
    vessel: ["Item", "SKU", "Size", "Vessels", "Containers", "Jars", "Tins", "Candles", "Products"],
    factor: ["Wax for one of water"],
  },
  scents: {
    scent: ["Blend", "Product"],
    basis: ["Of", "% of", "Based on"],
  },
  items: {
    item: ["Product", "Description", "Thing", "Wax", "Scent"],
    onHand: ["Quantity", "Amount", "Count", "In hand", "Weight", "Inventory"],
    reorderBelow: ["Reorder", "Minimum quantity"],
  },
  components: {
    item: ["Name", "What", "Kind"],
    each: ["Quantity", "How many", "Count", "Number", "Pieces", "Pcs", "Needed"],
  },
  moves: {
    lot: ["Charge", "Lots"],
    change: ["Quantity used or received", "Change each"],
    paid: ["Total", "Cost of purchase", "Purchase cost", "Spent"],
    bestBefore: ["BB", "MHD"],
    run: ["Pour", "Pour number", "Batch made", "Made into"],
  },
  burnTests: {
    test: ["Candle", "Tests", "Number", "Id", "Name"],
    width: ["Inner width", "Wide", "Bore"],
    wick: ["Wicks"],
    burnOn: ["Burn date", "Test date"],
  },
  readings: {
    weight: ["Gross"],
    glass: ["Temperature", "Vessel"],
  },
};

/** Headings with a word beside which the others mean something else. */
const OTHERS: Headings = {
  pour: {
    scent: ["Vessel scent"],
    wax: ["Vessel wax"],
    none: ["Wax water weight", "Scent water weight", "And wax", "Plus wax", "For wax", "Wax load"],
  },
  vessels: {
    none: [
      ...["Scent vessel", "Wax vessel", "Scent wick", "Wax wick", "Trimmed wick"],
      ...["Wick centring tool", "Wick centering", "Wick stickers", "Wick sustainer", "Wick bars", "Wick clip"],
    ],
  },
  scents: {
    none: ["Wax flash point"],
  },
  recipes: {
    ingredient: ["Scent ingredient"],
    none: ["Number share", "Vessel kind"],
    scent: ["Kind scent"],
  },
  items: {
    none: [
      "Vessel kind",
      "Wax kind",
      "Code on hand",
      "Reorder on hand",
      "Sale unit price",
      "Retail unit price",
      "Wholesale unit price",
      "Asking unit price",
      "Ask unit price",
      "Delivery address",
      "Weeks to delivery",
    ],
    packSize: ["Kind pack", "Reorder below pack"],
    item: ["On hand item"],
    packPrice: ["Unit price pack"],
  },
  moves: {
    none: [
      "Best date",
      "Expires date",
      "Use date",
      "Order date",
      "Pour lot",
      "Change item",
      "Change of balance",
      "Unit paid",
      "Pack paid",
      "Paid by",
    ],
    bestBefore: ["Date of move expiry", "Date of move exp", "Date of move expiration"],
    run: ["Lot number run", "Lot number candle"],
  },
  burnTests: {
    none: [
      "Pool inside width",
      ...["Wick centring tool", "Wick stickers", "Wick sustainers", "Wick bar", "Wick clips"],
    ],
  },
  readings: {
    none: ["Counted weight", "Lost weight", "Burnt weight", "Rate weight", "Cold throw"],
  },
};

/** Headings that name a field and a measure that it does not have: a weight is no name, a quantity no price. */
const MEASURES: Headings = {
  pour: {
    none: [
      ...["Vessel weight", "Quantity temperature", "Fill weight quantity", "Water weight quantity"],
      ...["Wax factor weight", "Scent weight", "Wax weight", "Load weight"],
    ],
  },
  vessels: { none: ["Vessel weight", "Water weight quantity", "Wax factor weight"] },
  scents: {
    none: [
      ...["Scent weight", "Load weight", "Wax maximum weight", "Product limit weight", "Melt at weight"],
      ...["Add at weight", "Pour at weight", "Stir minutes weight", "Flash point weight", "Cure days weight"],
    ],
  },
  recipes: { none: ["Scent weight", "Ingredient weight"] },
  items: {
    none: [
      ...["Item weight", "On hand %", "Pack size %", "Pack price quantity", "Unit price quantity", "Reorder below %"],
      "Delivery quantity",
    ],
  },
  components: { none: ["Vessel weight", "Item weight", "Each temperature"] },
  moves: { none: ["Date weight", "Item weight", "Change %", "Paid quantity", "Best before weight"] },
  burnTests: {
    none: [
      ...["Test weight", "Vessel weight", "Inside width weight", "Wax weight", "Scent weight", "Load weight"],
      ...["Burn on weight", "Cure days weight"],
    ],
  },
  readings: {
    weight: ["Test weight", "Flame weight"],
    none: [
      ...["Cycle temperature", "Weight quantity", "Wax left weight", "Pool depth weight", "Glass temperature weight"],
      "Throw temperature",
    ],
  },
};

const casesOf = (headings: Headings) =>
  Object.entries(headings).flatMap(([kind, fields]) =>
    Object.entries(fields).flatMap(([role, all]) =>
      all.map((heading) => ({ kind: kind as TableTypeId, role, heading })),
    ),
  );
const expected = (role: string) => (role === "none" ? {} : { [role]: 0 });

describe("a heading that is one short word", () => {
  it.each(casesOf(SHORT))("$kind: $heading is $role", ({ kind, role, heading }) => {
    expect(matchColumns(kind, [heading])).toEqual(expected(role));
  });
});

describe("a heading that says something else than its first word", () => {
  it.each([...casesOf(OTHERS), ...casesOf(MEASURES)])("$kind: $heading is $role", ({ kind, role, heading }) => {
    expect(matchColumns(kind, [heading])).toEqual(expected(role));
  });
});
