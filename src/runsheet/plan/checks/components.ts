import { asWarning, type Problem } from "../../problem";
import { sameName } from "../../sameName";
import type { Components } from "../../tables/components";
import type { RunPlan } from "../runPlan";

/** Components of the poured vessels that cannot be counted, and vessels that have none while others do. */
export function componentProblems({ scents }: RunPlan, components: Components): Problem[] {
  if (components.size === 0) return [];
  const lines = scents.flatMap(({ pots }) => pots.flatMap((pot) => pot.lines));
  const vessels = new Map(lines.map(({ vessel }) => [sameName(vessel), vessel]));
  const wrong = [...vessels.keys()].flatMap((key) => components.get(key)?.flatMap((one) => one.wrong) ?? []);
  const bare = [...vessels].flatMap(([key, vessel]) => (components.has(key) ? [] : [vessel]));
  const problems = wrong.map(asWarning);
  if (bare.length === 0) return problems;
  return [
    ...problems,
    { severity: "warning", text: `${bare.join(", ")}: not in the table of components, so none are counted` },
  ];
}
