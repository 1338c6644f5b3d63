import { invertColorByMatrix } from "@univerjs/core";
import { defaultTheme } from "@univerjs/themes";
import { expect, it } from "vitest";
import { THEME } from "../../../src/host/univer/theme";

type Rgb = [number, number, number];

/** Relative luminance and contrast as WCAG 2.2 defines them. */
const luminance = (color: Rgb): number => {
  const [red, green, blue] = color.map((part) => {
    const share = part / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as Rgb;
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};
const contrast = (one: number, other: number) => (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);

it.each(Object.values(THEME["loop-color"]))("a reference in %s can be read on white, and inverted on black", (name) => {
  const [hue = "", shade = ""] = name.split(".");
  const hex = (defaultTheme as unknown as Record<string, Record<string, string>>)[hue]?.[shade] ?? "";
  const color = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as Rgb;
  expect(contrast(luminance(color), 1)).toBeGreaterThanOrEqual(4.5);
  expect(contrast(luminance(invertColorByMatrix(color) as Rgb), 0)).toBeGreaterThanOrEqual(4.5);
});
