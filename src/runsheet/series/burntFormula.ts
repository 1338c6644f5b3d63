import { type CandleReadings, isAnyFilled } from "./candleReadings";
import type { SeenColumn } from "./seenColumns";

/**
 * How long a candle had burnt at each of its looks, in hours, under the name `burnt`, for what is worked out of it;
 * beside them, as `beside`, what a column says.
 */
export function withBurnt(own: CandleReadings, work: string, beside?: SeenColumn): string {
  const { cycle, minutes, taken, cells } = own;
  const kept = (column: SeenColumn) => `FILTER(IF(ISNUMBER(${column.ref}),${column.ref}${column.times},""),mine)`;
  const [later, as] = ["TRANSPOSE(spent)>spent", "TRANSPOSE(spent)=spent"].map(
    (is) => `MMULT((turn=TRANSPOSE(turn))*(${is}),ones)`,
  );
  const names = [
    `mine,${cells.placed}*${isAnyFilled(taken)}`,
    `turn,${kept(cycle)},spent,${kept(minutes)},ones,SIGN(turn)`,
    ...(beside ? [`beside,${kept(beside)}`] : []),
    // Of each cycle its longest look counts, shared by those that are as long.
    `longest,(${later}=0)*spent/${as}`,
    "burnt,(spent+MMULT((turn>TRANSPOSE(turn))*1,longest))/60",
  ];
  return `LET(${names.join(",")},${work})`;
}

/** Nothing where a cycle was burnt and not looked at: how long it burnt nobody knows. */
export const unlessGap = (work: string): string =>
  `IF(COUNT(UNIQUE(FILTER(turn,(spent>0)*(turn<MAX(turn)),"")))<MAX(turn)-1,"",${work})`;

/** Whether a number of the column beside is above an earlier one, by more than this, in an order of the looks. */
export const isRising = (order: "burnt" | typeof BY_PLACE, by: number): string =>
  `SUM(LET(when,FILTER(${order},ISNUMBER(beside)),what,FILTER(beside,ISNUMBER(beside)),(when<TRANSPOSE(when))*(ROUND(what+${by},9)<ROUND(TRANSPOSE(what),9))))>0`;
/** By cycle, then by its minutes. */
export const BY_PLACE = "turn*100000+spent";
