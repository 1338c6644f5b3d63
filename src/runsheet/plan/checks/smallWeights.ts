import { plain } from "../../../core/check/plain";
import { least } from "../../../core/longLists";
import type { Problem } from "../../problem";
import type { Settings } from "../../settings";
import type { PourRow } from "../pourRows";
import { nameOf, type ScentRun } from "../runPlan";

/** Under twenty divisions half a division is more than 2.5 % of the weight. NIST Handbook 44, from memory. */
const FEWEST_DIVISIONS = 20;

/** Ingredients that the scale does not weigh well, or not at all. */
export function smallWeights(
  first: PourRow,
  { ingredients, pots }: Pick<ScentRun, "ingredients" | "pots">,
  { division, unit }: Settings,
): Problem[] {
  return ingredients.flatMap(({ name, share }, i): Problem[] => {
    const smallest = least(pots.map(({ weights }) => weights[i] as number));
    if (share === 0 || smallest >= FEWEST_DIVISIONS * division) return [];
    const at = { row: first.row, field: "load" } as const;
    if (smallest === 0) {
      const text = `${nameOf(first)}: ${name} comes to less than half a step of the scale; weigh it on a finer scale`;
      return [{ ...at, severity: "error", text }];
    }
    const text = `${nameOf(first)}: ${plain(smallest)} ${unit} of ${name} is under ${FEWEST_DIVISIONS} steps of the scale; a finer scale weighs it truer`;
    return [{ ...at, severity: "warning", text }];
  });
}
