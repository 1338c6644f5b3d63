import type { Sheet } from "../sheet/sheet";
import { hotThrow } from "./burnTests/hotThrow";
import { netWeight } from "./burnTests/netWeight";
import { readings } from "./burnTests/readings";
import { readMe } from "./burnTests/readMe";
import { tests } from "./burnTests/tests";
import { vessels } from "./burnTests/vessels";
import { wicks } from "./burnTests/wicks";

/** Burn tests of an invented studio: what was read of each candle, what its wicks show, and a weighed sample. */
export function burnTests(): Sheet[] {
  return [readMe(), wicks(), tests(), readings(), vessels(), hotThrow(), netWeight()];
}
