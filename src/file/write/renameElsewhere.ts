import { contentTypes } from "../zip/package";
import type { PackageEdit } from "./packageEdit";
import { attributeOf, escapeText, unescapeText, withAttributes } from "./rawXml";
import { type Renames, renamedIn } from "./renames";

/** Formulas in charts, and in what newer programs draw or check; where a pivot table's rows come from. */
const FORMULA = /(<(?:\w+:)?f>)([^<]*)(?=<\/(?:\w+:)?f>)/g;
const SOURCE = /<(?:\w+:)?worksheetSource\b[^>]*>/g;

/** Tells the parts that the book does not hold of sheets' new names. */
export function renameElsewhere(file: PackageEdit, renames: Renames): void {
  if (renames.size === 0) return;
  const typeOf = contentTypes(file);
  for (const path of [...file.parts.keys()]) {
    const type = typeOf(path);
    const isChart = /\.(chart|chartex)\+xml$/.test(type);
    const isCache = type.endsWith(".pivotcachedefinition+xml");
    const isSheet = type.endsWith(".worksheet+xml");
    if (!isChart && !isCache && !isSheet) continue;
    const text = file.read(path);
    if (isCache)
      file.write(
        path,
        text.replace(SOURCE, (source) => renamedSource(source, renames)),
      );
    else {
      // In a sheet only what newer programs know: its cells' formulas are the book's.
      const pattern = isSheet ? /(<xm:f>)([^<]*)(?=<\/xm:f>)/g : FORMULA;
      file.write(
        path,
        text.replace(pattern, (found, tag: string, raw: string) => {
          const formula = unescapeText(raw);
          const renamed = renamedIn(formula, renames);
          return renamed === formula ? found : tag + escapeText(renamed);
        }),
      );
    }
  }
}

function renamedSource(source: string, renames: Renames): string {
  const name = renames.get(attributeOf(source, "sheet") ?? "");
  return name === undefined ? source : withAttributes(source, { sheet: name });
}
