import type { Problem } from "../../problem";
import { sameName } from "../../sameName";
import type { Components } from "../../tables/components";
import type { Vessels } from "../../tables/vessels";
import { isThisWick, isWick, wickOf } from "../../tables/wick";
import type { RunPlan } from "../runPlan";

/** Vessels whose components name another wick than the approved one: one of the two is wrong. */
export function wickProblems({ scents }: RunPlan, vessels: Vessels, components: Components): Problem[] {
  const lines = scents.flatMap(({ pots }) => pots.flatMap((pot) => pot.lines));
  const poured = new Set(lines.map(({ vessel }) => sameName(vessel)));
  return [...poured].flatMap((key): Problem[] => {
    const vessel = vessels.get(key);
    const others = (components.get(key) ?? []).map(({ item }) => item).filter(isWick);
    if (!vessel || vessel.wick === "" || others.length === 0) return [];
    const { name } = wickOf(vessel.wick);
    const isNamed = others.some((item) => isThisWick(item, name));
    if (isNamed) return [];
    const text = `${vessel.vessel}: its approved wick is ${vessel.wick}, and its components name ${others.join(", ")}; fix the wrong one`;
    return [{ table: "vessels", row: vessel.row, field: "wick", severity: "warning", text }];
  });
}
