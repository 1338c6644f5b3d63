import { PRODUCTS } from "../../core/burn/product";
import { rate } from "../../core/check/rate";
import type { Basis } from "../../core/scent/basis";
import type { Problem } from "../problem";
import { sameName } from "../sameName";
import { LOAD, SCENT, VESSEL } from "./commonFields";
import type { Field } from "./headings/field";
import { isNoScent } from "./isNoScent";
import { daysIn } from "./readDays";
import { lengthIn } from "./readLength";
import type { RowReader } from "./rowReader";
import { RATE } from "./starterLooks";
import type { TableReader } from "./tableReader";
import { type Starter, tableType } from "./tableType";
import { WICK_TOOLS } from "./wick";

/** What names a test, here and beside its readings. */
export const TEST: Field = {
  name: "Test",
  reads: "name",
  aliases: ["test name", "test code", "burn test", "test number", "test id", "test candle", "candle tested"],
  alone: ["candle", "tests", "number", "id", "name"],
};

const FIELDS = {
  test: TEST,
  vessel: { ...VESSEL, aliases: VESSEL.aliases.filter((word) => word !== "candle"), alone: ["vessels", "jar", "tin"] },
  width: {
    name: "Inside width",
    reads: "length",
    aliases: ["inside diameter", "inner diameter", "inner width", "internal diameter", "diameter inside", "diameter"],
    alone: ["width", "wide", "bore"],
    not: ["pool", "wick"],
  },
  wick: {
    name: "Wick",
    reads: "words",
    aliases: ["wick size", "wick type", "wick tested", "wick tried", "wick name", "candidate wick", "wicks"],
    not: ["scent", "wax", "price", "cost", "trimmed", "length", "per", ...WICK_TOOLS],
  },
  wax: {
    name: "Wax",
    reads: "name",
    aliases: ["wax type", "wax blend", "wax name", "wax used", "wax or blend", "base wax"],
    not: ["and", "plus", "for", "left"],
  },
  scent: SCENT,
  load: LOAD,
  burnOn: {
    name: "Burn on",
    reads: "date",
    aliases: ["burn date", "date of burn", "first burn", "test date", "burnt on"],
  },
  cure: { name: "Cure days", reads: "days", aliases: ["cure time", "cured for", "cured", "cure for", "cure"] },
  product: {
    name: "Product",
    reads: "words",
    aliases: ["kind of candle", "candle kind", "candle type", "type of candle"],
  },
} satisfies Readonly<Record<string, Field>>;
type TestField = keyof typeof FIELDS;

export const BURN_TESTS = tableType({
  name: "Burn tests",
  table: "BurnTests",
  purpose:
    "A row for each candle that is burnt to try a wick: its vessel, wick, wax, scent (fragrance oil) and load. What is seen while it burns stands in the table of readings, under the same name of the test. A vessel that is poured with another wick, in another wax or at another load than any of its candles that were burnt is asked about. Tea lights say so in a column Product: their flame may be 30 mm high at most.",
  gives: "Burn tests: which wick was tried in which vessel, wax, scent and load.",
  fields: FIELDS,
  needs: [["test"], ["vessel"], ["wick"]],
  unusable: "warning",
  asks: [],
  starter,
  read: readTests,
  doubts: unclearBasis,
});

/** A candle that is burnt to try its wick. */
export interface BurnTest {
  readonly row: number;
  readonly test: string;
  readonly vessel: string;
  /** Inside width in mm. */
  readonly width: number | undefined;
  readonly wick: string;
  readonly wax: string;
  readonly scent: string;
  readonly load: number | undefined;
  /** As the heading of the loads says; undefined where it does not. */
  readonly basis: Basis | undefined;
  readonly cureDays: number | undefined;
  readonly product: string;
  readonly wrong: readonly Problem[];
}

/** The tests by name. */
export type BurnTests = ReadonlyMap<string, BurnTest>;

/** Two tests of one name would share their readings: the second is left out, and said so. */
function readTests(table: TableReader<TestField>): BurnTests {
  const found = new Map<string, BurnTest & { readonly wrong: Problem[] }>();
  for (const reader of table.rows) {
    const test = reader.text("test");
    if (test === "") continue;
    const first = found.get(sameName(test));
    if (first) {
      first.wrong.push(reader.warning("test", `${test} stands twice; give each candle a name of its own`));
      continue;
    }
    const read = {
      ...{ vessel: reader.text("vessel"), width: lengthIn(table, reader, "width"), wick: reader.text("wick") },
      ...{
        wax: reader.text("wax"),
        scent: isNoScent(reader.text("scent")) ? "" : reader.text("scent"),
        load: loadIn(reader),
        cureDays: daysIn(reader, "cure"),
      },
      ...{ basis: basisOf(table), product: reader.text("product") || "container" },
    };
    found.set(sameName(test), { row: reader.row, test, ...read, wrong: reader.problems });
  }
  return found;
}

function basisOf(table: TableReader<TestField>): Basis | undefined {
  const basis = table.saidBasis("load")?.basis;
  return basis === "unclear" ? undefined : basis;
}

/** Loads of which the heading says something else than the wax or the whole: they are taken on the usual basis. */
function unclearBasis(table: TableReader<TestField>): Problem[] {
  const said = table.saidBasis("load");
  if (said?.basis !== "unclear") return [];
  return [table.problem("warning", "load", `${said.says}; write one of the two there`)];
}

function loadIn(reader: RowReader<TestField>): number | undefined {
  const load = reader.number("load");
  const scent = reader.text("scent");
  if (load !== undefined && load > 0 && isNoScent(scent)) {
    reader.error("load", `the scent is "${scent}" and has a load; name the scent, or write 0 %`);
    return undefined;
  }
  return load === undefined ? undefined : reader.check("load", () => rate("load", load));
}

function starter(): Starter {
  return {
    note: "A row for each candle to burn: three or more of each wick, for one candle proves little. Its readings stand in the table Readings.",
    columns: [
      { heading: "Test", width: 10 },
      { heading: "Vessel", width: 24, choices: ["Vessels", "Vessel"] },
      { heading: "Inside width (mm)", width: 14, format: "0.0" },
      { heading: "Wick", width: 18 },
      { heading: "Wax", width: 18 },
      { heading: "Scent", width: 22, choices: ["Scents", "Scent"] },
      { heading: "Load (% of wax)", ...RATE },
      { heading: "Cure days", width: 10 },
      { heading: "Burn on", width: 12, format: "yyyy-mm-dd" },
      { heading: "Product", width: 12, among: PRODUCTS },
    ],
  };
}
