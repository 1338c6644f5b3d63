import type { Sheet } from "../sheet/sheet";
import { batch } from "./studio/batch";
import { candles } from "./studio/candles";
import { components } from "./studio/components";
import { items } from "./studio/items";
import { label } from "./studio/label";
import { margins } from "./studio/margins";
import { moves } from "./studio/moves";
import { pots } from "./studio/pots";
import { readMe } from "./studio/readMe";
import { recipes } from "./studio/recipes";
import { scents } from "./studio/scents";
import { shelf } from "./studio/shelf";
import { testPours } from "./studio/testPours";
import { vessels } from "./studio/vessels";

/**
 * The workbook of an invented studio: vessels, scents, recipes, items and prices stand once, and a day's pouring, the
 * buying, the costs and the labels follow from them. All weights in grams.
 */
export function studio(): Sheet[] {
  return [
    ...[readMe(), vessels(), scents(), recipes(), batch(), items(), components(), moves()],
    ...[candles(), margins(), label(), pots(), shelf(), testPours()],
  ];
}
