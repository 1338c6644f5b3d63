import type { Sheet } from "../sheet/sheet";
import { batch } from "./pourDay/batch";
import { pots } from "./pourDay/pots";
import { readMe } from "./pourDay/readMe";
import { recipe } from "./pourDay/recipe";
import { scents } from "./pourDay/scents";
import { shelf } from "./pourDay/shelf";
import { testPours } from "./pourDay/testPours";
import { vessels } from "./pourDay/vessels";

/** One day's pouring in an invented studio: vessels, scents, the batch, its pots and the shelf. All weights in grams. */
export function pourDay(): Sheet[] {
  return [readMe(), vessels(), scents(), batch(), pots(), shelf(), testPours(), recipe()];
}
