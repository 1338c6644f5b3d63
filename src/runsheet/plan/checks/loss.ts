import { percent } from "../../percent";
import type { Problem } from "../../problem";
import type { Settings } from "../../settings";

/** More than this is melted for nobody, as a rule: common practice, no source. */
const MOST = 0.2;

/** A loss that may be a slip: 30 % for 3 %. */
export function highLoss({ loss }: Pick<Settings, "loss">): Problem[] {
  if (loss <= MOST) return [];
  const text = `Extra to melt (loss) is ${percent(loss)} %, more than pots and jugs keep as a rule; check it under Settings`;
  return [{ severity: "warning", text }];
}
