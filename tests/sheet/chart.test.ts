import { DOMParser, type Element } from "@xmldom/xmldom";
import { describe, expect, it } from "vitest";
import { plotsOf } from "../../src/sheet/chart/data";
import { shown, ticks } from "../../src/sheet/chart/scale";
import { chartSvg } from "../../src/sheet/chart/svg";
import type { CellValue, Chart } from "../../src/sheet/sheet";
import { SERIES_STYLES } from "../../src/sheet/styles";

const column = (at: number, rows: number) => ({ sheet: "One", row: 0, column: at, rows, columns: 1 });

const chartOf = (kind: Chart["kind"], rows: number, format = "0"): Chart => ({
  kind,
  title: "A title & more",
  xTitle: "Across",
  yTitle: "Up",
  format,
  series: [
    { name: "First", x: column(0, rows), y: column(1, rows) },
    { name: "Second", x: column(0, rows), y: column(2, rows) },
  ],
  place: { row: 0, column: 5, rows: 10, columns: 5 },
});

const drawn = (chart: Chart, values: CellValue[][], dark = false): Element => {
  const svg = chartSvg(
    chart,
    plotsOf(chart, (_, row, at) => values[row]?.[at] ?? null),
    { width: 600, height: 400, dark },
  );
  const { documentElement } = new DOMParser({
    onError: (level, message) => {
      throw new Error(`${level}: ${message}`);
    },
  }).parseFromString(svg, "image/svg+xml");
  return documentElement as Element;
};
const all = (within: Element, name: string): Element[] => Array.from(within.getElementsByTagName(name));
const numbers = (of: Element, ...names: string[]): number[] => names.map((name) => Number(of.getAttribute(name)));
const inColor = (within: Element, name: string, color: string): Element[] =>
  all(within, name).filter((one) => [one.getAttribute("fill"), one.getAttribute("stroke")].includes(color));
const colors = (dark: boolean): string[] => SERIES_STYLES.map((style) => `#${dark ? style.onDark : style.color}`);
const texts = (svg: Element): string[] => all(svg, "text").map((one) => one.textContent ?? "");

describe("ticks", () => {
  it.each([
    [
      [0.35, 0.61],
      [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7],
    ],
    [
      [0, 20],
      [0, 5, 10, 15, 20],
    ],
    [
      [-0.13, 0.4],
      [-0.2, -0.1, 0, 0.1, 0.2, 0.3, 0.4],
    ],
    [
      [-3, -1],
      [-3, -2.5, -2, -1.5, -1, -0.5, 0],
    ],
    [
      [153, 672.3],
      [0, 100, 200, 300, 400, 500, 600, 700],
    ],
  ])("for %j are %j", (values, expected) => {
    expect(ticks(values)).toEqual(expected);
  });

  it("are there for nothing and for zeros too", () => {
    for (const values of [[], [0], [0, 0]]) {
      expect(ticks(values)[0]).toBe(0);
      expect(ticks(values).at(-1)).toBe(1);
    }
  });
});

it.each([
  [0.3, "0%", "30%"],
  [-0.205, "0.0%", "-20.5%"],
  [12345, "#,##0", "12,345"],
  [1234567.8, "#,##0.00", "1,234,567.80"],
  [700, "0", "700"],
])("%d by %s is shown as %s", (value, format, expected) => {
  expect(shown(value, format)).toBe(expected);
});

describe("the values of a chart", () => {
  it("of points leave out what is no number, with its partner", () => {
    const values = [
      [0, 10, "x"],
      [1, null, 5],
      [null, 30, 6],
      [3, { error: "#N/A" }, 7],
    ];
    const points = plotsOf(chartOf("line-of-points", 4), (_, row, at) => values[row]?.[at] ?? null).map(
      (plot) => plot.points,
    );
    expect(points).toEqual([
      [{ x: 0, y: 10 }],
      [
        { x: 1, y: 5 },
        { x: 3, y: 7 },
      ],
    ]);
  });

  it("of a series that is named by a cell have that name, and are left out while there are none", () => {
    const chart = chartOf("line-of-points", 3);
    const named = { ...chart, series: chart.series.map((one) => ({ ...one, name: { ...one.y, rows: 1 } })) };
    const values = [
      [null, "A: tin", "(free)"],
      [4, 90, null],
      [8, 80, { error: "#N/A" }],
    ];
    expect(plotsOf(named, (_, row, at) => values[row]?.[at] ?? null)).toEqual([
      {
        name: "A: tin",
        points: [
          { x: 4, y: 90 },
          { x: 8, y: 80 },
        ],
      },
    ]);
    expect(drawn(named, values).getAttribute("aria-label")).toBe(
      "Lines of points: A title & more. The figures stand on the sheet One. A: tin: 4: 90, 8: 80.",
    );
  });

  it("of bars leave out free places below the last one of any series", () => {
    const values = [
      ["a", 1, 2],
      [null, null, null],
      ["b", null, 3],
      [null, "", null],
      [null, null, null],
    ];
    const plots = plotsOf(chartOf("bars", 5), (_, row, at) => values[row]?.[at] ?? null);
    expect(plots.map(({ points }) => points.map(({ x }) => x))).toEqual(Array(2).fill(["a", "", "b"]));
    const free = plotsOf(chartOf("bars", 5), () => null);
    expect(free.map(({ points }) => points)).toEqual([[], []]);
    expect(drawn(chartOf("bars", 5), []).getAttribute("role")).toBe("img");
  });

  it("of bars keep their places, and their names as they are", () => {
    const values = [
      ["a", 1, 2],
      [null, { error: "#N/A" }, 4],
      [{ error: "#REF!" }, 5, 6],
    ];
    const [plot] = plotsOf(chartOf("bars", 3), (_, row, at) => values[row]?.[at] ?? null);
    expect(plot?.points).toEqual([
      { x: "a", y: 1 },
      { x: "", y: null },
      { x: "#REF!", y: 5 },
    ]);
  });
});

describe("bars", () => {
  const values = [
    ["Quince", 0.5, 0.25],
    ["Cedar", -0.25, 0],
  ];
  const svg = drawn(chartOf("bars", 2, "0%"), values);

  it("are as long as their values, to the left of zero below it", () => {
    const [first = [], second = []] = colors(false).map((color) =>
      inColor(svg, "rect", color).map((bar) => numbers(bar, "x", "width")),
    );
    const [[zero = 0, half = 0] = [], [left = 0, quarter = 0] = []] = first;
    expect(half).toBeGreaterThan(100);
    expect(quarter).toBeCloseTo(half / 2, 0);
    expect(left + quarter).toBeCloseTo(zero, 0);
    expect(second[0]).toEqual([zero, expect.closeTo(half / 2, 0)]);
    expect(second[1]?.[1]).toBe(0);
  });

  it("lie in order from the top with their names", () => {
    const tops = inColor(svg, "rect", colors(false)[0] as string).map((bar) => numbers(bar, "y")[0] as number);
    expect(tops[0]).toBeLessThan(tops[1] as number);
    for (const word of ["Quince", "Cedar", "A title & more", "Up", "First", "Second", "50%", "-20%", "0%"]) {
      expect(texts(svg)).toContain(word);
    }
  });

  it("tell their figures to those who do not see them", () => {
    expect(svg.getAttribute("role")).toBe("img");
    expect(svg.getAttribute("aria-label")).toBe(
      "Bars: A title & more. First; Second. The figures stand on the sheet One. First: Quince: 50%, Cedar: -25%. Second: Quince: 25%, Cedar: 0%.",
    );
  });

  it("of one name that stands twice are drawn twice", () => {
    const twice = drawn(chartOf("bars", 2), [
      ["Same", 1, 1],
      ["Same", 2, 1],
    ]);
    const tops = inColor(twice, "rect", colors(false)[0] as string).map((bar) => numbers(bar, "y")[0]);
    expect(new Set(tops).size).toBe(2);
  });
});

describe("lines of points", () => {
  const values = [
    [0, 100, 50],
    [4, null, null],
    [8, 60, 50],
  ];

  it.each([false, true])("stand where their values are, dark: %s", (dark) => {
    const svg = drawn(chartOf("line-of-points", 3), values, dark);
    const [first = "", second = ""] = colors(dark).map(
      (color) => inColor(svg, "polyline", color)[0]?.getAttribute("points") ?? "",
    );
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0, ...more] = first.split(" ").map(Number);
    expect(more).toEqual([]);
    const [, a = 0, , b = 0] = second.split(" ").map(Number);
    expect(a).toBe(b);
    // 100, 60 and 50 on one scale, higher values higher up.
    expect((a - y1) / (a - y2)).toBeCloseTo(50 / 10, 0);
    expect(y1).toBeLessThan(y2);
    expect(x2 - x1).toBeGreaterThan(200);
    // A mark at each point and one for the legend.
    expect(inColor(svg, "path", colors(dark)[0] as string)).toHaveLength(3);
  });

  it("without any figures yet still have their axes and names", () => {
    const svg = drawn(chartOf("line-of-points", 3), []);
    expect(svg.toString()).not.toMatch(/NaN|Infinity|undefined/);
    expect(texts(svg)).toContain("First");
    expect(svg.getAttribute("aria-label")).toContain("First: no figures yet.");
  });

  it("are readable on either ground: every colour stands out by 3 to 1 at least", () => {
    // WCAG 2.2, 1.4.11: contrast of graphics; relative luminance as defined there.
    const luminance = (hex: string): number => {
      const [r = 0, g = 0, b = 0] = [1, 3, 5]
        .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
        .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const contrast = (one: string, other: string): number => {
      const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
      return (light + 0.05) / (dark + 0.05);
    };
    for (const dark of [false, true]) {
      const svg = drawn(chartOf("bars", 1), [["a", 1, 2]], dark);
      const paper = all(svg, "rect")[0]?.getAttribute("fill") ?? "";
      for (const color of colors(dark)) expect(contrast(color, paper), color).toBeGreaterThanOrEqual(3);
      expect(contrast(svg.getAttribute("fill") ?? "", paper)).toBeGreaterThanOrEqual(7);
    }
  });
});
