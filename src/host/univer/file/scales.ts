/** Conditional formats that show how large a value is, colours, bars and icons, as the plugin keeps them, and back. */

import type { Condition } from "../../../file/book";
import type { BarJson, IconsJson, ScaleJson, ValueJson } from "./conditionJson";
import { colorOf } from "./fonts";
import { LITERAL } from "./literal";

type Said = Partial<Condition> & Pick<Condition, "kind">;

const SCALES: ReadonlySet<string> = new Set(["colorScale", "dataBar", "iconSet"]);

export const isScale = ({ kind }: Condition): boolean => SCALES.has(kind);

/** Null for one that is incomplete. */
export function scaleJson({ kind, stopsAt = [], icons, bar }: Condition): ScaleJson | null {
  const values = stopsAt.map(({ kind: type, value }) => ({
    type: type.replace(/^auto/, "").toLowerCase(),
    ...(value !== undefined && { value: valueJson(type, value) }),
  }));
  const colors = stopsAt.map(({ color }) => color);
  const [min, max] = values;
  if (kind === "colorScale" && values.length > 1 && colors.every(Boolean)) {
    return {
      type: kind,
      config: values.map((value, index) => ({ index, color: `#${colors[index]}`, value })),
    };
  }
  if (kind === "dataBar" && min && max) {
    const color = `#${colors.find(Boolean) ?? "638EC6"}`;
    const negative = bar?.negative ? `#${bar.negative}` : color;
    return {
      type: kind,
      isShowValue: !bar?.hidesValue,
      config: { min, max, isGradient: !bar?.solid, positiveColor: color, nativeColor: negative },
    };
  }
  if (kind !== "iconSet" || !icons || values.length === 0) return null;
  // The plugin begins with the highest values.
  const config = values.map((value, i) => ({
    operator: stopsAt[i]?.above ? "greaterThan" : "greaterThanOrEqual",
    value,
    ...(icons.each
      ? iconJson(icons.each[i])
      : { iconType: icons.set, iconId: String(icons.reversed ? i : values.length - 1 - i) }),
  }));
  return { type: kind, isShowValue: !icons.hidesValue, config: config.reverse() };
}

/** How the plugin says that there is no icon. */
const NONE = { iconType: "EMPTY_ICON_TYPE", iconId: "" };

/** A set has as many icons as its name says. */
const sizeOf = (set: string): number => Number(/^_?([345])[A-Z]/.exec(set)?.[1]);

/** Files count from the lowest icon of a set, the plugin from the highest. */
function iconJson(icon: { set: string; place: number } | undefined): typeof NONE {
  const place = icon ? sizeOf(icon.set) - 1 - icon.place : -1;
  return icon && place >= 0 ? { iconType: icon.set, iconId: String(place) } : NONE;
}

/** A file writes a formula here without its `=`. */
const valueJson = (kind: string, value: string): number | string => {
  if (kind === "formula") return `=${value}`;
  return LITERAL.test(value) ? Number(value) : value;
};

export function scaleOf(rule: ScaleJson): Said {
  if (rule.type === "dataBar") return barOf(rule);
  if (rule.type === "iconSet") return iconsOf(rule);
  const stops = [...rule.config].sort((a, b) => a.index - b.index);
  return { kind: rule.type, stopsAt: stops.map(({ color, value }) => stopOf(value, color)) };
}

function barOf({ type, isShowValue, config }: BarJson): Said {
  const { min, max, isGradient, positiveColor, nativeColor } = config;
  const [positive, negative] = [colorOf(positiveColor), colorOf(nativeColor)];
  const bar = { solid: !isGradient, negative: negative === positive ? null : negative, hidesValue: !isShowValue };
  return {
    kind: type,
    stopsAt: [stopOf(min, positiveColor), stopOf(max)],
    ...(Object.values(bar).some(Boolean) && { bar }),
  };
}

function iconsOf({ type, isShowValue, config }: IconsJson): Said {
  const lowestFirst = [...config].reverse();
  const count = lowestFirst.length;
  const sets = lowestFirst.map(({ iconType }) => iconType);
  const set = sets.find((one) => sizeOf(one) === count) ?? `${count}Arrows`;
  const is = (id: (place: number) => number) => lowestFirst.every(({ iconId }, i) => Number(iconId) === id(i));
  const reversed = count > 1 && Number(lowestFirst[0]?.iconId) === 0;
  const each = lowestFirst.map(({ iconType, iconId }) => {
    const place = iconId === "" ? Number.NaN : sizeOf(iconType) - 1 - Number(iconId);
    return place >= 0 ? { set: iconType, place } : { set: "NoIcons", place: 0 };
  });
  const isWhole = sets.every((one) => one === set) && is((i) => (reversed ? i : count - 1 - i));
  return {
    kind: type,
    stopsAt: lowestFirst.map(({ value, operator }, i) => ({
      // The lowest icon stands for all that is below the second: the plugin says that by a number above all.
      ...(i === 0 && operator.startsWith("lessThan") ? { kind: "percent", value: "0" } : stopOf(value)),
      ...(operator === "greaterThan" && { above: true as const }),
    })),
    icons: { set, reversed: isWhole && reversed, hidesValue: !isShowValue, ...(!isWhole && { each }) },
  };
}

function stopOf({ type, value }: ValueJson, color?: string) {
  const six = colorOf(color);
  const text = value === undefined ? undefined : String(value);
  const said = type === "formula" ? text?.replace(/^=/, "") : text;
  return { kind: type, ...(said !== undefined && { value: said }), ...(six && { color: six }) };
}
