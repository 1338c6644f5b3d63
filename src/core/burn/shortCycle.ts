import { plain } from "../check/plain";
import { largest } from "../longLists";
import { type BurnReading, isBurntDown } from "./burnReading";

const SHORT = 30; // minutes: nobody looks at a candle several times in less; common practice, no source

/**
 * Asks whether minutes are hours: of the first cycle that ends so soon and was looked at several times, and of a candle
 * that burnt down in such cycles.
 */
export function shortCycle(lit: readonly BurnReading[], millimetres: number): string[] {
  const cycles = new Map<number, number[]>();
  for (const { cycle, minutes } of lit) {
    const own = cycles.get(cycle) ?? [];
    cycles.set(cycle, own);
    own.push(minutes);
  }
  const short = [...cycles].sort(([a], [b]) => a - b).filter(([, minutes]) => largest(minutes) < SHORT);
  const isDown = short.length === cycles.size && lit.some((one) => isBurntDown(one, millimetres));
  const [first] = isDown ? short : short.filter(([, minutes]) => minutes.length > 1);
  return first
    ? [`cycle ${plain(first[0])} ends at ${plain(largest(first[1]))} min: are these hours? write minutes`]
    : [];
}
