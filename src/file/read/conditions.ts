import { areasOf } from "../addresses";
import type { Condition } from "../book";
import { fromFileFormula } from "../formula/fromFile";
import { child, children, type Element, within } from "../xml/tree";
import type { Colors } from "./colors";
import { overlay, type Styles } from "./styles";
import { unescaped } from "./text";
import { isOn, numberIn, said } from "./values";
import { aloneRules, asOlder } from "./youngerConditions";

/**
 * Looks that depend on what stands in cells, from the sheet's elements of this kind. `younger` holds the finer points of
 * some, which are bound to them by an id.
 */
export function readConditions(
  elements: readonly Element[],
  younger: Element | undefined,
  overlays: Styles["overlays"],
  colors: Colors,
): Condition[] {
  const finer = new Map([...within(younger, "x14:cfRule")].map((rule) => [rule.attributes.id, rule]));
  const older = elements.flatMap((element) => {
    const areas = areasOf(element.attributes.sqref ?? "");
    if (areas.length === 0) return [];
    return children(element, "cfRule").map((rule) => {
      const [id] = within(rule, "x14:id");
      return said({
        areas,
        ...condition(rule, overlays, colors),
        bar: bar(child(rule, "dataBar"), child(finer.get(id?.text.trim()), "x14:dataBar"), colors),
      });
    });
  });
  const alone = aloneRules(elements, younger).map(({ rule, areas }): Condition => {
    const dxf = child(rule, "x14:dxf");
    const attributes = dxf ? { ...rule.attributes, dxfId: "0" } : rule.attributes;
    const looks = dxf ? [overlay(dxf, colors)] : [];
    return { ...condition(asOlder({ ...rule, attributes }), looks, colors), areas, younger: true };
  });
  return [...older, ...alone];
}

function condition(rule: Element, overlays: Styles["overlays"], colors: Colors): Omit<Condition, "areas"> {
  const { attributes } = rule;
  const kind = attributes.type ?? "expression";
  const { operator, text, dxfId, timePeriod } = attributes;
  return said({
    kind,
    priority: numberIn(attributes.priority) ?? 1,
    stops: isOn(attributes.stopIfTrue),
    operator,
    formulas: children(rule, "formula").map((formula) => fromFileFormula(formula.text)),
    text: text ? unescaped(text) : undefined,
    look: dxfId === undefined ? undefined : overlays[Number(dxfId)],
    stopsAt: stopsAt(rule, colors),
    icons: icons(child(rule, "iconSet")),
    rank:
      kind === "top10"
        ? {
            count: numberIn(attributes.rank) ?? 10,
            percent: isOn(attributes.percent),
            bottom: isOn(attributes.bottom),
          }
        : undefined,
    average:
      kind === "aboveAverage"
        ? {
            above: isOn(attributes.aboveAverage, true),
            orEqual: isOn(attributes.equalAverage),
            deviations: numberIn(attributes.stdDev) ?? 0,
          }
        : undefined,
    period: timePeriod,
  });
}

function stopsAt(rule: Element, colors: Colors): Condition["stopsAt"] {
  const scale = child(rule, "colorScale") ?? child(rule, "dataBar") ?? child(rule, "iconSet");
  if (!scale) return undefined;
  const shown = children(scale, "color").map((color) => colors(color) ?? "000000");
  return children(scale, "cfvo").map(({ attributes }, i) =>
    said({
      kind: attributes.type ?? "num",
      value: attributes.val,
      // A bar has two ends and one colour.
      color: shown[i] ?? shown[0],
      above: isOn(attributes.gte, true) ? undefined : (true as const),
    }),
  );
}

function bar(element: Element | undefined, finer: Element | undefined, colors: Colors): Condition["bar"] {
  if (!element) return undefined;
  const { gradient, negativeBarColorSameAsPositive } = finer?.attributes ?? {};
  const negative = child(finer, "x14:negativeFillColor");
  const found = {
    solid: !isOn(gradient, true),
    negative: (negative && !isOn(negativeBarColorSameAsPositive) && colors(negative)) || null,
    hidesValue: !isOn(element.attributes.showValue, true) || !isOn(finer?.attributes.showValue, true),
  };
  return Object.values(found).some(Boolean) ? found : undefined;
}

const icons = (element: Element | undefined): Condition["icons"] =>
  element && {
    set: element.attributes.iconSet ?? "3TrafficLights1",
    reversed: isOn(element.attributes.reverse),
    hidesValue: !isOn(element.attributes.showValue, true),
    ...(isOn(element.attributes.custom) && {
      each: children(element, "cfIcon").map(({ attributes: { iconSet, iconId } }) => ({
        set: iconSet ?? "NoIcons",
        place: numberIn(iconId) ?? 0,
      })),
    }),
  };
