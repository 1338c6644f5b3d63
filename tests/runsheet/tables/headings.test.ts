import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { askAbout } from "../../../src/runsheet/plan/checks/askAbout";
import { isError } from "../../../src/runsheet/problem";
import { FIRST_SETTINGS, type UsualSetting } from "../../../src/runsheet/settings";
import { starterSheets } from "../../../src/runsheet/sheet/starterSheets";
import { headingWords } from "../../../src/runsheet/tables/headings/headingWords";
import { matchColumns, TABLE_TYPES, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { TableRows } from "../../../src/runsheet/tables/tableRows";
import { unreadColumns } from "../../../src/runsheet/tables/unreadColumns";
import { SAMPLES } from "../../../src/samples/index";
import type { CellValue } from "../../../src/sheet/sheet";

/**
 * Headings as makers write them, by the field they are; `none` are no field and are not asked about, `asked` are no
 * field and are asked about by name. Which field a heading means is a fact of the trade: common practice, no source.
 */
const HEADINGS: Readonly<Partial<Record<TableTypeId, Readonly<Record<string, readonly string[]>>>>> = {
  pour: {
    vessel: [
      ...["Vessel", "vessel ", " VESSEL", "Vessel  name", "Vessel\u00a0name", "Container", "Container type", "Jar"],
      ...["JAR NAME", "Jar size", "Tin type", "container/jar", "Container / tin", "Glass", "Candle name", "Product"],
      ...["Product name", "Item", "Name", "SKU", "Mug", "Paper cup", "Vessel:", "vessel_name", "VesselName"],
    ],
    quantity: [
      ...["Quantity", "Qty", "QTY.", "qty (pcs)", "How many", "# to make", "To make", "Make", "No.", "No. of candles"],
      ...[
        "# of jars",
        "Number",
        "Number to pour",
        "Count",
        "Candle count",
        "Qty ordered",
        "Qty needed",
        "pcs",
        "Pieces",
      ],
      ...["batch qty", "Batch size", "Candles", "Candles to make", "Total qty", "Jars needed", "quantities"],
    ],
    fill: [
      ...[
        "Fill weight",
        "Fill",
        "Fill wt",
        "fill wt.",
        "Fill wgt (oz)",
        "Fill weight [g]",
        "Fill weight {g}",
        "Fill - g",
      ],
      ...["Fill (g", "Fill in grams", "Fill, oz.", "FillWeight", "fill_weight_g", "Fill/jar (g)", "Fill per candle"],
      ...[
        "Fill (per candle)",
        "Net wt (oz)",
        "Net weight",
        "Wax + FO (g)",
        "wax and scent (g)",
        "Wax & fragrance oil, g",
      ],
      ...["Pour weight (lbs)", "Grams fill", "Wax fill", "Fill (grammes)", "Fill Weight (ounces)", "FILL (LB)"],
    ],
    water: [
      ...["Water", "Water weight", "water wt (g)", "Water wt. (oz)", "H2O", "H₂O (g)", "Water g", "Grams of water"],
      ...["g water", "Water to fill line (g)", "Water (to the line) g", "Water in jar", "Jar water wt", "Water (ml)"],
      ...["Water fl. oz.", "WATER [OZ]", "weight of water (kg)"],
    ],
    factor: ["Wax factor", "Factor", "Fill factor", "wax_factor", "Wax factor:", "Water factor"],
    scent: [
      ...[
        "Scent",
        "Scent name",
        "Fragrance",
        "Fragrance oil",
        "Fragrance Name",
        "FO",
        "F.O.",
        "Oil",
        "Frag.",
        "Scents",
      ],
      ...["scent (fragrance oil)", "Perfume", "Scent blend"],
    ],
    load: [
      ...[
        "Load",
        "LOAD:",
        "Load %",
        "Load (%)",
        "% load",
        "FO %",
        "FO%",
        "F.O. %",
        "F.O.%",
        "fragrance oil %",
        "oil load",
      ],
      ...["Fragrance oil (%)", "% scent", "% of scent", "Scent %", "Scent (%)", "scent percent", "Scent percentage"],
      ...["scent load (%)", "FO load", "Frag load", "Frag. %", "Fragrance load", "FO rate", "Usage rate", "FO usage %"],
      ...["Load of total", "Load (of total)", "% of wax", "FO % of wax", "Oil pct", "%", "Load rate"],
      ...[
        "FO % of candle",
        "Load % of batch",
        "Load % of mix",
        "% of blend",
        "FO % of the whole",
        "% of candle weight",
      ],
      ...[
        "Load (% of wax + oil)",
        "Load % of wax and oil",
        "FO % of wax+FO",
        "Load of soy wax",
        "Load (% of cold stuff)",
      ],
    ],
    basis: ["Basis", "Load basis", "Basis (of wax or of total)", "of", "% basis", "Based on"],
    wax: ["Wax", "Wax type", "wax blend", "Wax name", "Type of wax", "Base wax", "Wax used", "WAX:", "Wax (name)"],
    none: [
      ...[
        "Wax each (g)",
        "Scent each (g)",
        "Scent each",
        "Wax (g) per candle",
        "Wax total (g)",
        "Total wax",
        "Scent total",
      ],
      ...[
        "Total fill",
        "Fill date",
        "Fill height (mm)",
        "Fill temp (C)",
        "Notes",
        "Scent notes",
        "Oil supplier",
        "Price",
      ],
      ...[
        "Price each",
        "Vessel cost",
        "Fill price",
        "Due date",
        "Customer",
        "Order #",
        "Lot #",
        "Batch no",
        "Load check",
      ],
      ...["Fill weight incl. jar (g)", "Fill (with the jar)", "Fill (g) and glass", "Qty (dozen)"],
      ...["Jar colour", "Jar volume (ml)", "Jar weight (g)", "Tare (g)", "Actual weight (g)", "Qty made", "Qty poured"],
      ...["Label", "Lid", "Status", "On hand", "constructor", "toString", "hasOwnProperty", "__proto__"],
      ...["", "Column1", "Margin %", "Discount (%)", "Scent (g)", "FO (oz)", "Wax (g)", "Dye", "Photo"],
    ],
    asked: [
      ...[
        "Max FO load",
        "max load",
        "Load max",
        "load (max)",
        "Maximum load",
        "recommended load",
        "up to %",
        "FO limit",
      ],
      ...[
        "Highest %",
        "Load cap",
        "allowed load",
        "At most %",
        "most oil",
        "Wax max",
        "Product limit",
        "Suggested FO %",
      ],
      ...["Min load", "Load (g)", "Total load %", "Load factor", "Scent strength", "FO ratio", "Dye %", "Additive %"],
      ...[
        "Weight (g)",
        "Capacity (oz)",
        "Size in grams",
        "Quantity (g)",
        "Batch fill (g)",
        "Water + jar (g)",
        "Dye (g)",
        "Ounces",
        "Wick",
        "Wick size",
      ],
      ...["Old load", "Load last time", "Humps %"],
    ],
  },
  vessels: {
    vessel: ["Vessel", "Container", "Jar", "Tin size", "Name"],
    water: ["Water weight (g)", "Water (oz)", "H2O wt", "water, g"],
    factor: ["Wax factor", "Factor"],
    none: [
      "Water weight incl. jar (g)",
      "Water + jar",
      "Shape",
      "Fill weight (g)",
      "Volume (ml)",
      "Inside width (cm)",
      "Supplier",
      "Cost",
      "Lid",
      "Empty (g)",
    ],
    wick: ["Wick", "Approved wick", "Wick type", "Wick size", "Wick used", "wicks"],
    asked: ["Load %", "Max load"],
  },
  scents: {
    scent: ["Scent", "Fragrance oil", "FO", "Oil", "Fragrance name", "Name"],
    load: ["Load", "FO%", "scent load (%)", "Load (%)", "Use level", "Oil %"],
    basis: ["Basis", "Basis (of wax or of total)"],
    waxMaximum: [
      ...["Wax maximum (%)", "Wax max", "wax limit", "Max FO in wax", "max load of wax", "Max load (of wax)"],
      // These do not say whose limit they are: they are held as the stricter one, and asked about.
      ...[
        "Max load",
        "Load (max)",
        "Max %",
        "Maximum",
        "Limit",
        "Limit (%)",
        "FO limit",
        "recommended load",
        "up to %",
      ],
    ],
    productLimit: [
      ...[
        "Product limit",
        "Product limit (%)",
        "Max in product",
        "Limit in product",
        "Max % of total",
        "Limit of total",
      ],
      ...["Safe limit", "Product max", "IFRA max", "IFRA limit (%)", "IFRA %", "IFRA"],
    ],
    melt: ["Melt at (C)", "Melt to °F", "melt temp", "Heat to (F)", "Melting temperature"],
    add: ["Add at (C)", "Add FO at", "Add scent at (F)", "FO temp", "Add at °C"],
    pour: ["Pour at (C)", "Pour temp", "Pouring temp (°C)", "pour @", "Pour at ℃"],
    stir: ["Stir (min)", "Stir minutes", "Stir min", "Mix time (min)"],
    flash: ["Flash point (C)", "FP (F)", "FP", "flashpoint °C", "Flash pt.", "Flash"],
    cure: ["Cure days", "cure (d)", "Cure", "Curing time", "Cure time (days)"],
    none: [
      "Check",
      "Supplier",
      "Price",
      "Scent family",
      "Scent notes",
      "Max temp",
      "max pour temp",
      "Add at max (C)",
      "Melting point",
    ],
    asked: ["Load (g)", "Old load", "Dye load", "Cure (wks)", "cure weeks", "Strength %"],
  },
  recipes: {
    scent: ["Scent", "Recipe", "Blend name", "Candle"],
    ingredient: ["Ingredient", "Material", "Raw material", "Component"],
    share: ["Share", "Parts", "Part", "Amount", "Amount (g)", "%", "Percent", "% of wax"],
    basis: ["Basis", "of"],
    sort: ["Kind", "Sort", "Type", "Category"],
    none: ["Notes", "Cost", "Grams", "In 100 g", "Supplier"],
    asked: ["Max %", "Product limit"],
  },
  items: {
    item: ["Item", "Material", "Name", "Ingredient", "What"],
    kind: ["Kind", "Type", "Item type", "Category"],
    onHand: ["On hand", "On hand (g)", "qty on hand", "In stock (kg)", "Stock", "stock level", "Grams on hand", "Have"],
    packSize: ["Pack size", "Pack size (lb)", "Pack (g)"],
    packPrice: ["Pack price", "Price of pack", "Cost per pack"],
    price: [
      ...["Unit price", "Unit price (per g)", "Price (per kg)", "Price", "price/lb", "cost per kg", "unit cost"],
      ...["cost each", "cost/unit", "Price (€/kg)", "price per oz.", "Price per 100 g"],
    ],
    reorderBelow: ["Reorder below", "Reorder at", "Reorder level (g)", "reorder point", "Min stock", "Minimum"],
    supplier: ["Supplier", "Vendor", "Bought from"],
    delivery: ["Delivery", "Delivery cost", "Shipping", "postage"],
    none: [
      ...[
        "Stock value",
        "Selling price",
        "Total price",
        "Notes",
        "Delivery date",
        "Delivery time (days)",
        "Min order qty",
      ],
      ...["Pack colour", "Lead time"],
    ],
  },
  stock: {
    onHand: ["On hand", "On hand (g)", "In stock (kg)", "Stock"],
    packSize: ["Pack size", "Pack size (lb)", "Pack (g)"],
    none: ["Stock value", "Notes"],
  },
  prices: {
    item: ["Item", "Ingredient"],
    price: ["Unit price", "Unit price (per g)", "Price (per kg)", "Price", "cost each"],
    none: ["Selling price", "Total price", "Notes"],
  },
  moves: {
    date: ["Date", "DATE:", "Day", "When", "Date received", "Purchase date", "date (yyyy-mm-dd)"],
    item: ["Item", "Material", "Ingredient", "Name", "What", "Item name"],
    lot: [
      ...["Lot", "Lot no.", "lot #", "Lot number", "Batch no", "batch number", "Batch", "Supplier lot", "Lot code"],
      ...["LOT NR", "Lot ID", "Lot used"],
    ],
    change: [
      ...["Change", "Change (g)", "change, kg", "Qty in/out", "qty in / out (g)", "In/Out", "in/out (oz)", "+/-"],
      ...["+/- (g)", "Qty +/-", "± kg", "Quantity", "Qty (g)", "Amount", "Weight (g)", "Movement", "Stock change"],
      ...["Change (+ in, - out)"],
    ],
    paid: ["Paid", "Paid (EUR)", "Amount paid", "Total paid", "Total cost", "Total price", "Price paid", "paid ($)"],
    bestBefore: [
      ...["Best before", "best-before", "Best before date", "BBD", "BBE", "Use by", "use-by date", "Best by", "Expiry"],
      ...["Expiry date", "Exp. date", "Expires", "Expiration date", "exp"],
    ],
    run: ["Run", "Run lot", "Run no.", "Run sheet", "Candle batch", "Used in"],
    note: ["Note", "Notes", "Remarks", "Comment"],
    none: [
      ...[
        "Supplier",
        "Unit price",
        "Price per kg",
        "Pack price",
        "Invoice date",
        "Due date",
        "Paid date",
        "Paid on date",
      ],
      ...["Balance", "Stock value", "Invoice", "Qty left", "On hand", "Lot size", "Date made", "Colour"],
    ],
    asked: ["In", "Out", "Type", "Qty out", "Direction"],
  },
  log: {
    lot: ["Lot", "Run lot"],
    date: ["Date", "Date poured"],
    good: ["Good", "good candles"],
    load: ["Load as weighed (of wax)", "Real load of wax"],
    waxActual: ["Wax actual"],
    weighed: ["Weighed each"],
    unit: ["Weights in"],
    remarks: ["Remarks"],
    madeBy: ["Made by", "Poured by"],
    cured: ["Cured until"],
    pots: ["Pots"],
    none: ["Weather", "Customer", "Humidity"],
  },
  burnTests: {
    test: ["Test", "Test no.", "TEST #", "Test ID", "Test candle", "Burn test"],
    vessel: ["Vessel", "Jar", "Container", "Jar name"],
    width: [
      ...["Inside width (mm)", "Inside diameter (cm)", "inner diameter, mm", "Diameter (in)", "Internal diameter"],
      ...["Width (mm)", "Inside width"],
    ],
    wick: ["Wick", "Wick size", "Wick tested", "WICK TYPE"],
    wax: ["Wax", "Wax blend", "Wax used"],
    scent: ["Scent", "Fragrance", "Fragrance oil", "FO"],
    load: ["Load", "Load (%)", "FO %", "Fragrance load"],
    cure: ["Cure days", "Cure (days)", "Cured for (days)", "Cure time (days)"],
    product: ["Product", "Candle type"],
    none: ["Wax left (g)", "Max load", "Wick price", "Notes", "Date"],
  },
  readings: {
    test: ["Test", "Test no.", "Test candle"],
    cycle: ["Cycle", "Cycle no.", "Burn", "Burn #", "Burn cycle"],
    minutes: ["Minutes", "Min", "Time (min)", "Burn time (min)", "Time (h)", "Minutes burnt"],
    weight: ["Weight", "Weight (g)", "Candle weight (oz)", "Gross weight (g)"],
    flame: ["Flame", "Flame (mm)", "Flame height (in)", "flame ht (mm)"],
    pool: ["Pool", "Pool (cm)", "Melt pool (mm)", "Melt pool diameter (in)", "MP (mm)"],
    depth: ["Wax left (mm)", "Wax depth left (mm)", "Depth left (cm)"],
    poolDepth: ["Pool depth (mm)", "Melt pool depth (in)", "MP depth (mm)"],
    soot: ["Soot", "Sooting", "Soot index"],
    glass: [
      "Glass (C)",
      "Heat (F)",
      "Glass temperature (C)",
      "Glass temp (F)",
      "Jar temp (C)",
      "Surface temperature (C)",
    ],
    remarks: ["Remarks", "Notes", "Comments"],
    none: ["Wick", "Room", "Photo"],
  },
};

/** Headings that a table of each kind has besides, and that leave no figure to a default. */
const BASE: Readonly<Record<TableTypeId, readonly string[]>> = {
  pour: ["Vessel", "Scent", "Quantity", "Fill weight (g)", "Load", "Basis"],
  vessels: ["Vessel", "Water weight (g)", "Wax factor"],
  scents: ["Scent", "Basis", "Wax maximum", "Product limit"],
  recipes: ["Scent", "Ingredient", "Share", "Basis"],
  items: ["Item", "On hand"],
  stock: ["Item", "On hand"],
  prices: ["Item", "Unit price"],
  components: ["Vessel", "Item", "Each"],
  moves: ["Date", "Item", "Lot", "Change"],
  log: ["Lot", "Vessel"],
  burnTests: ["Test", "Vessel", "Wick", "Wax", "Scent", "Load"],
  readings: ["Test", "Cycle", "Minutes"],
};

function tableOf<K extends TableTypeId>(
  kind: K,
  headings: readonly string[],
  rows: readonly (readonly CellValue[])[] = [],
  leftOut?: readonly string[],
): TableRows<K> {
  return { type: kind, headings, rows, columns: matchColumns(kind, headings), ...(leftOut && { leftOut }) };
}
const questions = (table: TableRows, usual: readonly UsualSetting[] = []) =>
  unreadColumns(TABLE_TYPES[table.type], table, "g").flatMap((column) => askAbout(column, new Set(usual)));
const asked = (table: TableRows, usual: readonly UsualSetting[] = []) =>
  questions(table, usual).map((one) => `${one.unread}${isError(one) ? " stops" : ""}`);

const CASES = Object.entries(HEADINGS).flatMap(([kind, fields]) =>
  Object.entries(fields).flatMap(([role, headings]) =>
    headings.map((heading) => ({ kind: kind as TableTypeId, role, heading })),
  ),
);

describe("headings as makers write them", () => {
  it("are at least 150, none twice for one kind", () => {
    expect(CASES.length).toBeGreaterThan(300);
    expect(new Set(CASES.map(({ kind, heading }) => `${kind} ${heading}`)).size).toBe(CASES.length);
  });

  it.each(CASES)("$kind: $heading is $role", ({ kind, role, heading }) => {
    const isField = role !== "none" && role !== "asked";
    expect(matchColumns(kind, [heading])).toEqual(isField ? { [role]: 0 } : {});
    // Beside a whole table only what is asked about is spoken of; a second column of a field is too, elsewhere.
    if (!isField) expect(asked(tableOf(kind, [...BASE[kind], heading]))).toEqual(role === "asked" ? [heading] : []);
  });
});

/** What the heading of a load says that it is of: common practice, no source. */
const BASES: Readonly<Record<string, readonly string[]>> = {
  "of total": [
    ...[
      "FO % of candle",
      "Load (% of candle)",
      "Load % of batch",
      "% of the batch",
      "Load % of mix",
      "FO % of mixture",
    ],
    ...["Load % of blend", "FO % of the whole", "Load % of whole batch", "FO % of total", "FO % by total weight"],
    ...["Load (% of wax + oil)", "Load % of wax and oil", "FO % of wax+FO", "Load (% wax of wax & fragrance oil)"],
    ...["Load % of oil and wax", "Load (of wax plus scent)", "Load % of wax with FO", "% of wax incl. fragrance"],
    ...["Load % of wax, oil and dye", "Load (% of finished product)", "Load % of everything", "Load % of fill weight"],
    ...["LOAD % OF THE CANDLE", "Load_%_of_candle", "FO % in candle", "Load % of net weight of candle"],
  ],
  "of wax": [
    ...["FO % of wax", "Load (% of wax)", "Load % of the wax", "FO % of wax weight", "Load of soy wax", "FO % in wax"],
    ...["Load (% of base wax)", "FO % by wax weight", "Load to wax (%)", "Load (% of weight of wax)"],
  ],
  unclear: [
    ...[
      "Load (of wax or of total)",
      "Load (of wax or total)",
      "Load % of cold stuff",
      "FO % of jar",
      "Load % of water",
    ],
    ...[
      "Load % of wax blend",
      "Load % of total wax",
      "Load % of candle wax",
      "Load % of wax and dye",
      "Load % of weight",
    ],
    ...["Load (% of wax/oil)", "Load % of wax or batch", "FO % of wax in total", "Load % of candle and wax"],
    ...["FO % of w\u0430x", "Load (% of constructor)"],
  ],
  nothing: ["Load", "FO %", "% of scent", "% of FO", "Load of scent", "Load % by weight", "Load of", "Load to add"],
};

describe("the heading of a load", () => {
  const cases = Object.entries(BASES).flatMap(([basis, headings]) => headings.map((heading) => ({ basis, heading })));
  it.each(cases)("says of what it is: $heading, $basis", ({ basis, heading }) => {
    expect(headingWords(heading).basis ?? "nothing").toBe(basis);
  });
});

describe("several headings of one table", () => {
  const matched = (kind: TableTypeId, ...headings: string[]) => matchColumns(kind, headings);

  it("never take a limit for the load, whichever stands first", () => {
    for (const limit of ["Max FO load", "Load (max)", "Load limit", "Recommended load", "Highest FO %", "Up to %"]) {
      expect(matched("pour", "FO %", limit), limit).toEqual({ load: 0 });
      expect(matched("pour", limit, "FO %"), limit).toEqual({ load: 1 });
      expect(matched("scents", limit, "Load"), limit).toEqual({ waxMaximum: 0, load: 1 });
    }
  });

  it("take the earlier of two words for a field, and the better fit before the earlier word", () => {
    // The words of a field stand in the order in which they count.
    expect(matched("pour", "FO %", "Load")).toEqual({ load: 1 });
    expect(matched("pour", "Scent %", "Scent load")).toEqual({ load: 1 });
    expect(matched("pour", "Tin", "Jar", "Container")).toEqual({ vessel: 2 });
    expect(matched("pour", "Tin", "Jar")).toEqual({ vessel: 1 });
    expect(matched("pour", "Count", "How many")).toEqual({ quantity: 1 });
    expect(matched("pour", "Net weight", "Fill")).toEqual({ fill: 1 });
    expect(matched("stock", "Stock", "In stock")).toEqual({ onHand: 1 });
    expect(matched("pour", "Jar for the fair", "Tin")).toEqual({ vessel: 1 });
    expect(matched("pour", "Candles", "Quantity", "Jars")).toMatchObject({ quantity: 1 });
  });

  it("take the earlier of two equal columns, and of a weight and a volume the weight", () => {
    expect(matched("pour", "Load", "LOAD ")).toEqual({ load: 0 });
    expect(matched("pour", "Fill (g)", "Fill (oz)")).toEqual({ fill: 0 });
    expect(matched("pour", "Water (ml)", "Water (g)")).toEqual({ water: 1 });
  });

  it("give no weight of wax or scent alone to the fill or the scent", () => {
    expect(matched("pour", "Jar", "Qty", "Wax (g)", "FO (g)", "Total (g)")).toEqual({ vessel: 0, quantity: 1 });
    expect(matched("pour", "Jar", "FO", "FO (g)", "FO %")).toEqual({ vessel: 0, scent: 1, load: 3 });
  });

  it("give each limit to whom its heading says, and one that does not say to the stricter", () => {
    expect(matched("scents", "Max load", "Wax max", "Max in product")).toEqual({ waxMaximum: 1, productLimit: 2 });
    expect(matched("scents", "Product limit", "Max load")).toEqual({ productLimit: 0, waxMaximum: 1 });
    expect(matched("scents", "Product limit", "Safe limit")).toEqual({ productLimit: 0 });
  });

  it("read names of an object's own as text, and blank headings as none", () => {
    const names = ["constructor", "__proto__", "toString", "hasOwnProperty", "valueOf", "", " ", "prototype"];
    for (const kind of Object.keys(BASE) as TableTypeId[]) {
      expect(matchColumns(kind, names)).toEqual({});
      expect(asked(tableOf(kind, [...BASE[kind], ...names]))).toEqual([]);
    }
    const load = tableOf("pour", [...BASE.pour, "__proto__"], [["Tin", "Fig", 1, 200, 0.06, "of wax", 0.08]]);
    expect(asked(load)).toEqual(["__proto__"]);
  });
});

describe("columns that nobody reads", () => {
  it("asks about a second load by name, and about a limit beside it", () => {
    expect(asked(tableOf("pour", ["Vessel", "Qty", "Fill", "FO %", "Max FO load"]))).toEqual(["Max FO load"]);
    expect(asked(tableOf("pour", ["Vessel", "Qty", "Fill", "FO %", "Load"]))).toEqual(["FO %"]);
    expect(asked(tableOf("pour", ["Vessel", "Qty", "Fill", "Load", "Load"]))).toEqual(["Load, column 5"]);
    expect(asked(tableOf("pour", ["Vessel", "Qty", "Fill", "Load 1", "Load 2", "Scent 1", "Scent 2"]))).toEqual([
      "Load 2",
      "Scent 2",
    ]);
  });

  it("stops where the load or the fill would come from elsewhere, and not where they stand in the table", () => {
    const load = ["Vessel", "Qty", "Fill", "Strength of scent"];
    expect(asked(tableOf("pour", load))).toEqual(["Strength of scent"]);
    expect(asked(tableOf("pour", load), ["load"])).toEqual(["Strength of scent stops"]);
    expect(asked(tableOf("pour", ["Vessel", "Qty", "Fill", "Max FO"]), ["load"])).toEqual(["Max FO stops"]);
    expect(asked(tableOf("pour", ["Vessel", "Qty", "Fill", "FO (g)"]), ["load"])).toEqual(["FO (g) stops"]);
    expect(asked(tableOf("pour", ["Vessel", "Qty", "Fill", "Load", "FO (g)"]))).toEqual([]);
    // No fill is read: it comes from the table of vessels, or by the usual factor.
    expect(asked(tableOf("pour", ["Vessel", "Qty", "Wax (g)"]))).toEqual(["Wax (g) stops"]);
    expect(asked(tableOf("pour", ["Vessel", "Qty", "Water (g)", "Capacity (g)"]), ["waxFactor"])).toEqual([
      "Capacity (g) stops",
    ]);
    const density = tableOf("pour", ["Vessel", "Qty", "Water", "Density"], [["Tin", 4, 200, 0.9]]);
    expect(asked(density, ["waxFactor"])).toEqual(["Density stops"]);
  });

  it("asks about a weight of scent wherever the table has no load, also where the table of scents gives it", () => {
    const row: CellValue[] = ["Tin", "Fig", 1, 200, 12];
    const headings = ["Vessel", "Scent", "Qty", "Fill (g)"];
    for (const heading of ["FO (oz)", "FO grams", "Scent oz", "Oil ml"]) {
      expect(asked(tableOf("pour", [...headings, heading], [row])), heading).toEqual([heading]);
      expect(asked(tableOf("pour", [...headings, heading], [row]), ["load"]), heading).toEqual([`${heading} stops`]);
    }
  });

  it("stops where one question stops and another one only asks", () => {
    const column = (isErrors: boolean[]) => ({
      table: "pour" as const,
      name: "X",
      questions: isErrors.map((isError, i) => ({ text: `question ${i}`, isAsked: true, isError })),
    });
    expect(askAbout(column([false, true, true]), new Set())).toMatchObject([{ text: "question 1", severity: "error" }]);
    expect(askAbout(column([false, false]), new Set())).toMatchObject([{ text: "question 0", severity: "warning" }]);
  });

  it("asks about factors and weights of wax of vessels, however they are written", () => {
    const vessels = (heading: string, value: CellValue, ...usual: UsualSetting[]) =>
      asked(tableOf("vessels", ["Vessel", "Water weight (g)", heading], [["Tin", 250, value]]), usual);
    for (const heading of ["Wax fctr", "Wax fac", "Wt of wax", "Wax weight"]) {
      expect(vessels(heading, 0.84), heading).toEqual([heading]);
      expect(vessels(heading, 0.84, "waxFactor"), heading).toEqual([`${heading} stops`]);
    }
    expect(vessels("Wax type", "soft")).toEqual([]);
  });

  it("asks about packs, prices and days of items that are written in other words", () => {
    const items = (...columns: [heading: string, value: CellValue][]) =>
      asked(
        tableOf(
          "items",
          ["Item", "On hand (lb)", ...columns.map(([one]) => one)],
          [["Wax", 9, ...columns.map(([, value]) => value)]],
        ),
      );
    for (const heading of ["Case (lb)", "Cost/case", "Price/case", "$/oz", "Best by", "Expires", "Use-by date"]) {
      expect(items([heading, 40]), heading).toEqual([heading]);
    }
    expect(items(["Best by", "March 2025"])).toEqual(["Best by"]);
    expect(items(["Best by", null])).toEqual([]);
    for (const heading of ["Selling price", "Total price", "Stock value ($)", "Pack colour", "Min order qty", "Bin"]) {
      expect(items([heading, 40]), heading).toEqual([]);
    }
    // What has its column is not asked about again.
    expect(items(["Pack size (lb)", 50], ["Pack price", 90], ["Unit price", 2])).toEqual([]);
  });

  it("asks about rows of the batch that are ticked as done", () => {
    const batch = (heading: string, ...cells: CellValue[]) =>
      asked(
        tableOf(
          "pour",
          [...BASE.pour, heading],
          cells.map((cell) => ["Tin", "Fig", 1, 200, 0.06, "of wax", cell]),
        ),
      );
    expect(batch("Done?", "yes", null)).toEqual(["Done?"]);
    expect(batch("Poured", null, "x")).toEqual(["Poured"]);
    expect(batch("Done", true)).toEqual(["Done"]);
    expect(batch("Poured", null, false, "no")).toEqual([]);
    expect(batch("Lid", "x")).toEqual([]);
  });

  it("asks about values that are percentages as loads are, whatever stands above them", () => {
    const values = (heading: string, ...cells: CellValue[]) =>
      asked(
        tableOf(
          "pour",
          [...BASE.pour, heading],
          cells.map((cell) => ["Tin", "Fig", 1, 200, 0.06, "of wax", cell]),
        ),
      );
    expect(values("Oomph", 0.06, 0.08)).toEqual(["Oomph"]);
    expect(values("Oomph", "6 %", null, "7,5%")).toEqual(["Oomph"]);
    expect(values("", 0.06)).toEqual(["column 7"]);
    expect(values("Oomph", 0.06, 12)).toEqual([]);
    expect(values("Oomph", 0.06, "see note")).toEqual([]);
    expect(values("Oomph", 0, null)).toEqual([]);
    expect(values("Oomph", 0.86)).toEqual([]);
    expect(values("Price", 0.06)).toEqual([]);
  });

  it("takes shares below a heading that speaks of a limit for no load", () => {
    const texts = (kind: TableTypeId) =>
      questions(tableOf(kind, [...BASE[kind], "Cat 12 max"], [[...BASE[kind].map(() => null), 0.12]]));
    expect(texts("scents")[0]?.text).toMatch(/^The column "Cat 12 max" is not read: a limit, and not known whose/);
    expect(texts("pour")[0]?.text).toMatch(/^The column "Cat 12 max" is not read: a limit is no load/);
  });

  it("asks no more about a column that is left out, in any capitals, and still about the others", () => {
    const headings = [...BASE.pour, "Max FO load", "Wick"];
    expect(asked(tableOf("pour", headings, [], ["MAX  fo load"]))).toEqual(["Wick"]);
    expect(asked(tableOf("pour", [...BASE.pour, "Load"], [], ["Load, column 7"]))).toEqual([]);
  });

  it("asks about none of the samples' columns and the starters'", () => {
    const tables = SAMPLES.flatMap((sample) => sample.sheets()).flatMap(({ tables = [], cells }) =>
      tables.map(({ name, headings, row, column, rows }) => {
        const at = (r: number, c: number): CellValue => {
          const content = cells.find((cell) => cell.row === r && cell.column === c)?.content;
          return (content && ("number" in content ? content.number : "text" in content ? content.text : null)) || null;
        };
        const values = Array.from({ length: rows }, (_, r) => headings.map((_, c) => at(row + 1 + r, column + c)));
        return { name, headings, values };
      }),
    );
    const kinds = Object.keys(BASE) as TableTypeId[];
    let seen = 0;
    for (const { name, headings, values } of tables) {
      const kind = name === "Batch" ? "pour" : kinds.find((one) => TABLE_TYPES[one].name === name);
      if (!kind) continue;
      expect(asked(tableOf(kind, headings, values), ["load", "waxFactor", "basis"]), name).toEqual([]);
      seen++;
    }
    expect(seen).toBe(9);
    for (const unit of ["g", "kg", "oz", "lb"] as const) {
      for (const { name, headings } of starterSheets(unit).flatMap(({ tables = [] }) => tables)) {
        const kind = name === "Batch" ? "pour" : (kinds.find((one) => TABLE_TYPES[one].name === name) as TableTypeId);
        expect(asked(tableOf(kind, headings), ["load", "waxFactor", "basis"]), name).toEqual([]);
      }
    }
  });
});

describe("a run whose columns are in doubt", () => {
  const run = (headings: readonly string[], row: CellValue[], scents?: TableRows<"scents">) =>
    buildRun({ pour: tableOf("pour", headings, [row]), scents }, FIRST_SETTINGS);
  const said = (...args: Parameters<typeof run>) =>
    run(...args).problems.map((one) => `${one.table} ${isError(one)}: ${one.text}`);

  it("pours the load and not the maximum, and asks about the maximum", () => {
    const { plan, problems } = run(["Jar", "Qty", "Fill (g)", "FO %", "Max FO load"], ["Tin", 1, 212, 0.06, 0.1]);
    expect(plan.scents[0]?.load).toBe(0.06);
    expect(problems.map((one) => [one.unread, isError(one)])).toContainEqual(["Max FO load", false]);
  });

  it("stops where the table has a maximum alone, until it is left out", () => {
    const headings = ["Jar", "Qty", "Fill (g)", "Max FO load"];
    const table = tableOf("pour", headings, [["Tin", 1, 212, 0.1]], ["Max FO load"]);
    expect(run(headings, ["Tin", 1, 212, 0.1]).problems.filter(isError)).toMatchObject([
      { table: "pour", unread: "Max FO load" },
    ]);
    expect(buildRun({ pour: table }, FIRST_SETTINGS).problems.filter(isError)).toEqual([]);
  });

  it("stops where loads are read as the names of scents", () => {
    const texts = said(["Jar", "Qty", "Fill (g)", "FO"], ["Tin", 1, 212, 0.08]);
    expect(texts.join("\n")).toContain('pour true: The column "FO" holds shares');
    expect(said(["Jar", "Qty", "Fill (g)", "FO"], ["Tin", 1, 212, 8]).join()).not.toContain("holds shares");
  });

  it("stops where a heading names another basis than the load is taken on", () => {
    const headings = ["Jar", "Qty", "Fill (g)", "FO % of total", "Basis"];
    expect(said(headings, ["Tin", 1, 212, 0.06, "of wax"]).join("\n")).toContain(
      "says of total, and Tin is taken of wax",
    );
    expect(said(headings, ["Tin", 1, 212, 0.06, "of total"]).join()).not.toContain("heading");
    // Without a column of bases the setting stands: of wax.
    expect(said(headings.slice(0, 4), ["Tin", 1, 212, 0.06]).join("\n")).toContain(
      "pour true: The heading FO % of total",
    );
    const scents = tableOf("scents", ["Scent", "Load (of total)"], [["Fig", 0.06]]);
    const poured = ["Jar", "Qty", "Fill (g)", "Scent"];
    expect(said(poured, ["Tin", 1, 212, "Fig"], scents).join("\n")).toContain(
      "scents true: The heading Load (of total)",
    );
  });

  it("stops where a heading says something else than wax or total, unless a column of bases says it", () => {
    const headings = ["Jar", "Qty", "Fill (g)", "FO % of cold stuff", "Basis"];
    const text =
      "true: The heading FO % of cold stuff does not say whether it is of wax or of total, and Tin is taken of wax; write one of the two there, or in a column Basis";
    expect(said(headings.slice(0, 4), ["Tin", 1, 212, 0.06])).toContain(`pour ${text}`);
    expect(said(headings, ["Tin", 1, 212, 0.06, null])).toContain(`pour ${text}`);
    for (const basis of ["of wax", "of total"])
      expect(said(headings, ["Tin", 1, 212, 0.06, basis]).join()).not.toContain("heading");
    expect(said(["Jar", "Qty", "Fill (g)", "Load (% of wax + oil)"], ["Tin", 1, 212, 0.06]).join("\n")).toContain(
      "pour true: The heading Load (% of wax + oil) means of total, and Tin is taken of wax",
    );
    const scents = tableOf("scents", ["Scent", "Load (of my stuff)", "Wax maximum (% of stuff)"], [["Fig", 0.06, 0.1]]);
    const poured = said(["Jar", "Qty", "Fill (g)", "Scent"], ["Tin", 1, 212, "Fig"], scents);
    expect(poured.join("\n")).toContain("scents true: The heading Load (of my stuff) does not say");
    expect(poured.join("\n")).toContain("scents false: The heading Wax maximum (% of stuff) does not say");
  });

  it("asks of what the loads of burn tests are, where their heading says something else", () => {
    const tests = (heading: string) => {
      const burnTests = tableOf("burnTests", ["Test", "Vessel", "Wick", heading], [["T1", "Tin", "W-21", 0.06]]);
      const pour = tableOf("pour", ["Jar", "Qty", "Fill (g)", "Load"], [["Tin", 1, 212, 0.06]]);
      const { problems } = buildRun({ pour, burnTests }, FIRST_SETTINGS);
      return problems.filter(({ table, field }) => table === "burnTests" && field === "load").map(({ text }) => text);
    };
    expect(tests("Load (% of stuff)")).toEqual([
      "The heading Load (% of stuff) does not say whether it is of wax or of total; write one of the two there",
    ]);
    for (const heading of ["Load", "Load (% of wax)", "Load (% of candle)"]) expect(tests(heading)).toEqual([]);
  });

  it("holds a load to a maximum that does not say of what, and asks about it", () => {
    const scents = tableOf("scents", ["Scent", "Load", "Max load"], [["Fig", 0.12, 0.1]]);
    const texts = said(["Jar", "Qty", "Fill (g)", "Scent"], ["Tin", 1, 212, "Fig"], scents);
    expect(texts.join("\n")).toContain('scents false: The column "Max load" does not say whose limit it is');
    expect(texts.join("\n")).toMatch(/true: .*wax maximum/);
    const plain = tableOf("scents", ["Scent", "Load", "Wax max"], [["Fig", 0.06, 0.1]]);
    expect(said(["Jar", "Qty", "Fill (g)", "Scent"], ["Tin", 1, 212, "Fig"], plain).join()).not.toContain(
      "whose limit",
    );
  });
});
