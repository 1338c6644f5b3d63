import type { CellStyle, Condition, Edge } from "../book";
import { isOn } from "../read/values";
import { same } from "../same";
import { contentTypes } from "../zip/package";
import { fontXml } from "./fontXml";
import { lookXml } from "./lookXml";
import { formatNumber } from "./numberFormats";
import type { PackageEdit } from "./packageEdit";
import { putter, rawOf } from "./putter";
import { attributeOf, attributesOf, type Cut, cut, element, join, type Piece, withAttributes } from "./rawXml";

/** By ECMA-376 Part 1, 18.8.39. */
const put = putter("numFmts fonts fills borders cellStyleXfs cellXfs cellStyles dxfs tableStyles colors extLst");

const SIDES = ["left", "right", "top", "bottom"] as const;

/** A look by its number in the book. */
export interface WantedStyle {
  readonly style: number;
  /** Of texts, whether they would be read as something else if they were typed. */
  readonly quoted?: boolean;
}

/** The looks of a file. New ones are put behind those that are there, which keep their numbers. */
export class Styles {
  readonly #file: PackageEdit;
  readonly #path: string;
  readonly #now: readonly CellStyle[];
  readonly #kept: number;
  readonly #root: Cut;
  /** Whether the file has the part that says which controls its cells may be. */
  readonly #hasControls: boolean;
  readonly #lists = new Map<string, Cut>();
  readonly #changed = new Set<string>();
  readonly #known = new Map<string, number>();

  constructor(file: PackageEdit, path: string, before: readonly CellStyle[], now: readonly CellStyle[]) {
    this.#file = file;
    this.#path = path;
    this.#now = now;
    this.#kept = before.findIndex((style, i) => !same(style, now[i]));
    if (this.#kept < 0) this.#kept = before.length;
    this.#root = cut(file.read(path));
    const typeOf = contentTypes(file);
    this.#hasControls = [...file.parts.keys()].some((part) => typeOf(part).endsWith(CONTROLS));
  }

  /** The file's number of a look. */
  styleOf({ style, quoted }: WantedStyle): number {
    const own = style < this.#kept ? this.#pieces("cellXfs")[style] : undefined;
    if (own && (quoted === undefined || isOn(attributeOf(own.raw, "quotePrefix")) === quoted)) return style;
    const keys = (quoted === undefined ? [false, true] : [quoted]).map((one) => `${style} ${one}`);
    const known = keys.map((key) => this.#known.get(key)).find((number) => number !== undefined);
    if (known !== undefined) return known;
    const number = this.#append("cellXfs", this.#xf(style, own?.raw, quoted ?? false));
    this.#known.set(keys[0] as string, number);
    return number;
  }

  /** The number of a look that a condition lays over cells. */
  overlay(look: NonNullable<Condition["look"]>): number {
    return this.#numberOf("dxfs", lookXml("dxf", look));
  }

  /** Writes what was put in. */
  save(): void {
    for (const name of this.#changed) {
      const list = this.#list(name);
      put(this.#root, name, withAttributes(join(list), { count: list.pieces.length }));
    }
    this.#file.write(this.#path, join(this.#root));
  }

  #list(name: string): Cut {
    const known = this.#lists.get(name);
    if (known) return known;
    const { head, pieces, tail } = cut(rawOf(this.#root, name) ?? `<${name}/>`);
    // Without the spaces between them their places are their numbers.
    const list = { head, pieces: pieces.filter((piece) => piece.name !== ""), tail };
    this.#lists.set(name, list);
    return list;
  }

  #pieces(name: string): readonly Piece[] {
    return this.#list(name).pieces;
  }

  #append(name: string, raw: string): number {
    this.#changed.add(name);
    return this.#list(name).pieces.push({ name: "new", raw }) - 1;
  }

  /** The place of an element that is there already, or of a new one. */
  #numberOf(name: string, raw: string): number {
    const found = this.#pieces(name).findIndex((piece) => piece.raw === raw);
    return found >= 0 ? found : this.#append(name, raw);
  }

  /** One that only differs in the quote keeps all else of the file's. */
  #xf(number: number, own: string | undefined, quoted: boolean): string {
    if (own) return withAttributes(own, { quotePrefix: quoted ? 1 : null });
    const style = this.#now[number];
    if (!style) throw new Error(`A cell has the look ${number}, which the workbook does not have.`);
    const { font, fill, border, format, align, unlocked, control } = style;
    const [fontId, fillId, borderId] = [
      this.#numberOf("fonts", fontXml("font", font)),
      this.#fill(fill),
      this.#numberOf("borders", borderXml(border)),
    ];
    const numFmtId = formatNumber(format, this.#formats(), (id) =>
      this.#append("numFmts", element("numFmt", { numFmtId: id, formatCode: format })),
    );
    const alignment = alignmentXml(align);
    return element(
      "xf",
      {
        numFmtId,
        fontId,
        fillId,
        borderId,
        xfId: 0,
        quotePrefix: quoted || null,
        applyNumberFormat: numFmtId > 0 ? 1 : null,
        applyFont: fontId > 0 ? 1 : null,
        applyFill: fillId > 0 ? 1 : null,
        applyBorder: borderId > 0 ? 1 : null,
        applyAlignment: alignment ? 1 : null,
        applyProtection: unlocked ? 1 : null,
      },
      alignment,
      unlocked ? element("protection", { locked: false }) : "",
      control === undefined || !this.#hasControls ? "" : controlXml(control),
    );
  }

  #fill(fill: string | null): number {
    if (fill === null) return 0;
    const color = element("fgColor", { rgb: `FF${fill}` });
    return this.#numberOf("fills", element("fill", {}, element("patternFill", { patternType: "solid" }, color)));
  }

  #formats(): ReadonlyMap<string, number> {
    return new Map(
      this.#pieces("numFmts").map(({ raw }) => {
        const attributes = attributesOf(raw);
        return [attributes.get("formatCode") ?? "", Number(attributes.get("numFmtId"))];
      }),
    );
  }
}

/** [MS-XLSX] 2.2.4.17, 2.3.11 (from memory). */
const CONTROLS = ".featurepropertybag+xml";

const controlXml = (control: number): string =>
  element(
    "extLst",
    {},
    element(
      "ext",
      {
        "xmlns:xfpb": "http://schemas.microsoft.com/office/spreadsheetml/2022/featurepropertybag",
        uri: "{C7286773-470A-42A8-94C5-96B5CB345126}",
      },
      element("xfpb:xfComplement", { i: control }),
    ),
  );

function borderXml(border: CellStyle["border"]): string {
  const sides = SIDES.map((side) => {
    const edge: Edge | undefined = border[side];
    if (!edge) return element(side, {});
    return element(
      side,
      { style: edge.style },
      element("color", edge.color ? { rgb: `FF${edge.color}` } : { auto: true }),
    );
  });
  return element("border", {}, ...sides, element("diagonal", {}));
}

function alignmentXml({ horizontal, vertical, wrap, indent, rotation, shrink }: CellStyle["align"]): string {
  // Downwards counts on from 90.
  const turned = rotation === "stacked" ? 255 : rotation && rotation < 0 ? 90 - rotation : rotation;
  const attributes = {
    horizontal,
    vertical,
    textRotation: turned || null,
    wrapText: wrap || null,
    indent: indent || null,
    shrinkToFit: shrink || null,
  };
  const isPlain = Object.values(attributes).every((value) => value === null || value === undefined);
  return isPlain ? "" : element("alignment", attributes);
}
