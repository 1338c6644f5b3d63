import { makeable } from "../core/batch/makeable";
import { type PotPlan, potPlan } from "../core/batch/potPlan";
import { answer, inRow, nameOr, number, numberOrZero, scalar, toError, valuesOf, zipRanges } from "./cells";

/**
 * Fewest pots for candles of one scent (fragrance oil): rows of pot number, vessel, count and weight to melt. Pour one scent at a time.
 * @customfunction POTPLAN
 * @param vessels Name of each vessel, a text or a number; a range.
 * @param fills Fill weight of one candle in each vessel, any one weight unit; a range of the same size.
 * @param quantities How many candles of each, whole numbers; a range of the same size. Blank and 0 are left out.
 * @param potCapacity The most a pot melts at once, in the unit of the fills.
 * @param loss Share melted beyond what is poured, a fraction or percentage (3% melts 3 % more); 0 when left out.
 * @returns Rows of pot number (the fullest is 1), vessel, count, and weight to melt in the unit of the fills. A candle no pot holds stands first, as #N/A. With many different fills a short search may leave open whether fewer pots would do: the best plan found stands, and a last row says how few could not be ruled out.
 * @example =POUR.POTPLAN({"Tin";"Jar"}, {200;300}, {4;2}, 1000) gives 1 | "Tin" | 4 | 800 ; 2 | "Jar" | 2 | 600
 * @source Bin packing, solved by bounds and search; checked against the OR-Library binpack1 best counts.
 */
export function POTPLAN(vessels: any[][], fills: any[][], quantities: any[][], potCapacity: any, loss?: any): any[][] {
  return answer(() => {
    const found = orders(vessels, fills, quantities);
    const good = found.filter(({ fault }) => !fault);
    const plan = planOf(good, potCapacity, loss);
    const misfits = [
      ...found.flatMap(({ fault, order, name }) => (fault ? [{ error: toError(fault), order, name }] : [])),
      ...plan.refused.map(({ order, fault }) => ({ error: toError(fault), ...good[order] })),
    ];
    const rows = [
      ...misfits.map(({ error, order, name }) => [error, name ?? "", order?.quantity ?? "", error]),
      ...plan.pots.flatMap((pot, i) =>
        pot.rows.map(({ order, count, weight }) => [i + 1, good[order]?.name ?? "", count, weight]),
      ),
      ...(plan.pots.length > plan.bound ? [["", unproven(plan), "", ""]] : []),
    ];
    return rows.length > 0 ? rows : [["", "", "", ""]];
  });
}

/**
 * Fewest pots that pour candles of one scent (fragrance oil).
 * @customfunction POTCOUNT
 * @param fills Fill weight of one candle in each vessel, any one weight unit; a range.
 * @param quantities How many candles of each, whole numbers; a range of the same size. Blank and 0 are left out.
 * @param potCapacity The most a pot melts at once, in the unit of the fills.
 * @param loss Share melted beyond what is poured, a fraction or percentage (3% melts 3 % more); 0 when left out.
 * @returns Number of pots, those of POTPLAN. With many different fills a short search may leave open whether fewer would do; POTPLAN says so in a last row.
 * @example =POUR.POTCOUNT({200;300}, {4;2}, 1000) gives 2
 * @source Bin packing, solved by bounds and search; checked against the OR-Library binpack1 best counts.
 */
export function POTCOUNT(fills: any[][], quantities: any[][], potCapacity: any, loss?: any): any[][] {
  return answer(() => {
    const unnamed = Array.isArray(fills) ? fills.map((row) => row.map(() => null)) : [[null]];
    const found = orders(unnamed, fills, quantities);
    for (const { where, fault } of found) if (fault) throw inRow(where, fault);
    const plan = planOf(found, potCapacity, loss);
    if (plan.refused[0]) throw plan.refused[0].fault;
    return plan.pots.length;
  });
}

const orders = (vessels: any[][], fills: any[][], quantities: any[][]) =>
  zipRanges([nameOr("vessels", vessels), number("fills", fills), number("quantities", quantities)], [2], {
    orZero: true,
  }).map((line) => {
    const [given, fill, quantity] = line.values;
    const name = given ?? `${line.where} of the range`;
    return { ...line, where: line.where, name, order: { vessel: String(name), fill, quantity } };
  });

const unproven = ({ pots, bound }: PotPlan): string => `${pots.length} pots; as few as ${bound} could not be ruled out`;

const planOf = (found: ReturnType<typeof orders>, potCapacity: any, loss: any): PotPlan =>
  potPlan(
    found.map(({ order }) => order),
    scalar(number("potCapacity", potCapacity)),
    scalar(numberOrZero("loss", loss)),
  );

/**
 * Whole candles the shelf allows: the scarcest thing decides. Rows with nothing needed are left out.
 * @customfunction MAKEABLE
 * @param onHand What the shelf holds of each thing, any unit; a range.
 * @param perCandle What one candle takes of each, in the unit of its row; a range of the same size.
 * @returns Whole candles.
 * @example =POUR.MAKEABLE({5000;220;40}, {200;12;1}) gives 18
 * @source Division with the remainder dropped.
 */
export function MAKEABLE(onHand: any[][], perCandle: any[][]): any[][] {
  return answer(() =>
    makeable(
      valuesOf(
        zipRanges([number("onHand", onHand), number("perCandle", perCandle)], [1], { orZero: true }),
        (shelf, each) => ({ onHand: shelf, perCandle: each }),
      ),
    ),
  );
}
