import { askPrice } from "../core/cost/askPrice";
import { breakEven } from "../core/cost/breakEven";
import { candleCost } from "../core/cost/candleCost";
import { marginOf } from "../core/cost/marginOf";
import { stockCost } from "../core/cost/stockCost";
import { answer, mapCells, number, numberOrZero, scalar, textOr, valuesOf, zipRanges } from "./cells";

/**
 * Cost of one good candle: ingredients, parts and labour, with the rejects paid for by the good ones.
 * @customfunction CANDLECOST
 * @param weights What one candle takes of each ingredient, any weight unit; a range. Blanks are left out.
 * @param unitPrices Price of one unit of each weight, any one money; a range of the same size.
 * @param parts Money for each part of one candle, such as vessel, wick, lid and label; a range, none when left out.
 * @param labour Money for the work on one candle; 0 when left out.
 * @param rejectRate Share of candles that cannot be sold, a fraction or percentage below 100 %; 0 when left out.
 * @returns Cost of one good candle, in the money of the prices.
 * @example =POUR.CANDLECOST({200;12}, {0.01;0.05}, {1.5;0.4}, 1, 2%) gives 5.612244897959184
 * @source Direct cost over yield, common practice, no source.
 */
export function CANDLECOST(
  weights: any[][],
  unitPrices: any[][],
  parts?: any[][],
  labour?: any,
  rejectRate?: any,
): any[][] {
  return answer(() =>
    candleCost(
      stock("weights", weights, unitPrices, (weight, unitPrice) => ({ weight, unitPrice })),
      valuesOf(zipRanges([number("parts", parts)], [0]), (part) => part),
      scalar(numberOrZero("labour", labour)),
      scalar(numberOrZero("rejectRate", rejectRate)),
    ),
  );
}

/** Amounts with their unit prices; a blank amount is left out, a blank price beside an amount is an error. */
const stock = <T>(name: string, amounts: any[][], unitPrices: any[][], work: (amount: number, price: number) => T) =>
  valuesOf(zipRanges([number(name, amounts), number("unitPrices", unitPrices)], [0]), work);

/**
 * Price that leaves a margin after fees.
 * @customfunction ASKPRICE
 * @param cost Cost of one, any money; a cell or a range.
 * @param margin Share of the price to keep, a fraction or percentage; with feeRate below 100 %. A cell or a range.
 * @param feeRate Share of the price that goes in fees, a fraction or percentage; 0 when left out.
 * @param feeFixed Money each sale costs in fees; 0 when left out.
 * @returns Price of one, in the money of the cost.
 * @example =POUR.ASKPRICE(5.7, 50%, 10%, 0.3) gives 15
 * @source The definition of a margin: profit over price. Price = (cost + feeFixed) / (1 - margin - feeRate).
 */
export function ASKPRICE(cost: any[][], margin: any[][], feeRate?: any[][], feeFixed?: any[][]): any[][] {
  return mapCells(
    [
      number("cost", cost),
      number("margin", margin),
      numberOrZero("feeRate", feeRate),
      numberOrZero("feeFixed", feeFixed),
    ],
    askPrice,
  );
}

/**
 * Margin of a price: what a sale leaves after fees and cost, as a share of the price. Below 0 at a loss.
 * @customfunction MARGINOF
 * @param price Price of one, any money; a cell or a range.
 * @param cost Cost of one, in the same money; a cell or a range.
 * @param feeRate Share of the price that goes in fees, a fraction or percentage below 100 %; 0 when left out.
 * @param feeFixed Money each sale costs in fees; 0 when left out.
 * @returns Margin, a fraction of the price.
 * @example =POUR.MARGINOF(60, 40) gives 0.3333333333333333
 * @source The definition of a margin: profit over price. Checked against OpenStax, Principles of Accounting.
 */
export function MARGINOF(price: any[][], cost: any[][], feeRate?: any[][], feeFixed?: any[][]): any[][] {
  return mapCells(
    [
      number("price", price),
      number("cost", cost),
      numberOrZero("feeRate", feeRate),
      numberOrZero("feeFixed", feeFixed),
    ],
    marginOf,
  );
}

/**
 * Whole candles to sell before the fixed costs are paid. #N/A where each one sold loses money.
 * @customfunction BREAKEVEN
 * @param fixed Fixed costs, any money; a cell or a range.
 * @param price Price of one, in the same money; a cell or a range.
 * @param cost Cost of one, in the same money; a cell or a range.
 * @param feeRate Share of the price that goes in fees, a fraction or percentage below 100 %; 0 when left out.
 * @param feeFixed Money each sale costs in fees; 0 when left out.
 * @returns Whole units, rounded up.
 * @example =POUR.BREAKEVEN(2475, 3.75, 1.5) gives 1100
 * @source Fixed costs over the contribution of one: OpenStax, Principles of Accounting.
 */
export function BREAKEVEN(
  fixed: any[][],
  price: any[][],
  cost: any[][],
  feeRate?: any[][],
  feeFixed?: any[][],
): any[][] {
  return mapCells(
    [
      number("fixed", fixed),
      number("price", price),
      number("cost", cost),
      numberOrZero("feeRate", feeRate),
      numberOrZero("feeFixed", feeFixed),
    ],
    breakEven,
  );
}

/**
 * Cost of what was used from a stock of lots. #N/A when more is used than there is.
 * @customfunction STOCKCOST
 * @param quantities Quantity of each lot, the oldest first, any one unit; a range. Blanks are left out.
 * @param unitPrices Price of one unit of each lot, any one money; a range of the same size.
 * @param used What was used, in the unit of the quantities.
 * @param method "first in" (the oldest lots go first) or "average" (all lots at their mean price); "first in" when left out.
 * @returns Cost of what was used, in the money of the prices.
 * @example =POUR.STOCKCOST({150;225;210}, {21;27;33}, 300) gives 7200
 * @source First-in first-out and weighted average: OpenStax, Principles of Accounting.
 */
export function STOCKCOST(quantities: any[][], unitPrices: any[][], used: any, method?: any): any[][] {
  return answer(() =>
    stockCost(
      stock("quantities", quantities, unitPrices, (quantity, unitPrice) => ({ quantity, unitPrice })),
      scalar(number("used", used)),
      scalar(textOr("method", method)),
    ),
  );
}
