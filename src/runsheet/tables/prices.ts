import { atLeastZero } from "../../core/check/atLeastZero";
import { isError, type Problem } from "../problem";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import { ITEM } from "./commonFields";
import type { Field } from "./headings/field";
import type { ByUse } from "./stock";
import type { TableReader } from "./tableReader";
import { type Starter, tableType } from "./tableType";

const FIELDS = {
  item: ITEM,
  price: {
    name: "Unit price",
    reads: "money",
    aliases: ["price", "price each", "unit cost", "cost each", "price of one", "cost"],
    not: ["pack", "selling", "sale", "retail", "wholesale", "asking", "ask"],
  },
} satisfies Readonly<Record<string, Field>>;

export const PRICES = tableType({
  name: "Prices",
  purpose:
    "The price of one weight unit of an ingredient, or of one vessel or component. Without a price for everything the cost is left out.",
  gives: "Prices: the cost.",
  fields: FIELDS,
  needs: [["item"], ["price"]],
  unusable: "warning",
  asks: [],
  starter,
  read: readPrices,
});

export interface Price {
  readonly price: number | undefined;
  readonly wrong: readonly Problem[];
}

/** Prices by item: of one weight unit of an ingredient, or of one vessel. */
export type Prices = ReadonlyMap<string, ByUse<Price>>;

function readPrices(table: TableReader<keyof typeof FIELDS>): Prices {
  const found = new Map<string, ByUse<Price>>();
  const { ratio, problem } = table.scale("price");
  // What stands in brackets beside a price is as often its money: words that are no unit are no problem.
  const wrong = problem && isError(problem) ? [problem] : [];
  for (const reader of table.rows) {
    const name = sameName(reader.text("item"));
    if (name === "" || found.has(name) || reader.isBlank("price")) continue;
    const price = reader.number("price");
    const checked = price === undefined ? undefined : reader.check("price", () => atLeastZero("price", price));
    const perUnit = checked === undefined || ratio === undefined ? undefined : checked / ratio;
    found.set(name, {
      count: { price: checked, wrong: reader.problems },
      weight: { price: perUnit, wrong: [...reader.problems, ...wrong] },
    });
  }
  return found;
}

function starter(unit: WeightUnit): Starter {
  return {
    note: `What one ${unit} of an ingredient costs, or one vessel or component, by the names that the run sheet uses.`,
    columns: [
      { heading: "Item", width: 24 },
      { heading: `Unit price (per ${unit})`, width: 16, format: "#,##0.00##" },
    ],
  };
}
