import { passBound } from "../core/burn/passBound";
import { throwCompare } from "../core/burn/throwCompare";
import { wickAt } from "../core/burn/wickAt";
import { wickCompare } from "../core/burn/wickCompare";
import { list } from "../core/check/list";
import { plain } from "../core/check/plain";
import { Fault } from "../core/fault";
import { aboveZeroOr, answer, mapCells, nameOr, number, scalar, toError, valuesOf, zipRanges } from "./cells";

/**
 * Wicks of a test series side by side: what their candles showed on average, and which wicks cannot be told from each other.
 * @customfunction WICKCOMPARE
 * @param wicks Wick of each candle, a text or a number; a range. Rows with a blank are left out.
 * @param values What each candle showed, such as its weight lost an hour, in any one unit; a range of the same size.
 * @returns A row for each wick: the wick, how many candles, their mean, lower and upper end of the mean's 95 % interval, and the wicks it cannot be told from. A wick with one candle, or whose candles all show the same, has #N/A from the interval on. It certifies nothing: a burn-test laboratory does that.
 * @example =POUR.WICKCOMPARE({4;4;8;8}, {5.1;4.9;8.1;7.9}) gives 4 | 2 | 5 | 3.729380 | 6.270620 | "none" ; 8 | 2 | 8 | 6.729380 | 9.270620 | "none"
 * @source Student's t for each mean; Welch's p for each pair, adjusted by Holm, at most 5 %; checked against a general spreadsheet engine.
 */
export function WICKCOMPARE(wicks: any[][], values: any[][]): any[][] {
  return answer(() => {
    const tried = valuesOf(zipRanges([nameOr("wicks", wicks), number("values", values)], [0, 1]), (wick, value) => ({
      wick: wick as number | string,
      value,
    }));
    const compared = wickCompare(tried, (wick) => String(wick).trim().toLowerCase());
    const several = compared.filter(({ interval }) => !(interval instanceof Fault)).length;
    return compared.map(({ wick, count, mean, interval, alike }) => {
      if (interval instanceof Fault) return [wick, count, mean, ...Array(3).fill(toError(interval))];
      const none = several > 1 ? "none" : "no other wick with 2 candles that differ";
      return [wick, count, mean, ...interval, alike.length > 0 ? list(alike.map(shown), "and") : none];
    });
  });
}

const shown = (wick: number | string): string => (typeof wick === "number" ? plain(wick) : wick);

/**
 * Size of wick at which a straight line through all candles gives the wanted value, with its 95 % interval.
 * @customfunction WICKAT
 * @param sizes Size of each candle's wick, a number of the maker's own; a range. Rows with a blank are left out.
 * @param values What each candle showed, such as its weight lost an hour, in any one unit; a range of the same size.
 * @param wanted The value to reach, in the unit of the values.
 * @returns The size, and the lower and upper end of its interval, in the next two cells. #N/A where the line is too flat to say, or the size lies beyond those tried. Test the size that it names: a line proves no candle.
 * @example =POUR.WICKAT({4;6;8}, {5;7;9}, 6) gives 5 | 5 | 5
 * @source Least squares line; Fieller's interval for the size at which it gives a value.
 */
export function WICKAT(sizes: any[][], values: any[][], wanted: any): any[][] {
  return answer(() => {
    const candles = valuesOf(zipRanges([number("sizes", sizes), number("values", values)], [0, 1]), (x, y) => ({
      x,
      y,
    }));
    const { size, lower, upper } = wickAt(candles, scalar(number("wanted", wanted)));
    return [[size, lower, upper]];
  });
}

/**
 * The lowest share of candles that may pass in the long run, by how many of those tried did.
 * @customfunction PASSBOUND
 * @param passed How many candles passed, a whole number; a cell or a range.
 * @param tried How many were tried, a whole number; a cell or a range.
 * @param confidence How sure to be, a percentage of 50 % or more and below 100 %; 95 % when left out.
 * @returns A share: of 3 passed of 3 tried, 0.368, for a fault in up to 63.2 % of all candles would let three pass now and then.
 * @example =POUR.PASSBOUND(10, 10) gives 0.741134
 * @source Lower end of the exact binomial interval, one-sided (Clopper and Pearson); checked against a general spreadsheet engine.
 */
export function PASSBOUND(passed: any[][], tried: any[][], confidence?: any[][]): any[][] {
  return mapCells([number("passed", passed), number("tried", tried), aboveZeroOr("confidence", confidence)], passBound);
}

/**
 * Compares how two candles throw their scent (fragrance oil) by the scores that the same people gave both.
 * @customfunction THROWCOMPARE
 * @param first Each one's score of the first candle; a range. Rows with a blank are left out.
 * @param second The same people's scores of the second candle; a range of the same size.
 * @param confidence How sure to be, a percentage of 50 % or more and below 100 %; 95 % when left out.
 * @returns A row: the median difference (first less second), how many score the first higher, how many the second, p of the sign test, and in words whether that says anything.
 * @example =POUR.THROWCOMPARE({4;5;4;5;4;3}, {3;3;3;4;2;2}) gives 1 | 6 | 0 | 0.03125 | "the first is scored higher, at 95 % confidence"
 * @source Exact two-sided sign test; checked against a general spreadsheet engine.
 */
export function THROWCOMPARE(first: any[][], second: any[][], confidence?: any): any[][] {
  return answer(() => {
    const scores = valuesOf(zipRanges([number("first", first), number("second", second)], [0, 1]), (a, b) => ({
      first: a,
      second: b,
    }));
    const compared = throwCompare(scores, scalar(aboveZeroOr("confidence", confidence)));
    return [[compared.medianDifference, compared.forFirst, compared.forSecond, compared.p, compared.words]];
  });
}
