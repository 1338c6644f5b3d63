import { child, children, type Element } from "../xml/tree";

/** Gives six hex digits for an element that names a colour in one of the file's ways; null for the program's own. */
export type Colors = (element: Element | undefined) => string | null;

/** The order in which cells number a theme's colours: light and dark are the other way round than in the theme. */
const ORDER = [
  "lt1",
  "dk1",
  "lt2",
  "dk2",
  "accent1",
  "accent2",
  "accent3",
  "accent4",
  "accent5",
  "accent6",
  "hlink",
  "folHlink",
];
/** The colours of a file without a theme, in this order (from memory). */
const USUAL = "FFFFFF 000000 E7E6E6 44546A 4472C4 ED7D31 A5A5A5 FFC000 5B9BD5 70AD47 0563C1 954F72".split(" ");
/** Source: ECMA-376 Part 1, 18.8.27, indexedColors; the first eight stand twice. */
const INDEXED =
  `000000 FFFFFF FF0000 00FF00 0000FF FFFF00 FF00FF 00FFFF 000000 FFFFFF FF0000 00FF00 0000FF FFFF00 FF00FF
  00FFFF 800000 008000 000080 808000 800080 008080 C0C0C0 808080 9999FF 993366 FFFFCC CCFFFF 660066 FF8080 0066CC CCCCFF
  000080 FF00FF FFFF00 00FFFF 800080 800000 008080 0000FF 00CCFF CCFFFF CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99 3366FF
  33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696 003366 339966 003300 333300 993300 993366 333399 333333`.split(
    /\s+/,
  );
/** The theme's colour of plain text. */
const TEXT = 1;

/** @param theme the root of the theme's part; @param styles the root of the part of styles, which may have a palette */
export function colorReader(theme: Element | undefined, styles: Element | undefined): Colors {
  const scheme = child(child(theme, "a:themeElements"), "a:clrScheme");
  const themed = ORDER.map((name, i) => schemeColor(child(scheme, `a:${name}`)?.children[0]) ?? (USUAL[i] as string));
  const palette = children(child(child(styles, "colors"), "indexedColors"), "rgbColor").map(
    ({ attributes }) => sixDigits(attributes.rgb) ?? "000000",
  );
  return (element) => {
    const { rgb, theme: number, indexed, tint = "0", auto } = element?.attributes ?? {};
    if (!element || auto === "1" || auto === "true") return null;
    if (number === String(TEXT) && Number(tint) === 0 && themed[TEXT] === "000000") return null;
    const plain =
      sixDigits(rgb) ??
      (number !== undefined ? themed[Number(number)] : undefined) ??
      (indexed !== undefined ? (palette[Number(indexed)] ?? INDEXED[Number(indexed)]) : undefined);
    return plain === undefined ? null : tinted(plain, Number(tint));
  };
}

const sixDigits = (text: string | undefined): string | undefined =>
  text !== undefined && /^(?:[0-9a-f]{2})?[0-9a-f]{6}$/i.test(text) ? text.slice(-6).toUpperCase() : undefined;

const schemeColor = (element: Element | undefined): string | undefined =>
  sixDigits(element?.attributes.lastClr ?? element?.attributes.val);

/** Lighter towards 1, darker towards -1, by the lightness. Source: ECMA-376 Part 1, 18.8.3, bgColor, tint. */
function tinted(color: string, tint: number): string {
  if (!(tint >= -1 && tint <= 1) || tint === 0) return color;
  const [red, green, blue] = [0, 2, 4].map((at) => Number.parseInt(color.slice(at, at + 2), 16) / 255) as [
    number,
    number,
    number,
  ];
  const [most, least] = [Math.max(red, green, blue), Math.min(red, green, blue)];
  const lightness = (most + least) / 2;
  const wanted = tint < 0 ? lightness * (1 + tint) : lightness * (1 - tint) + tint;
  // Hue and saturation stay: each part keeps its place between the lightest and the darkest.
  const saturation = most === least ? 0 : (most - least) / (lightness < 0.5 ? most + least : 2 - most - least);
  const reach = saturation * (wanted < 0.5 ? wanted : 1 - wanted);
  return [red, green, blue]
    .map((part) => {
      const place = most === least ? 0 : (2 * (part - least)) / (most - least) - 1;
      return Math.round((wanted + place * reach) * 255)
        .toString(16)
        .padStart(2, "0");
    })
    .join("")
    .toUpperCase();
}

/** One colour for two that lie over each other in a pattern. */
export function mixed(front: string, back: string, share: number): string {
  return [0, 2, 4]
    .map((at) => {
      const [a, b] = [front, back].map((color) => Number.parseInt(color.slice(at, at + 2), 16)) as [number, number];
      return Math.round(a * share + b * (1 - share))
        .toString(16)
        .padStart(2, "0");
    })
    .join("")
    .toUpperCase();
}
