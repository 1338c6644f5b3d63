import { areaList, areasOf } from "../addresses";
import type { Condition } from "../book";
import { toFileFormula } from "../formula/toFile";
import { same } from "../same";
import { extensionOf, putExtension } from "./extensions";
import { attributeOf, type Cut, cut, element, escapeText, join } from "./rawXml";
import { put } from "./sheetOrder";

/** Where newer programs say what the older form of a rule cannot hold. */
const NEWER = "{78C0D931-6437-407d-A8EE-F0AAD7539E65}";

type Overlay = (look: NonNullable<Condition["look"]>) => number;

/**
 * Puts a sheet's conditional formats in, each rule of its own. Those that are as they were keep their text, and with it
 * what only newer programs know; of the others that goes.
 */
export function putConditions(
  sheet: Cut,
  before: readonly Condition[],
  now: readonly Condition[],
  overlay: Overlay,
): void {
  const old = rulesOf(sheet);
  const kept = new Set<string>();
  const rules = now.map((condition) => {
    const sqref = areaList(condition.areas);
    const isOld = before.some((one) => same(one, condition));
    const raw = old.find(
      (rule) => isOld && same(areasOf(rule.sqref), condition.areas) && isOf(condition, rule.raw),
    )?.raw;
    if (raw !== undefined) kept.add(raw);
    return element("conditionalFormatting", { sqref }, raw ?? ruleXml(condition, overlay));
  });
  put(sheet, "conditionalFormatting", ...rules);
  const gone = old.filter(({ raw }) => !kept.has(raw)).map(({ raw }) => raw);
  forgetNewer(sheet, gone.join(""));
}

interface Rule {
  readonly sqref: string;
  readonly raw: string;
}

const rulesOf = (sheet: Cut): Rule[] =>
  sheet.pieces.flatMap(({ name, raw }) => {
    if (name !== "conditionalFormatting") return [];
    const sqref = attributeOf(raw, "sqref") ?? "";
    return cut(raw).pieces.flatMap((piece) => (piece.name === "cfRule" ? [{ sqref, raw: piece.raw }] : []));
  });

const isOf = ({ kind, priority }: Condition, raw: string): boolean =>
  attributeOf(raw, "type") === kind && Number(attributeOf(raw, "priority")) === priority;

/** Newer forms are bound to a rule by an id, which the rule says. Those that stand alone the book does not tell of. */
function forgetNewer(sheet: Cut, gone: string): void {
  const raw = extensionOf(sheet, NEWER);
  if (raw === undefined) return;
  const extension = cut(raw);
  const formats = cut(extension.pieces.find(({ name }) => name === "conditionalFormattings")?.raw ?? "<none/>");
  const isGone = (text: string): boolean =>
    [...text.matchAll(/<[^<>]*cfRule[^<>]*\sid="([^"]*)"/g)].some(([, id = ""]) => gone.includes(id));
  const pieces = formats.pieces.filter((piece) => !isGone(piece.raw));
  if (pieces.length === formats.pieces.length) return;
  const left = pieces.some(({ name }) => name !== "");
  const changed = join({ ...extension, pieces: [{ name: "", raw: join({ ...formats, pieces }) }] });
  putExtension(sheet, NEWER, left ? changed : "");
}

function ruleXml(condition: Condition, overlay: Overlay): string {
  const { kind, priority, stops, operator, formulas, text, look, rank, average, period } = condition;
  return element(
    "cfRule",
    {
      type: kind,
      dxfId: look ? overlay(look) : null,
      priority,
      stopIfTrue: stops || null,
      aboveAverage: average && !average.above ? 0 : null,
      percent: rank?.percent || null,
      bottom: rank?.bottom || null,
      operator,
      text,
      timePeriod: period,
      rank: rank?.count,
      stdDev: average && average.deviations > 0 ? average.deviations : null,
      equalAverage: average?.orEqual || null,
    },
    ...formulas.map((formula) => element("formula", {}, escapeText(toFileFormula(formula)))),
    scaleXml(condition),
  );
}

/** Sets that only younger lists of rules may name (ECMA-376 Part 1, 18.18.42, lists the others): the nearest of them. */
export const OLDER_SETS: Readonly<Record<string, string>> = {
  "3Stars": "3Symbols",
  "3Triangles": "3Arrows",
  "5Boxes": "5Quarters",
  _5Felling: "5Rating",
};

/** Colour scales, bars and icons. */
function scaleXml({ kind, stopsAt = [], icons }: Condition): string {
  const places = stopsAt.map(({ kind: type, value, above }) =>
    element("cfvo", { type, val: value, gte: above ? 0 : null }),
  );
  const colors = stopsAt.flatMap(({ color }) => (color ? [element("color", { rgb: `FF${color}` })] : []));
  if (kind === "colorScale") return element("colorScale", {}, ...places, ...colors);
  if (kind === "dataBar") return element("dataBar", {}, ...places, ...colors.slice(0, 1));
  if (kind !== "iconSet") return "";
  const said = {
    iconSet: icons && (OLDER_SETS[icons.set] ?? icons.set),
    reverse: icons?.reversed || null,
    showValue: icons?.hidesValue ? 0 : null,
  };
  return element("iconSet", said, ...places);
}
