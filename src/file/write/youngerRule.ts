/** Conditional formats that stand in the younger list alone: of other sheets, or with icons that the older one lacks. */

import type { Condition } from "../book";
import { toFileFormula } from "../formula/toFile";
import { areYounger, FILE_SETS } from "./iconSets";
import { lookXml } from "./lookXml";
import { element, escapeText } from "./rawXml";
import { ruleAttributes } from "./ruleXml";
import { youngerXml } from "./youngerConditions";

/** Scales of colours and bars are written as older ones, which newer programs read as well. */
export const standsAlone = ({ kind, younger, icons }: Condition): boolean =>
  kind === "iconSet"
    ? younger === true || (icons !== undefined && areYounger(icons))
    : isOther(kind) && younger === true;

const isOther = (kind: string): boolean => kind !== "colorScale" && kind !== "dataBar";

export function youngerRule(condition: Condition, id: string): string {
  const formulas = condition.formulas.map((formula) => value(toFileFormula(formula)));
  const look = condition.look ? lookXml("x14:dxf", condition.look) : "";
  return youngerXml(
    condition.areas,
    element("x14:cfRule", { ...ruleAttributes(condition), id }, ...formulas, iconsXml(condition), look),
  );
}

const value = (formula: string): string => element("xm:f", {}, escapeText(formula));

function iconsXml({ icons, stopsAt = [] }: Condition): string {
  if (!icons) return "";
  const stops = stopsAt.map((stop) =>
    element(
      "x14:cfvo",
      { type: stop.kind, gte: stop.above ? 0 : null },
      stop.value === undefined ? "" : value(stop.value),
    ),
  );
  const each = (icons.each ?? []).map(({ set, place }) =>
    element("x14:cfIcon", { iconSet: FILE_SETS[set] ?? set, iconId: place }),
  );
  const said = {
    iconSet: FILE_SETS[icons.set] ?? icons.set,
    showValue: icons.hidesValue ? 0 : null,
    reverse: icons.reversed || null,
    custom: icons.each ? 1 : null,
  };
  return element("x14:iconSet", said, ...stops, ...each);
}
