import { areaList, areasOf } from "../addresses";
import type { Condition } from "../book";
import { extensionOf, putExtension } from "./extensions";
import { attributeOf, type Cut, cut, element, escapeText, join, type Piece, withAttributes } from "./rawXml";

/** Where newer programs say what the older form of a rule cannot hold. */
const YOUNGER = "{78C0D931-6437-407d-A8EE-F0AAD7539E65}";
/** Where a rule of the older form says by which id it is called there. */
const BOUND = "{B025F937-C7B1-47D3-B67F-A62EFF666E3E}";

const X14 = "http://schemas.microsoft.com/office/spreadsheetml/2009/9/main";
const XM = "http://schemas.microsoft.com/office/excel/2006/main";

/** What becomes of the younger form of a rule: what it is now of that which may be different, or an end. */
export type Fate = Pick<Condition, "areas" | "priority" | "stops"> | "gone";

/** The id that binds a rule of the older form to its younger one. */
export const youngerId = (raw: string): string | undefined => /<(?:\w+:)?id>\s*([^<\s]+)\s*</.exec(raw)?.[1];

/** The younger forms that a sheet has, changed by the ids of their rules, and new ones behind them. */
export function putYounger(sheet: Cut, fates: ReadonlyMap<string, Fate>, added: readonly string[]): void {
  const raw = extensionOf(sheet, YOUNGER) ?? element("ext", { "xmlns:x14": X14, uri: YOUNGER });
  const extension = cut(raw);
  const list = extension.pieces.find(({ name }) => name === "conditionalFormattings");
  const formats = cut(list?.raw ?? "<x14:conditionalFormattings/>");
  const pieces = formats.pieces.flatMap((piece) => changed(piece, fates));
  const isAsWas = pieces.length === formats.pieces.length && pieces.every((piece, i) => piece === formats.pieces[i]);
  if (added.length === 0 && isAsWas) return;
  const all = [...pieces, ...added.map((one) => ({ name: "conditionalFormatting", raw: one }))];
  const isEmpty = all.every(({ name }) => name === "");
  const whole = join({ ...extension, pieces: [{ name: "", raw: join({ ...formats, pieces: all }) }] });
  putExtension(sheet, YOUNGER, isEmpty ? "" : whole);
}

/** Rules that share their cells may have different ends: each gets an element of its own. */
function changed(piece: Piece, fates: ReadonlyMap<string, Fate>): Piece[] {
  if (piece.name !== "conditionalFormatting") return [piece];
  const format = cut(piece.raw);
  const rules = format.pieces.filter(({ name }) => name === "cfRule");
  const fateOf = ({ raw }: Piece): Fate | undefined => fates.get(attributeOf(raw, "id") ?? "");
  if (rules.every((rule) => fateOf(rule) === undefined)) return [piece];
  return rules.flatMap((rule) => {
    const fate = fateOf(rule);
    if (fate === "gone") return [];
    const pieces = format.pieces.flatMap((one) => {
      if (one.name === "sqref" && fate) return [{ ...one, raw: withText(one.raw, areaList(fate.areas)) }];
      if (one.name !== "cfRule") return [one];
      return one === rule ? [{ ...one, raw: fate ? placed(one.raw, fate) : one.raw }] : [];
    });
    return [{ ...piece, raw: join({ ...format, pieces }) }];
  });
}

/** Of a rule that has an older form, that one says these. */
const placed = (raw: string, { priority, stops }: Exclude<Fate, "gone">): string =>
  attributeOf(raw, "priority") === undefined ? raw : withAttributes(raw, { priority, stopIfTrue: stops || null });

const withText = (raw: string, text: string): string => join({ ...cut(raw), pieces: [{ name: "", raw: text }] });

/** Ids for new rules, which the sheet does not have yet. */
export function idMaker(sheet: Cut): () => string {
  const said = join(sheet).toUpperCase();
  let number = 0;
  return () => {
    for (;;) {
      const id = `{504F5552-0000-4000-8000-${(++number).toString(16).toUpperCase().padStart(12, "0")}}`;
      if (!said.includes(id)) return id;
    }
  };
}

/** Whether a bar is more than its older form can hold. */
export const needsYounger = ({ bar }: Condition): boolean => bar !== undefined && (bar.solid || bar.negative !== null);

export const boundTo = (id: string): string =>
  element("extLst", {}, element("ext", { "xmlns:x14": X14, uri: BOUND }, element("x14:id", {}, id)));

/** The younger form of a bar. */
export function youngerBar({ areas, stopsAt = [], bar }: Condition, id: string): string {
  const ends = stopsAt.map(({ kind, value }) =>
    element("x14:cfvo", { type: kind }, value === undefined ? "" : element("xm:f", {}, escapeText(value))),
  );
  const negative = bar?.negative ?? null;
  const said = {
    minLength: 0,
    maxLength: 100,
    showValue: bar?.hidesValue ? 0 : null,
    gradient: bar?.solid ? 0 : null,
    negativeBarColorSameAsPositive: negative === null || null,
  };
  const colors = [
    negative === null ? "" : element("x14:negativeFillColor", { rgb: `FF${negative}` }),
    element("x14:axisColor", { rgb: "FF000000" }),
  ];
  return youngerXml(
    areas,
    element("x14:cfRule", { type: "dataBar", id }, element("x14:dataBar", said, ...ends, ...colors)),
  );
}

/** A rule of the younger list with its cells. */
export const youngerXml = (areas: Condition["areas"], rule: string): string =>
  element(
    "x14:conditionalFormatting",
    { "xmlns:x14": X14, "xmlns:xm": XM },
    rule,
    element("xm:sqref", {}, areaList(areas)),
  );

/** The younger rules of a sheet, each with whether its element says for which cells it is. */
function youngerRules(sheet: Cut): { readonly id: string; readonly hasCells: boolean }[] {
  const list = cut(extensionOf(sheet, YOUNGER) ?? "<none/>").pieces.find(({ name }) => name !== "");
  const formats = cut(list?.raw ?? "<none/>").pieces.filter(({ name }) => name === "conditionalFormatting");
  return formats.flatMap(({ raw }) => {
    const { pieces } = cut(raw);
    const cells = pieces.find(({ name }) => name === "sqref")?.raw ?? "<none/>";
    const hasCells =
      areasOf(
        cut(cells)
          .pieces.map((piece) => piece.raw)
          .join(""),
      ).length > 0;
    const rules = pieces.filter(({ name }) => name === "cfRule");
    return rules.map((rule) => ({ id: attributeOf(rule.raw, "id") ?? "", hasCells }));
  });
}

const boundIds = (sheet: Cut): ReadonlySet<string> =>
  new Set(
    sheet.pieces.flatMap(({ name, raw }) => {
      if (name !== "conditionalFormatting") return [];
      return cut(raw).pieces.flatMap((rule) => youngerId(rule.raw) ?? []);
    }),
  );

/** The ids of the rules that stand in the younger list alone, in the order in which they are read. */
export function aloneRules(sheet: Cut): string[] {
  const bound = boundIds(sheet);
  const ids = youngerRules(sheet).filter(({ id, hasCells }) => hasCells && id !== "" && !bound.has(id));
  return [...new Set(ids.map(({ id }) => id))];
}

/** How many of them the book does not tell of. */
export function unreadYounger(sheet: Cut): number {
  const bound = boundIds(sheet);
  return youngerRules(sheet).filter(({ id }) => !bound.has(id)).length - aloneRules(sheet).length;
}
