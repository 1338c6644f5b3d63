/** A conditional format as the older list of a sheet says it. */

import type { Condition } from "../book";
import { toFileFormula } from "../formula/toFile";
import { FILE_SETS } from "./iconSets";
import { type Attributes, element, escapeText } from "./rawXml";

export function ruleXml(condition: Condition, look: string | number | undefined, extensions = ""): string {
  const formulas = condition.formulas.map((formula) => element("formula", {}, escapeText(toFileFormula(formula))));
  const { priority, ...rest } = ruleAttributes(condition);
  const attributes = { type: rest.type, dxfId: look, priority, ...rest };
  return element("cfRule", attributes, ...formulas, scaleXml(condition), extensions);
}

/** What both lists say of a rule. */
export function ruleAttributes({
  kind,
  priority,
  stops,
  operator,
  text,
  rank,
  average,
  period,
}: Condition): Attributes {
  return {
    type: kind,
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
  };
}

/** Colour scales, bars and icons. */
function scaleXml({ kind, stopsAt = [], icons, bar }: Condition): string {
  const places = stopsAt.map(({ kind: type, value, above }) =>
    element("cfvo", { type, val: value, gte: above ? 0 : null }),
  );
  const colors = stopsAt.flatMap(({ color }) => (color ? [element("color", { rgb: `FF${color}` })] : []));
  if (kind === "colorScale") return element("colorScale", {}, ...places, ...colors);
  if (kind === "dataBar") {
    return element("dataBar", { showValue: bar?.hidesValue ? 0 : null }, ...places, ...colors.slice(0, 1));
  }
  if (kind !== "iconSet") return "";
  const said = {
    iconSet: icons && (FILE_SETS[icons.set] ?? icons.set),
    reverse: icons?.reversed || null,
    showValue: icons?.hidesValue ? 0 : null,
  };
  return element("iconSet", said, ...places);
}
