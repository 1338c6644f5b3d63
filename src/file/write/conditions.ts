import { areaList, areasOf } from "../addresses";
import type { Condition } from "../book";
import { same } from "../same";
import { type Match, matched } from "./matched";
import { attributeOf, type Cut, cut, element, withAttributes } from "./rawXml";
import { ruleXml } from "./ruleXml";
import { put } from "./sheetOrder";
import {
  aloneRules,
  boundTo,
  type Fate,
  idMaker,
  needsYounger,
  putYounger,
  youngerBar,
  youngerId,
} from "./youngerConditions";
import { standsAlone, youngerRule } from "./youngerRule";

type Overlay = (look: NonNullable<Condition["look"]>) => number;

/** What a rule may change of without being another one. */
const MOVED = ["areas", "priority", "stops"] as const;

/**
 * Puts a sheet's conditional formats in. Those that are as they were keep their text, and so do those whose cells moved,
 * with what only newer programs know of them; of the others that goes.
 */
export function putConditions(
  sheet: Cut,
  before: readonly Condition[],
  now: readonly Condition[],
  overlay: Overlay,
): void {
  const old = rulesOf(sheet);
  // Those of the younger list stand behind them in the book.
  const alone = aloneRules(sheet);
  const matches = matched(before, now, MOVED);
  const newId = idMaker(sheet);
  const fates = new Map<string, Fate>();
  const younger: string[] = [];
  const stay = new Set(matches.flatMap((match) => (match ? [match.at] : [])));
  for (const [at, { raw }] of old.entries()) if (!stay.has(at)) note(fates, raw, "gone");
  for (const [i, id] of alone.entries()) if (!stay.has(old.length + i)) fates.set(id, "gone");

  const write = (condition: Condition, match: Match | undefined): string => {
    const raw = match && old[match.at]?.raw;
    if (match && raw !== undefined) {
      const was = before[match.at] as Condition;
      if (!same(was.areas, condition.areas)) note(fates, raw, condition);
      return movedXml(raw, was, condition);
    }
    const look = lookNumber(condition, before, old, stay) ?? (condition.look && overlay(condition.look));
    if (!needsYounger(condition)) return ruleXml(condition, look);
    const id = newId();
    younger.push(youngerBar(condition, id));
    return ruleXml(condition, look, boundTo(id));
  };

  const writeAlone = (condition: Condition, match: Match | undefined): void => {
    if (!match) younger.push(youngerRule(condition, newId()));
    else if (!match.isAsWas) fates.set(alone[match.at - old.length] as string, condition);
  };

  const elements: string[] = [];
  for (let i = 0; i < now.length; ) {
    const group = wholeGroup(old, matches, i);
    if (group) elements.push(group.raw);
    const condition = now[i] as Condition;
    const match = matches[i];
    if (match ? match.at >= old.length : standsAlone(condition)) writeAlone(condition, match);
    else if (!group) {
      const sqref = areaList(condition.areas);
      elements.push(element("conditionalFormatting", { sqref }, write(condition, match)));
    }
    i += group?.size ?? 1;
  }
  put(sheet, "conditionalFormatting", ...elements);
  putYounger(sheet, fates, younger);
}

/** Rules that were changed, not only moved, and of which newer programs knew more than the older form holds. */
export function losingYounger(sheet: Cut, before: readonly Condition[], now: readonly Condition[]): Condition[] {
  const old = rulesOf(sheet);
  const matches = matched(before, now, MOVED);
  const gone = before.filter((_, at) => {
    const isBound = at >= old.length || youngerId(old[at]?.raw ?? "") !== undefined;
    return isBound && !matches.some((match) => match?.at === at);
  });
  return now.filter(({ kind }, i) => !matches[i] && gone.some((one) => one.kind === kind));
}

interface Group {
  readonly raw: string;
  readonly size: number;
}

interface Rule {
  readonly raw: string;
  /** Its element with all that are in it. */
  readonly group: Group;
}

/** In the order in which they are read. */
const rulesOf = (sheet: Cut): Rule[] =>
  sheet.pieces.flatMap(({ name, raw }) => {
    if (name !== "conditionalFormatting" || areasOf(attributeOf(raw, "sqref") ?? "").length === 0) return [];
    const rules = cut(raw).pieces.filter((piece) => piece.name === "cfRule");
    const group = { raw, size: rules.length };
    return rules.map((rule) => ({ raw: rule.raw, group }));
  });

/** The element that begins with this rule, where it and all behind it in there are as they were. */
function wholeGroup(old: readonly Rule[], matches: readonly (Match | undefined)[], i: number): Group | undefined {
  const first = matches[i]?.at;
  if (first === undefined) return undefined;
  const group = old[first]?.group;
  if (!group || old[first - 1]?.group === group) return undefined;
  const next = matches.slice(i, i + group.size);
  const isWhole = next.length === group.size && next.every((match, j) => match?.isAsWas && match.at === first + j);
  return isWhole ? group : undefined;
}

const note = (fates: Map<string, Fate>, raw: string, fate: Fate): void => {
  const id = youngerId(raw);
  if (id !== undefined) fates.set(id, fate);
};

const movedXml = (raw: string, was: Condition, { priority, stops }: Condition): string =>
  withAttributes(raw, {
    priority: priority === was.priority ? undefined : priority,
    stopIfTrue: stops === was.stops ? undefined : stops || null,
  });

/** Of a rule that was changed, the number of its look: that may hold more than is known here. */
function lookNumber(
  { kind, look }: Condition,
  before: readonly Condition[],
  old: readonly Rule[],
  stay: ReadonlySet<number>,
): string | undefined {
  const at = before.findIndex((one, i) => look && !stay.has(i) && one.kind === kind && same(one.look, look));
  return at < 0 ? undefined : attributeOf(old[at]?.raw ?? "<none/>", "dxfId");
}
