/** What of a sheet the book does not tell of, counted. */

import type { PackageEdit } from "./packageEdit";
import { cut } from "./rawXml";
import { unreadYounger } from "./youngerConditions";

/** How many, and what one and several are called; one without a name for it counts as several. */
export type Counted = readonly [number, string, string];

export const counted = (found: readonly Counted[]): string[] =>
  found.flatMap(([count, one, many]) => {
    if (count === 0) return [];
    return [one === "" ? many : count === 1 ? `a ${one}` : `${count} ${many}`];
  });

/** In parts of their own, at places over the cells. */
export function partsOf(file: PackageEdit, path: string): Counted[] {
  const relations = file.relations(path);
  const drawings = relations.filter(({ kind }) => kind === "drawing").map(({ target }) => target);
  const kinds = drawings.flatMap((drawing) => file.relations(drawing).map(({ kind }) => kind));
  return [
    [kinds.filter((kind) => /^chart/.test(kind)).length, "chart", "charts"],
    [kinds.filter((kind) => kind === "image").length, "picture", "pictures"],
    [kinds.length === 0 ? drawings.length : 0, "drawing", "drawings"],
    [relations.filter(({ kind }) => kind === "pivotTable").length, "pivot table", "pivot tables"],
  ];
}

/** In parts of their own or by ids, so that no other sheet can have them as well. */
export function aloneOn(file: PackageEdit, path: string, xml: string): Counted[] {
  const relations = file.relations(path);
  const count = (...kinds: string[]): number => relations.filter(({ kind }) => kinds.includes(kind)).length;
  return [
    [count("image"), "picture behind the cells", "pictures behind the cells"],
    [count("oleObject", "package"), "object of another program", "objects of another program"],
    [count("ctrlProp", "control"), "control", "controls"],
    [count("slicer", "timeline"), "filter panel", "filter panels"],
    [count("threadedComment") > 0 ? 2 : 0, "", "conversations in comments"],
    [/<(?:\w+:)?legacyDrawingHF\b/.test(xml) ? 2 : 0, "", "pictures in the head or foot of its pages"],
    [/<(?:\w+:)?customSheetView\b/.test(xml) ? 2 : 0, "", "custom views"],
  ];
}

/** In the text of the sheet, at places there. */
export const placesIn = (xml: string): Counted[] => [
  [/<(?:\w+:)?sparklineGroups/.test(xml) ? 2 : 0, "", "charts in cells"],
  [/\soutlineLevel="[1-7]"/.test(xml) ? 2 : 0, "", "an outline"],
  [/<(?:\w+:)?(?:row|col)Breaks/.test(xml) ? 2 : 0, "", "page breaks"],
  [/<protectedRanges/.test(xml) ? 2 : 0, "", "protected ranges"],
  [unreadYounger(cut(xml)), "conditional format of a younger kind", "conditional formats of a younger kind"],
];
