import type { Sheet } from "../sheet/sheet";
import { candles } from "./costing/candles";
import { labels } from "./costing/labels";
import { line } from "./costing/line";
import { lots } from "./costing/lots";
import { margins } from "./costing/margins";
import { parts } from "./costing/parts";
import { prices } from "./costing/prices";
import { readMe } from "./costing/readMe";
import { recipes } from "./costing/recipes";
import { toBuy } from "./costing/toBuy";
import { vessels } from "./costing/vessels";
import { weights } from "./costing/weights";

/** What the candles of an invented studio cost, what to ask for them, what to buy and how to label them. */
export function costing(): Sheet[] {
  return [
    readMe(),
    line(),
    margins(),
    prices(),
    parts(),
    vessels(),
    recipes(),
    candles(),
    weights(),
    lots(),
    toBuy(),
    labels(),
  ];
}
