import type { Sheet } from "../sheet/sheet";
import { batch } from "./pourDay/batch";
import { components } from "./pourDay/components";
import { items } from "./pourDay/items";
import { moves } from "./pourDay/moves";
import { pots } from "./pourDay/pots";
import { readMe } from "./pourDay/readMe";
import { recipes } from "./pourDay/recipes";
import { scents } from "./pourDay/scents";
import { shelf } from "./pourDay/shelf";
import { testPours } from "./pourDay/testPours";
import { vessels } from "./pourDay/vessels";

/**
 * One day's pouring in an invented studio: vessels, scents, recipes and the batch, what is bought and what came
 * in and went out, the pots and the shelf. All weights in grams.
 */
export function pourDay(): Sheet[] {
  return [
    ...[readMe(), vessels(), scents(), recipes(), batch(), items(), components(), moves()],
    ...[pots(), shelf(), testPours()],
  ];
}
