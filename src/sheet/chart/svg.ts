import { escapeXml } from "../escapeXml";
import type { Chart } from "../sheet";
import { SERIES_STYLES, type SeriesStyle } from "../styles";
import type { Plot } from "./data";
import { shown, ticks } from "./scale";
import { chartTextWithFigures } from "./text";

/** What a chart is drawn on: its size in pixels, and whether the ground is dark. */
export interface Ground {
  readonly width: number;
  readonly height: number;
  readonly dark: boolean;
}

/** The place between the axes, in pixels. */
interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const LIGHT = { paper: "#FFFFFF", ink: "#2B2620", line: "#DDD6CA", axis: "#8A8175" };
const DARK = { paper: "#26221D", ink: "#F0EBE2", line: "#4A443B", axis: "#A79C8C" };

const LINE = 18;
const EDGE = 14;

/** How wide a text is, about: nothing here can measure it. */
const widthOf = (text: string): number => text.length * 6.6;
const widest = (texts: readonly string[]): number => Math.max(0, ...texts.map(widthOf));

/** A chart as an SVG image of this size. Its figures stand in for it where it is not seen. */
export function chartSvg(chart: Chart, plots: readonly Plot[], ground: Ground): string {
  const { width, height } = ground;
  const { paper, ink, axis } = colorsOf(ground);
  const key = legend(chart, plots, ground);
  const below = height - EDGE - key.rows * LINE;
  const body = chart.kind === "bars" ? bars(chart, plots, ground, below) : linesOfPoints(chart, plots, ground, below);
  return `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escapeXml(chartTextWithFigures(chart, plots))}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="system-ui, sans-serif" font-size="12" fill="${ink}"><rect x="0.5" y="0.5" width="${width - 1}" height="${height - 1}" fill="${paper}" stroke="${axis}"/>${text(chart.title, width / 2, 26, { anchor: "middle", weight: "bold", size: 15 })}${body}${key.drawn}</svg>`;
}

/** Bars lying below each other, the first on top. */
function bars({ yTitle, format }: Chart, plots: readonly Plot[], ground: Ground, below: number): string {
  const { line, axis } = colorsOf(ground);
  const names = plots[0]?.points.map(({ x }) => String(x)) ?? [];
  const scale = ticks(heightsOf(plots));
  const frame: Frame = {
    left: Math.min(EDGE + widest(names) + 8, ground.width / 2),
    right: ground.width - EDGE - 16,
    top: 40,
    bottom: below - LINE - (yTitle ? LINE : 0) - 8,
  };
  const at = along(scale, frame.left, frame.right);
  const room = (frame.bottom - frame.top) / Math.max(1, names.length);
  const thick = (room * 0.74) / plots.length;
  const drawn = plots.flatMap(({ points }, i) =>
    points.map(({ y }, place) => {
      const top = frame.top + room * (place + 0.13) + thick * i;
      const [from, to] = [at(0), at(y ?? 0)];
      return `<rect x="${px(Math.min(from, to))}" y="${px(top)}" width="${px(Math.abs(to - from))}" height="${px(thick)}" fill="${colorOf(i, ground)}"/>`;
    }),
  );
  const labels = names.map((name, i) =>
    text(name, frame.left - 8, frame.top + room * (i + 0.5) + 4, { anchor: "end" }),
  );
  return [
    ...scale.map((tick) => stroke(tick === 0 ? axis : line, at(tick), frame.top, at(tick), frame.bottom)),
    ...scale.map((tick) => text(shown(tick, format), at(tick), frame.bottom + LINE, { anchor: "middle" })),
    ...drawn,
    ...labels,
    text(yTitle, (frame.left + frame.right) / 2, frame.bottom + 2 * LINE, { anchor: "middle" }),
  ].join("");
}

/** Points joined to a line for each series. */
function linesOfPoints(chart: Chart, plots: readonly Plot[], ground: Ground, below: number): string {
  const { line, axis } = colorsOf(ground);
  const across = ticks(plots.flatMap(({ points }) => points.map(({ x }) => Number(x))));
  const up = ticks(heightsOf(plots));
  const frame: Frame = {
    left: EDGE + LINE + widest(up.map((tick) => shown(tick, chart.format))) + 8,
    right: ground.width - EDGE - 16,
    top: 44,
    bottom: below - 2 * LINE - 8,
  };
  const [x, y] = [along(across, frame.left, frame.right), along(up, frame.bottom, frame.top)];
  const drawn = plots.map((plot, i) => {
    const color = colorOf(i, ground);
    const places = plot.points.map((point) => [x(Number(point.x)), y(Number(point.y))] as const);
    const path = places.map((place) => place.map(px).join(" ")).join(" ");
    return `<polyline points="${path}" fill="none" stroke="${color}" stroke-width="2" stroke-linejoin="round"/>${places.map(([a, b]) => mark(styleOf(i).mark, a, b, color)).join("")}`;
  });
  const middle = (frame.top + frame.bottom) / 2;
  return [
    ...up.map((tick) => stroke(tick === 0 ? axis : line, frame.left, y(tick), frame.right, y(tick))),
    ...up.map((tick) => text(shown(tick, chart.format), frame.left - 8, y(tick) + 4, { anchor: "end" })),
    stroke(axis, x(0), frame.top, x(0), frame.bottom),
    ...across.map((tick) => stroke(axis, x(tick), frame.bottom, x(tick), frame.bottom + 5)),
    ...across.map((tick) => text(String(tick), x(tick), frame.bottom + LINE, { anchor: "middle" })),
    text(chart.xTitle, (frame.left + frame.right) / 2, frame.bottom + 2 * LINE, { anchor: "middle" }),
    `<g transform="rotate(-90 ${EDGE + 8} ${px(middle)})">${text(chart.yTitle, EDGE + 8, middle, { anchor: "middle" })}</g>`,
    ...drawn,
  ].join("");
}

/** The series' names with their marks, in as many rows as they need, at the foot. */
function legend({ kind }: Chart, plots: readonly Plot[], ground: Ground): { rows: number; drawn: string } {
  const rows: { name: string; i: number }[][] = [[]];
  const needs = ({ name }: { name: string }): number => 22 + widthOf(name) + 18;
  const whole = (row: readonly { name: string }[]): number => row.reduce((sum, one) => sum + needs(one), 0);
  for (const [i, { name }] of plots.entries()) {
    const row = rows.at(-1) as { name: string; i: number }[];
    if (row.length > 0 && whole([...row, { name }]) > ground.width - 2 * EDGE) rows.push([{ name, i }]);
    else row.push({ name, i });
  }
  const drawn = rows.flatMap((row, r) => {
    const y = ground.height - EDGE - (rows.length - 1 - r) * LINE;
    let x = (ground.width - whole(row)) / 2;
    return row.map((one) => {
      const left = x;
      x += needs(one);
      const sign = kind === "bars" ? "square" : styleOf(one.i).mark;
      return mark(sign, left + 9, y - 4, colorOf(one.i, ground)) + text(one.name, left + 22, y, {});
    });
  });
  return { rows: rows.length, drawn: drawn.join("") };
}

const heightsOf = (plots: readonly Plot[]): number[] =>
  plots.flatMap(({ points }) => points.flatMap(({ y }) => y ?? []));

const colorsOf = ({ dark }: Ground) => (dark ? DARK : LIGHT);
const styleOf = (i: number): SeriesStyle => SERIES_STYLES[i % SERIES_STYLES.length] as SeriesStyle;
const colorOf = (i: number, { dark }: Ground): string => `#${dark ? styleOf(i).onDark : styleOf(i).color}`;

const MARKS: Readonly<Record<SeriesStyle["mark"], string>> = {
  circle: "M-4.5 0a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0 -9 0Z",
  square: "M-4 -4H4V4H-4Z",
  triangle: "M0 -5L5 4H-5Z",
  diamond: "M0 -5.5L5.5 0L0 5.5L-5.5 0Z",
  x: "M-4 -4L4 4M4 -4L-4 4",
  plus: "M-5 0H5M0 -5V5",
  star: "M-4 -4L4 4M4 -4L-4 4M0 -5V5",
};

const mark = (sign: SeriesStyle["mark"], x: number, y: number, color: string): string =>
  `<path transform="translate(${px(x)} ${px(y)})" d="${MARKS[sign]}" fill="${color}" stroke="${color}" stroke-width="2"/>`;

/** Where a value stands between the first tick and the last. */
function along(scale: readonly number[], from: number, to: number): (value: number) => number {
  const [first, last] = [scale[0] as number, scale.at(-1) as number];
  return (value) => from + ((value - first) / (last - first)) * (to - from);
}

function text(
  content: string,
  x: number,
  y: number,
  { anchor = "start", weight = "normal", size = 12 }: { anchor?: string; weight?: string; size?: number },
): string {
  if (!content) return "";
  const look = `text-anchor="${anchor}" font-weight="${weight}" font-size="${size}"`;
  return `<text x="${px(x)}" y="${px(y)}" ${look}>${escapeXml(content)}</text>`;
}

const stroke = (color: string, x1: number, y1: number, x2: number, y2: number): string =>
  `<line stroke="${color}" x1="${px(x1)}" y1="${px(y1)}" x2="${px(x2)}" y2="${px(y2)}"/>`;

const px = (value: number): string => String(Math.round(value * 10) / 10);
