import { askPrice } from "../../src/core/cost/askPrice";
import { candleCost } from "../../src/core/cost/candleCost";
import { marginOf } from "../../src/core/cost/marginOf";
import { fillWeight } from "../../src/core/fill/fillWeight";
import { recipeSplit } from "../../src/core/scent/recipeSplit";
import { byName, limit, number, type Row, type SavedBook, text } from "./saved";

/** What a candle's row must hold. */
export interface Expected {
  readonly candle: string;
  readonly fill: number;
  readonly cost: number;
  readonly margin: number;
  readonly ask: number;
  readonly marginThen: number;
}

/**
 * The candles worked out by the core functions from what is typed into the workbook of the studio, past all its
 * formulas.
 * @param paid what was paid for a gram or piece where it is other than the last row of the moves says, by item
 */
export function expectedCandles(book: SavedBook, paid: Readonly<Record<string, number>> = {}): Expected[] {
  const named = (sheet: string, key: string) => book.rows(sheet, sheet).filter((row) => row[key] !== null);
  const [vessels, scents, recipes] = [named("Vessels", "Vessel"), named("Scents", "Scent"), named("Recipes", "Scent")];
  const [components, moves] = [named("Components", "Vessel"), named("Moves", "Item")];
  const setting = (row: number) => book.number("Candles", `B${row}`);
  const [hour, rejects, wished, feeRate, feeFixed, dearer] = [5, 6, 7, 8, 9, 10].map(setting) as [
    ...[number, number, number, number, number, number],
  ];

  const priceOf = (item: string): number => {
    const last = moves.filter((row) => row.Item === item && Number(row.Paid) > 0).at(-1);
    if (!last) throw new Error(`nothing was paid for ${item}`);
    return paid[item] ?? number(last, "Paid") / number(last, "Change (g)");
  };
  const recipeOf = (scent: Row): { name: string; share: number; basis: string }[] => {
    const own = recipes.filter((row) => row.Scent === scent.Scent);
    if (own.length > 0) {
      return own.map((row) => ({
        ...{ name: text(row, "Ingredient"), share: number(row, "Share"), basis: text(row, "Basis") },
      }));
    }
    const load = number(scent, "Load (%)");
    const oil = { name: text(scent, "Scent"), share: load, basis: text(scent, "Basis (of wax or of total)") };
    return [{ name: "Wax", share: 1, basis: "part" }, ...(load > 0 ? [oil] : [])];
  };

  return named("Candles", "Candle").map((row) => {
    const vessel = byName(vessels, "Vessel", row.Vessel);
    const fill = fillWeight(number(vessel, "Water weight (g)"), limit(vessel, "Wax factor"));
    const recipe = recipeOf(byName(scents, "Scent", row.Scent));
    const weights = recipeSplit(fill, recipe);
    const parts = [
      priceOf(text(vessel, "Vessel")),
      ...components
        .filter(({ Vessel }) => Vessel === row.Vessel)
        .map((one) => number(one, "Each") * priceOf(text(one, "Item"))),
    ];
    const costAt = (rise: number): number =>
      candleCost(
        recipe.map(({ name, basis }, i) => ({
          weight: weights[i] as number,
          unitPrice: priceOf(name) * (basis === "part" ? 1 + rise : 1),
        })),
        parts,
        (number(row, "Minutes") / 60) * hour,
        rejects,
      );
    const price = number(row, "Price now");
    return {
      candle: text(row, "Candle"),
      fill,
      cost: costAt(0),
      margin: marginOf(price, costAt(0), feeRate, feeFixed),
      ask: askPrice(costAt(0), wished, feeRate, feeFixed),
      marginThen: marginOf(price, costAt(dearer), feeRate, feeFixed),
    };
  });
}
