import type { Sheet } from "../sheet/sheet";
import { netWeight } from "./burnTests/netWeight";
import { readings } from "./burnTests/readings";
import { readMe } from "./burnTests/readMe";
import { tests } from "./burnTests/tests";

/** Burn tests of an invented studio: what was read, what it comes to, and a weighed sample. */
export function burnTests(): Sheet[] {
  return [readMe(), tests(), readings(), netWeight()];
}
