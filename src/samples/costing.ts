import type { Sheet } from "../sheet/sheet";
import { candles } from "./costing/candles";
import { components } from "./costing/components";
import { labels } from "./costing/labels";
import { lots } from "./costing/lots";
import { margins } from "./costing/margins";
import { prices } from "./costing/prices";
import { range } from "./costing/range";
import { readMe } from "./costing/readMe";
import { recipes } from "./costing/recipes";
import { toBuy } from "./costing/toBuy";
import { vessels } from "./costing/vessels";
import { weights } from "./costing/weights";

/** What the candles of an invented studio cost, what to ask for them, what to buy and how to label them. */
export function costing(): Sheet[] {
  return [
    readMe(),
    range(),
    margins(),
    prices(),
    components(),
    vessels(),
    recipes(),
    candles(),
    weights(),
    lots(),
    toBuy(),
    labels(),
  ];
}
