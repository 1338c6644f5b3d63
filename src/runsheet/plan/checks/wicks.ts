import { list } from "../../../core/check/list";
import type { Problem } from "../../problem";
import { sameName } from "../../sameName";
import type { ReadTables } from "../../tables/readTables";
import type { Vessel, Vessels } from "../../tables/vessels";
import { isForWicks, isThisWick, isWick, wickOf } from "../../tables/wick";
import type { RunPlan } from "../runPlan";

/** Vessels whose components name another wick than the approved one: one of the two is wrong. */
export function wickProblems({ scents }: RunPlan, read: ReadTables["rows"]): Problem[] {
  const { vessels = new Map() as Vessels, components } = read;
  const lines = scents.flatMap(({ pots }) => pots.flatMap((pot) => pot.lines));
  const poured = new Set(lines.map(({ vessel }) => sameName(vessel)));
  const wicks = knownWicks(read);
  return [...poured].flatMap((key): Problem[] => {
    const vessel = vessels.get(key);
    if (!vessel || vessel.wick === "") return [];
    const all = (components?.get(key) ?? [])
      .map(({ item }) => item)
      .filter((item) => isWick(item) || (wicks.has(sameName(item)) && !isForWicks(item)));
    const { name } = wickOf(vessel.wick);
    const others = all.filter((item) => !isThisWick(item, name));
    if (others.length === 0) return [];
    const text = others.length === all.length ? otherWick(vessel, others) : oneMore(vessel, others);
    return [{ table: "vessels", row: vessel.row, field: "wick", severity: "warning", text }];
  });
}

const otherWick = ({ vessel, wick }: Vessel, others: readonly string[]): string =>
  `${vessel}: its approved wick is ${wick}, and its components name ${others.join(", ")}; fix the wrong one`;
const oneMore = ({ vessel, wick }: Vessel, others: readonly string[]): string =>
  `${vessel}: beside its approved wick, ${wick}, its components name ${list(others, "and")}; both are counted. Check which it takes`;

/** What other tables know to be a wick, whatever it is called: by its kind, by burn tests, as the one of a vessel. */
function knownWicks({ items, stock, prices, burnTests, vessels }: ReadTables["rows"]): ReadonlySet<string> {
  const ofKind = [items, stock, prices].flatMap((one) =>
    [...(one?.values() ?? [])].flatMap(({ count }) => (count.isWick ? [count.item] : [])),
  );
  const named = [...(burnTests?.values() ?? []), ...(vessels?.values() ?? [])].map(({ wick }) => wickOf(wick).name);
  return new Set([...ofKind, ...named].map(sameName));
}
