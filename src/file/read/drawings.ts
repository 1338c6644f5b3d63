import { readTree, within } from "../xml/tree";
import { relationships } from "../zip/package";
import type { Package } from "../zip/unpack";

/** What a sheet's drawing shows. */
export interface Drawn {
  readonly charts: number;
  readonly pictures: number;
  readonly shapes: number;
}

export function countDrawn(pack: Package, path: string): Drawn {
  const bytes = pack.parts.get(path);
  if (!bytes) return { charts: 0, pictures: 0, shapes: 0 };
  const root = readTree(path, bytes);
  const related = relationships(pack, path);
  const count = (...names: string[]): number => names.reduce((sum, name) => sum + [...within(root, name)].length, 0);
  const youngerCharts = related.filter(({ kind }) => kind === "chartEx").length;
  return {
    charts: related.filter(({ kind }) => kind === "chart").length + youngerCharts,
    pictures: count("xdr:pic"),
    // A chart of a younger kind has a shape in its place for older programs.
    shapes: Math.max(0, count("xdr:sp", "xdr:cxnSp") - youngerCharts),
  };
}
