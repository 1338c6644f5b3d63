import type { Sheet } from "../sheet/sheet";
import { batch } from "./pourDay/batch";
import { pots } from "./pourDay/pots";
import { prices } from "./pourDay/prices";
import { readMe } from "./pourDay/readMe";
import { recipes } from "./pourDay/recipes";
import { scents } from "./pourDay/scents";
import { shelf } from "./pourDay/shelf";
import { stock } from "./pourDay/stock";
import { testPours } from "./pourDay/testPours";
import { vessels } from "./pourDay/vessels";

/**
 * One day's pouring in an invented studio: vessels, scents, recipes and the batch, the stock and its prices, the pots
 * and the shelf. All weights in grams.
 */
export function pourDay(): Sheet[] {
  return [readMe(), vessels(), scents(), recipes(), batch(), stock(), prices(), pots(), shelf(), testPours()];
}
