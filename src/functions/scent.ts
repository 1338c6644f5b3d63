import { wrong } from "../core/check/wrong";
import { loadAs } from "../core/scent/loadAs";
import { loadCheck } from "../core/scent/loadCheck";
import { loadLimit } from "../core/scent/loadLimit";
import { checkedIngredient, recipeSplit } from "../core/scent/recipeSplit";
import { type Parts, scentSplit } from "../core/scent/scentSplit";
import { weighedLoad } from "../core/scent/weighedLoad";
import { weighedSplit } from "../core/scent/weighedSplit";
import { type Arguments, aboveZeroOr, mapCells, number, numberOr, scalar, text, textOr, wholeRange } from "./cells";

/**
 * Wax and scent (fragrance oil) of a fill, side by side in two columns. They add up to the fill, with a division to the fill rounded to one.
 * @customfunction SCENTSPLIT
 * @param fill Weight of wax and scent together, any one weight unit; a cell or a range.
 * @param load Scent load, a fraction or percentage below 100 %, on basis; a cell or a range.
 * @param basis What the load is a share of: "of wax" (scent / wax) or "of total" (scent / everything); "of wax" when left out.
 * @param division Scale division, in the unit of the fill, to weigh each fill out in by itself; exact weights when left out.
 * @returns Weight of wax and weight of scent, in the unit of the fill.
 * @example =POUR.SCENTSPLIT(318, 6%) gives 300 | 18
 * @source The definitions of the two bases; "of wax" is the trade's usual, common practice, no source.
 */
export function SCENTSPLIT(fill: any[][], load: any[][], basis?: any[][], division?: any[][]): any[][] {
  return mapCells(
    splitArguments(fill, load, basis, division),
    (whole, share, on, step) => {
      const { wax, scent } = split(whole, share, on, step);
      return [wax, scent];
    },
    { width: 2 },
  );
}

/**
 * Wax of a fill without its scent (fragrance oil): the first column of SCENTSPLIT alone, for a table column.
 * @customfunction WAXPART
 * @param fill Weight of wax and scent together, any one weight unit; a cell or a range.
 * @param load Scent load, a fraction or percentage below 100 %, on basis; a cell or a range.
 * @param basis What the load is a share of: "of wax" (scent / wax) or "of total" (scent / everything); "of wax" when left out.
 * @param division Scale division, in the unit of the fill, to weigh each fill out in by itself; exact weights when left out.
 * @returns Weight of wax, in the unit of the fill.
 * @example =POUR.WAXPART(212, 6%) gives 200
 * @source The definitions of the two bases; "of wax" is the trade's usual, common practice, no source.
 */
export function WAXPART(fill: any[][], load: any[][], basis?: any[][], division?: any[][]): any[][] {
  return mapCells(
    splitArguments(fill, load, basis, division),
    (whole, share, on, step) => split(whole, share, on, step).wax,
  );
}

/**
 * Scent (fragrance oil) of a fill: the second column of SCENTSPLIT alone, for a table column.
 * @customfunction SCENTPART
 * @param fill Weight of wax and scent together, any one weight unit; a cell or a range.
 * @param load Scent load, a fraction or percentage below 100 %, on basis; a cell or a range.
 * @param basis What the load is a share of: "of wax" (scent / wax) or "of total" (scent / everything); "of wax" when left out.
 * @param division Scale division, in the unit of the fill, to weigh each fill out in by itself; exact weights when left out.
 * @returns Weight of scent, in the unit of the fill.
 * @example =POUR.SCENTPART(212, 6%) gives 12
 * @source The definitions of the two bases; "of wax" is the trade's usual, common practice, no source.
 */
export function SCENTPART(fill: any[][], load: any[][], basis?: any[][], division?: any[][]): any[][] {
  return mapCells(
    splitArguments(fill, load, basis, division),
    (whole, share, on, step) => split(whole, share, on, step).scent,
  );
}

const split = (fill: number, load: number, basis: string | undefined, division: number | undefined): Parts =>
  division === undefined ? scentSplit(fill, load, basis) : weighedSplit(fill, load, basis, division);

const splitArguments = (
  fill: any[][],
  load: any[][],
  basis: any[][] | undefined,
  division: any[][] | undefined,
): Arguments<Parameters<typeof split>> => [
  number("fill", fill),
  number("load", load),
  textOr("basis", basis),
  aboveZeroOr("division", division),
];

/**
 * A load of scent (fragrance oil) on one basis as a load on the other.
 * @customfunction LOADAS
 * @param load Scent load, a fraction or percentage below 100 %; a cell or a range.
 * @param from What the load is a share of now: "of wax" or "of total".
 * @param to What it is to be a share of: "of wax" or "of total".
 * @returns The load on the other basis, a fraction.
 * @example =POUR.LOADAS(25%, "of wax", "of total") gives 0.2
 * @source The definitions of the two bases: scent / wax and scent / (wax + scent).
 */
export function LOADAS(load: any[][], from: any[][], to: any[][]): any[][] {
  return mapCells([number("load", load), text("from", from), text("to", to)], loadAs);
}

/**
 * The load of scent (fragrance oil) that was really weighed.
 * @customfunction LOADFROM
 * @param wax Weight of the wax, any one weight unit; a cell or a range.
 * @param scent Weight of the scent, in the same unit; a cell or a range.
 * @param basis What the load is to be a share of: "of wax" or "of total"; "of wax" when left out.
 * @returns The load, a fraction.
 * @example =POUR.LOADFROM(200, 12) gives 0.06
 * @source The definitions of the two bases: scent / wax and scent / (wax + scent).
 */
export function LOADFROM(wax: any[][], scent: any[][], basis?: any[][]): any[][] {
  return mapCells([number("wax", wax), number("scent", scent), textOr("basis", basis)], weighedLoad);
}

/**
 * Says which limit a load of scent (fragrance oil) is over and by how much; empty when it is within those given.
 * @customfunction LOADCHECK
 * @param load Scent load, a fraction or percentage below 100 %, on basis; a cell or a range.
 * @param waxMaximum The most the wax holds, a fraction or percentage of wax up to 100 %, from its maker; not checked when blank.
 * @param productLimit The most the scent's documents allow in a candle, a fraction or percentage of total; 100 % where they say it is not restricted; not checked when blank.
 * @param basis What the load is a share of: "of wax" or "of total"; "of wax" when left out.
 * @returns Empty text, what the load is over, or "no limit given". The supplier's documents decide.
 * @example =POUR.LOADCHECK(12%, 10%, 15%) gives "over the wax maximum by 2 points: 12 % of wax, at most 10 %"
 * @source Common practice, no source: a wax's maximum is of wax, a product limit is of total.
 */
export function LOADCHECK(load: any[][], waxMaximum: any[][], productLimit: any[][], basis?: any[][]): any[][] {
  return mapCells(
    [
      number("load", load),
      numberOr("waxMaximum", waxMaximum),
      numberOr("productLimit", productLimit),
      textOr("basis", basis),
    ],
    loadCheck,
  );
}

/**
 * The highest load of scent (fragrance oil) within the wax maximum and the product limit, each in its own basis. #N/A where nothing limits.
 * @customfunction LOADLIMIT
 * @param waxMaximum The most the wax holds, a fraction or percentage of wax up to 100 %, from its maker; a cell or a range. A blank does not limit.
 * @param productLimit The most the scent's documents allow in a candle, a fraction or percentage of total up to 100 %; a cell or a range. A blank does not limit.
 * @param basis What the result is to be a share of: "of wax" or "of total"; "of wax" when left out.
 * @returns The load, a fraction on basis. The supplier's documents decide.
 * @example =POUR.LOADLIMIT(30%, 20%) gives 0.25
 * @source Common practice, no source: a wax's maximum is of wax, a product limit is of total.
 */
export function LOADLIMIT(waxMaximum: any[][], productLimit: any[][], basis?: any[][]): any[][] {
  return mapCells(
    [numberOr("waxMaximum", waxMaximum), numberOr("productLimit", productLimit), textOr("basis", basis)],
    loadLimit,
    { key: -1 },
  );
}

/**
 * Weights of a recipe of many ingredients; the column adds up to the fill.
 * @customfunction RECIPESPLIT
 * @param fill Weight of everything together, any one weight unit.
 * @param shares Share of each ingredient: parts of the wax base (any sum), or loads as fractions or percentages; a range.
 * @param bases What each share is of: "part", "of wax" or "of total"; a range of the same size.
 * @param division Scale division to weigh out in, in the unit of the fill; exact weights when left out.
 * @returns Weight of each ingredient, in the unit of the fill and the shape of the shares.
 * @example =POUR.RECIPESPLIT(212, {3;1;6%}, {"part";"part";"of wax"}) gives 150 ; 50 ; 12
 * @source The definitions of the bases; weighed out by the largest remainder.
 */
export function RECIPESPLIT(fill: any, shares: any[][], bases: any[][], division?: any): any[][] {
  return wholeRange(
    [number("shares", shares), text("bases", bases)],
    (share, basis) => checkedIngredient({ share, basis }),
    (recipe, badRows) => {
      if (badRows.length > 0) throw wrong("shares", `row ${badRows[0]} of the recipe has an error; fix it first`);
      return recipeSplit(scalar(number("fill", fill)), recipe, scalar(aboveZeroOr("division", division)));
    },
  );
}
