import { unitPrice } from "../../src/core/buying/unitPrice";
import { askPrice } from "../../src/core/cost/askPrice";
import { candleCost } from "../../src/core/cost/candleCost";
import { marginOf } from "../../src/core/cost/marginOf";
import { recipeSplit } from "../../src/core/scent/recipeSplit";
import { byName, number, type Row, type SavedBook, text } from "./saved";

/** What a row of the range must hold. */
export interface Expected {
  readonly candle: string;
  readonly cost: number;
  readonly margin: number;
  readonly ask: number;
  readonly costThen: number;
  readonly marginThen: number;
  readonly askThen: number;
}

/**
 * The range worked out by the core functions from what is typed into the costing workbook, past all its formulas.
 * @param packPrices pack prices that are other than the saved ones, by ingredient
 */
export function expectedRange(book: SavedBook, packPrices: Readonly<Record<string, number>> = {}): Expected[] {
  const prices = book.rows("Prices", "Ingredients");
  const parts = book.rows("Components", "ComponentPrices");
  const vessels = book.rows("Vessels", "VesselCosts");
  const recipes = book.rows("Recipes", "Recipes");
  const candles = book.rows("Candles", "Candles");
  const [wished, feeRate, feeFixed, rejects, , dearer] = [4, 5, 6, 7, 8, 9].map((row) =>
    book.number("Range", `B${row}`),
  ) as [number, number, number, number, number, number];
  const wage = book.number("Vessels", "B5");

  const ofGram = (ingredient: string, rise: number): number => {
    const row = byName(prices, "Ingredient", ingredient);
    const pack = packPrices[ingredient] ?? number(row, "Pack price");
    const factor = row.Kind === "wax" ? 1 + rise : 1;
    return unitPrice(pack * factor, number(row, "Pack size"), text(row, "Unit"), "g", number(row, "Delivery"));
  };
  const each = (part: string): number => {
    const row = byName(parts, "Component", part);
    return (number(row, "Pack price") + number(row, "Delivery")) / number(row, "Pieces");
  };
  const partsOf = (vessel: Row): number[] => [
    each(text(vessel, "Vessel")),
    number(vessel, "Wicks") * each(text(vessel, "Wick")),
    ...(vessel.Lid === null ? [] : [each(text(vessel, "Lid"))]),
    each(String(book.saved("Vessels", "B4"))),
  ];

  return book.rows("Range", "Range").map((row) => {
    const candle = byName(candles, "Candle", row.Candle);
    const vessel = byName(vessels, "Vessel", candle.Vessel);
    const recipe = recipes.filter(({ Scent }) => Scent === candle.Scent);
    const weights = recipeSplit(
      number(vessel, "Fill (g)"),
      recipe.map((one) => ({ share: number(one, "Share"), basis: text(one, "Basis") })),
    );
    const costAt = (rise: number): number =>
      candleCost(
        recipe.map((one, i) => ({ weight: weights[i] as number, unitPrice: ofGram(text(one, "Ingredient"), rise) })),
        partsOf(vessel),
        (number(vessel, "Minutes") / 60) * wage,
        rejects,
      );
    const [cost, costThen] = [costAt(0), costAt(dearer)];
    const price = number(row, "Price now");
    return {
      candle: text(row, "Candle"),
      cost,
      margin: marginOf(price, cost, feeRate, feeFixed),
      ask: askPrice(cost, wished, feeRate, feeFixed),
      costThen,
      marginThen: marginOf(price, costThen, feeRate, feeFixed),
      askThen: askPrice(costThen, wished, feeRate, feeFixed),
    };
  });
}
