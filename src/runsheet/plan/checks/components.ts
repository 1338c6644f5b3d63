import { asWarning, type Problem } from "../../problem";
import { sameName } from "../../sameName";
import type { FittingTables } from "../../tables/fittings";
import { isItWords } from "../nearName";
import type { RunPlan } from "../runPlan";

/** Components of the poured vessels that cannot be counted, and vessels that have none while others do. */
export function componentProblems({ scents }: RunPlan, { vessels, components }: FittingTables): Problem[] {
  if (components.size === 0) return [];
  const lines = scents.flatMap(({ pots }) => pots.flatMap((pot) => pot.lines));
  const poured = new Map(lines.map(({ vessel }) => [sameName(vessel), vessel]));
  const wrong = [...poured.keys()].flatMap((key) => components.get(key)?.flatMap((one) => one.wrong) ?? []);
  // Where another vessel is called so, it is no slip.
  const others = [...components].flatMap(([key, [first]]) =>
    first && !poured.has(key) && !vessels.has(key) ? [first.vessel] : [],
  );
  const bare = [...poured].flatMap(([key, vessel]) =>
    components.has(key) ? [] : [{ vessel, ask: isItWords(vessel, others) }],
  );
  const plainly = bare.flatMap(({ vessel, ask }) => (ask === "" ? [vessel] : []));
  return [
    ...wrong.map(asWarning),
    ...bare.flatMap(({ vessel, ask }) => (ask === "" ? [] : [notThere(vessel, ask)])),
    ...(plainly.length === 0 ? [] : [notThere(plainly.join(", "))]),
  ];
}

const notThere = (vessels: string, ask = ""): Problem => ({
  severity: "warning",
  text: `${vessels}: not in the table of components, so none are counted${ask}`,
});
