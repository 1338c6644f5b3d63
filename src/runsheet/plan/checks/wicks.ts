import { list } from "../../../core/check/list";
import { plain } from "../../../core/check/plain";
import { sum } from "../../../core/statistics/sum";
import type { Problem } from "../../problem";
import { sameName } from "../../sameName";
import type { Component } from "../../tables/components";
import type { ReadTables } from "../../tables/readTables";
import type { Vessel, Vessels } from "../../tables/vessels";
import { alikeWicks, isForWicks, isThisWick, isWick, wickOf } from "../../tables/wick";
import type { RunPlan } from "../runPlan";

/** Vessels whose components name another wick than the approved one, or another number of it: one of the two is wrong. */
export function wickProblems({ scents }: RunPlan, read: ReadTables["rows"]): Problem[] {
  const { vessels = new Map() as Vessels, components } = read;
  const lines = scents.flatMap(({ pots }) => pots.flatMap((pot) => pot.lines));
  const poured = new Set(lines.map(({ vessel }) => sameName(vessel)));
  const wicks = knownWicks(read);
  return [...poured].flatMap((key): Problem[] => {
    const vessel = vessels.get(key);
    if (!vessel || vessel.wick === "") return [];
    const { name } = wickOf(vessel.wick);
    const own = components?.get(key) ?? [];
    const all = own
      .map(({ item }) => item)
      .filter((item) => isWick(item) || ((wicks.has(sameName(item)) || isAlike(item, name)) && !isForWicks(item)));
    const others = all.filter((item) => !isThisWick(item, name));
    const texts = [
      ...(others.length === 0
        ? []
        : [others.length === all.length ? otherWick(vessel, others) : oneMore(vessel, others)]),
      ...otherNumber(vessel, own),
    ];
    return texts.map((text) => ({ table: "vessels", row: vessel.row, field: "wick", severity: "warning", text }));
  });
}

const otherWick = ({ vessel, wick }: Vessel, others: readonly string[]): string =>
  `${vessel}: its approved wick is ${wick}, and its components name ${others.join(", ")}; fix the wrong one`;
const oneMore = ({ vessel, wick }: Vessel, others: readonly string[]): string =>
  `${vessel}: beside its approved wick, ${wick}, its components name ${list(others, "and")}; both are counted. Check which it takes`;

/** Whether two names of wicks differ only in what is easily written otherwise. */
const isAlike = (one: string, other: string): boolean => alikeWicks([one, other]).length > 0;

/** Where the vessel says how many of its wick it takes, and its components say another number. */
function otherNumber({ vessel, wick }: Vessel, components: readonly Component[]): string[] {
  const { name, each } = wickOf(wick);
  const counted = components.filter(({ item }) => isThisWick(item, name));
  const number = sum(counted.map((one) => one.each ?? Number.NaN));
  if (name === wick || counted.length === 0 || !(Math.abs(number - each) > 1e-9)) return [];
  const items = [...new Set(counted.map(({ item }) => item))];
  const counts = `${plain(number)} of ${list(items, "and")}`;
  return [
    `${vessel}: its approved wick is ${wick}, and its components count ${counts}, and so many are fetched. Fix the wrong one`,
  ];
}

/** What other tables know to be a wick, whatever it is called: by its kind, by burn tests, as the one of a vessel. */
function knownWicks({ items, stock, prices, burnTests, vessels }: ReadTables["rows"]): ReadonlySet<string> {
  const ofKind = [items, stock, prices].flatMap((one) =>
    [...(one?.values() ?? [])].flatMap(({ count }) => (count.isWick ? [count.item] : [])),
  );
  const named = [...(burnTests?.values() ?? []), ...(vessels?.values() ?? [])].map(({ wick }) => wickOf(wick).name);
  return new Set([...ofKind, ...named].map(sameName));
}
