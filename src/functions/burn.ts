import { burnCheck } from "../core/burn/burnCheck";
import { burnHours } from "../core/burn/burnHours";
import { burnRate } from "../core/burn/burnRate";
import { flameCheck } from "../core/burn/flameCheck";
import { poolCheck } from "../core/burn/poolCheck";
import { poolHours } from "../core/burn/poolHours";
import { wrong } from "../core/check/wrong";
import {
  aboveZeroOr,
  answer,
  givenBeside,
  mapCells,
  nameOr,
  number,
  numberOrZero,
  scalar,
  textOr,
  unit,
  valuesOf,
  zipRanges,
} from "./cells";

/**
 * Weight a candle loses an hour of burning, from weighings. Rows with a blank are left out.
 * @customfunction BURNRATE
 * @param hours Hours burnt at each weighing, at most 10,000; a range. Of date-times take off the start and multiply by 24: they are in days.
 * @param weights Weight at each, any one weight unit; a range of the same size.
 * @returns Weight lost an hour, in the unit of the weights; below 0 where they rise.
 * @example =POUR.BURNRATE({0;1;2;4}, {250;243;236;222}) gives 7
 * @source Least squares line; checked against the NIST Statistical Reference Dataset Norris.
 */
export function BURNRATE(hours: any[][], weights: any[][]): any[][] {
  return answer(() =>
    burnRate(
      valuesOf(zipRanges([number("hours", hours), number("weights", weights)], [0, 1]), (at, weight) => ({
        hours: at,
        weight,
      })),
    ),
  );
}

/**
 * Hours a candle burns until a share of its wax is left.
 * @customfunction BURNHOURS
 * @param wax Weight of wax, any one weight unit; a cell or a range.
 * @param rate Weight lost an hour, in the same unit; a cell or a range.
 * @param leave Share of the wax that stays, a fraction or percentage below 100 %; 0 when left out.
 * @returns Hours.
 * @example =POUR.BURNHOURS(200, 5, 10%) gives 36
 * @source Weight over weight an hour, taking the rate as steady.
 */
export function BURNHOURS(wax: any[][], rate: any[][], leave?: any[][]): any[][] {
  return mapCells([number("wax", wax), number("rate", rate), numberOrZero("leave", leave)], burnHours);
}

/**
 * Hours for the melt pool to reach the wall, by the rule of an hour an inch.
 * @customfunction POOLHOURS
 * @param diameter Inside diameter of the vessel, in lengthUnit; a cell or a range.
 * @param lengthUnit Unit of the diameter: mm, cm or in.
 * @returns Hours.
 * @example =POUR.POOLHOURS(7.62, "cm") gives 3
 * @source Common practice, no source: about one hour for each inch. Your own test burns, or a burn-test laboratory, know better.
 */
export function POOLHOURS(diameter: any[][], lengthUnit: any[][]): any[][] {
  return mapCells([number("diameter", diameter), unit("lengthUnit", lengthUnit, "length")], poolHours);
}

/**
 * Says when a flame is higher than EN 15493 allows a container candle or a tea light; empty when it is not.
 * @customfunction FLAMECHECK
 * @param height Height of the flame, in lengthUnit; a cell or a range.
 * @param lengthUnit Unit of the height: mm, cm or in.
 * @param product What burns: "container" or "tea light"; "container" when left out.
 * @returns Empty text, or what is wrong. It certifies nothing: a burn-test laboratory does that.
 * @example =POUR.FLAMECHECK(80, "mm") gives "flame 80 mm high, at most 75 mm by EN 15493; trim the wick or test a smaller one"
 * @source EN 15493: 75 mm, and 30 mm for a tea light. That ASTM F2417 allows 3 in, 76 mm, is from memory, not yet compared with the standard; the lower of the two is used.
 */
export function FLAMECHECK(height: any[][], lengthUnit: any[][], product?: any[][]): any[][] {
  return mapCells(
    [number("height", height), unit("lengthUnit", lengthUnit, "length"), textOr("product", product)],
    flameCheck,
  );
}

/**
 * Says when a melt pool is behind or ahead of an hour an inch, or the burn was too long; empty when neither.
 * @customfunction POOLCHECK
 * @param pool Diameter of the melt pool, in lengthUnit; a cell or a range.
 * @param vessel Inside diameter of the vessel, in the same unit; a cell or a range.
 * @param hours Hours burnt; a cell or a range.
 * @param lengthUnit Unit of both diameters: mm, cm or in.
 * @returns Empty text, or what is wrong. It certifies nothing: a burn-test laboratory does that.
 * @example =POUR.POOLCHECK(2, 3, 3, "in") gives "pool behind: 2 in after 3 h, at least 2.5 in at about an hour an inch"
 * @source Common practice, no source: an hour an inch, taken half an hour either way. At most 4 hours at a time: fire-safety guidance.
 */
export function POOLCHECK(pool: any[][], vessel: any[][], hours: any[][], lengthUnit: any[][]): any[][] {
  return mapCells(
    [number("pool", pool), number("vessel", vessel), number("hours", hours), unit("lengthUnit", lengthUnit, "length")],
    poolCheck,
  );
}

/**
 * What one candle's burn shows beyond what is published or common practice, and what is still to be done or read.
 * @customfunction BURNCHECK
 * @param cycles Number of the cycle of each reading, from 1; a range. Of rows in which nothing was read only their minutes count: so long it burnt.
 * @param minutes Minutes since that cycle began; a range of the same size, as all ranges here.
 * @param flames Height of the flame, in lengthUnit. A blank was not read.
 * @param pools Diameter of the melt pool, in lengthUnit. A blank was not read.
 * @param width Inside width of the vessel, in lengthUnit.
 * @param lengthUnit Unit of all lengths: mm, cm or in.
 * @param depths Wax left from the surface down, in lengthUnit. A blank was not read.
 * @param soot Soot index an hour, or what was seen in words: "none", or anything else.
 * @param glass Glass temperature: of the vessel outside at its hottest, in temperatureUnit.
 * @param temperatureUnit Unit of these: C or F.
 * @param product What burns: "container" or "tea light"; "container" when left out.
 * @param weights Weight of the candle with its vessel, in weightUnit. A blank was not read.
 * @param weightUnit Unit of these: g, kg, oz or lb.
 * @returns Text. Empty only when each hour of each cycle was looked at, flame, pool, soot, glass temperature and wax left were read, 10 mm are left, nothing contradicts itself and all is within. It never says safe: a burn-test laboratory has the last word.
 * @example =POUR.BURNCHECK({1;1}, {60;120}, {20;80}, {25;50}, 70, "mm", {60;55}, {"none";"none"}, {40;45}, "C") gives "cycle 1 at 120 min: flame 80 mm high, at most 75 mm by EN 15493; trim the wick or test a smaller one; end this test"
 * @source EN 15493: flame at most 75 mm, 30 mm for a tea light. EN 15426: 10 mm left at the end; second-hand, its cycles of at most 240 minutes; from memory, its soot index of at most 1 an hour. Common practice, no source: an hour an inch for the pool, a look each hour, a glass temperature of at most 60 C; wax of 0.9 g/cm3, and what no burning candle shows.
 */
export function BURNCHECK(
  cycles: any[][],
  minutes: any[][],
  flames: any[][],
  pools: any[][],
  width: any,
  lengthUnit: any,
  depths?: any[][],
  soot?: any[][],
  glass?: any[][],
  temperatureUnit?: any,
  product?: any,
  weights?: any[][],
  weightUnit?: any,
): any[][] {
  return answer(() => {
    const lines = zipRanges(
      [
        aboveZeroOr("cycles", cycles),
        numberOrZero("minutes", minutes),
        aboveZeroOr("flames", flames),
        aboveZeroOr("pools", pools),
        aboveZeroOr("depths", givenBeside(depths, cycles)),
        nameOr("soot", givenBeside(soot, cycles)),
        aboveZeroOr("glass", givenBeside(glass, cycles)),
        aboveZeroOr("weights", givenBeside(weights, cycles)),
      ],
      [],
    );
    // A row in which nothing was read still says how long the candle burnt, if it says when.
    const isRead = (values: readonly unknown[]) => values.slice(2).some((value) => value !== undefined);
    const isPlaced = ([cycle, at]: readonly unknown[]) => cycle !== undefined && at !== undefined;
    const taken = lines.filter(({ fault, values }) => fault || isRead(values) || isPlaced(values));
    const readings = valuesOf(taken, (cycle, at, flame, pool, depth, seen, heat, weight) => ({
      ...{ cycle: needed("cycles", cycle), minutes: needed("minutes", at), flame, pool, depth },
      ...{ soot: seen, glass: heat, weight },
    }));
    return burnCheck(
      readings,
      scalar(number("width", width)),
      scalar(unit("lengthUnit", lengthUnit, "length")),
      scalar(textOr("temperatureUnit", temperatureUnit)),
      scalar(textOr("product", product)),
      scalar(textOr("weightUnit", weightUnit)),
    );
  });
}

function needed(name: string, value: number | undefined): number {
  if (value === undefined) throw wrong(name, "the cell is blank beside something that was read; fill it in");
  return value;
}
