import { list } from "../../core/check/list";
import { sameName } from "../sameName";

/** A wick as makers write it: `W-21`, `2 x W-21`, `W-21 x 2`, `W-21 (2)`. */
export function wickOf(text: string): { readonly name: string; readonly each: number } {
  const [, before, name = ""] = /^(\d{1,2})\s*[x×*]\s*(\S.*)$/i.exec(text) ?? [];
  if (before) return { name, each: Number(before) };
  const [, first = "", behind, inBrackets] =
    /^(.*\S)\s*(?:\s[x×*]\s*(\d{1,2})|\((\d{1,2})\s*(?:x|pcs?)?\))$/i.exec(text) ?? [];
  if (first !== "") return { name: first, each: Number(behind ?? inBrackets) };
  return { name: text, each: 1 };
}

/** However it is written that there are two of it. */
export function isSameWick(one: string, other: string): boolean {
  const [a, b] = [wickOf(one), wickOf(other)];
  return sameName(a.name) === sameName(b.name) && a.each === b.each;
}

/** What is left of a name without its spaces, hyphens and dots; between two figures one stays: 2.1 is not 21. */
const bareName = (name: string): string =>
  sameName(name)
    .replace(/(?<=\d)[\s\p{Pd}._]+(?=\d)/gu, "/")
    .replace(/[\s\p{Pd}._]+/gu, "");

/**
 * The names of wicks, without how many, that differ only in spaces, hyphens, dots or case, group by group. Nobody but
 * the maker knows whether they are one wick.
 */
export function alikeWicks(wicks: readonly string[]): string[][] {
  const groups = new Map<string, Map<string, string>>();
  for (const wick of wicks) {
    const { name } = wickOf(wick);
    const group = groups.get(bareName(name)) ?? new Map<string, string>();
    groups.set(bareName(name), group);
    if (!group.has(sameName(name))) group.set(sameName(name), name);
  }
  return [...groups].flatMap(([bare, group]) => (bare !== "" && group.size > 1 ? [[...group.values()]] : []));
}

/** What is asked of them. */
export const oneWickOrTwo = (names: readonly string[]): string =>
  `${list(names, "and")}: one wick, or ${names.length === 2 ? "two" : names.length}?`;

/** By name, numbers by their size. */
export const inOrderOfName = (one: string, other: string): number => one.localeCompare(other, "en", { numeric: true });

/** Words for what is called after a wick and is none, in headings and in names of items. */
export const WICK_TOOLS = (
  "sticker stickers tab tabs sustainer sustainers bar bars holder holders clip clips pin pins centring centering " +
  "centerer centerers trimmer trimmers setter setters dipper dippers tool tools"
).split(" ");
const TOOLS = WICK_TOOLS.join("|");
const FOR_WICKS = new RegExp(`\\bwicks?[^\\p{L}\\p{N}]+(${TOOLS})\\b|\\b(${TOOLS}) for wicks?\\b`, "iu");

/** Whether an item is called a wick. */
export const isWick = (item: string): boolean => /\bwicks?\b/i.test(item) && !isForWicks(item);
export const isForWicks = (item: string): boolean => FOR_WICKS.test(item);

/** Whether a component is this wick: it is called so, perhaps among other words, or it is just called a wick. */
export function isThisWick(component: string, wick: string): boolean {
  const [words = "", name = ""] = [component, wick].map(
    (one) => ` ${sameName(one).replace(/[^\p{L}\p{N}.-]+/gu, " ")} `,
  );
  if (/^ wicks? $/.test(words) || words === name) return true;
  // A number by itself may be of anything: a label of 6 cm.
  return words.includes(name) && (/\p{L}/u.test(wick) ? !isForWicks(component) : isWick(component));
}
