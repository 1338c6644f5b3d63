import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { callsOurs } from "../../file/formula/callsOurs";
import { toFileFormula } from "../../file/formula/toFile";
import { escapeXml } from "../../sheet/escapeXml";
import type { Sheet, SheetValues, Table } from "../../sheet/sheet";
import { addCharts } from "./charts";
import { addPart, change, type Parts, relate } from "./parts";

/**
 * Finishes the file that exceljs made: formulas with our functions become dynamic arrays, table columns know
 * their formula, charts are put in, and the zip carries no time, so that the same sheets always give the same bytes.
 */
export function finishFile(bytes: Uint8Array, sheets: readonly Sheet[], values: readonly SheetValues[]): Uint8Array {
  const isFolder = (path: string): boolean => path.endsWith("/");
  const parts: Parts = Object.fromEntries(
    Object.entries(unzipSync(bytes)).flatMap(([path, content]) => (isFolder(path) ? [] : [[path, strFromU8(content)]])),
  );
  spillOurs(parts);
  nameColumnFormulas(parts, sheets);
  keepCachedResults(parts);
  orderFonts(parts);
  addCharts(parts, sheets, values);
  return zipSync(
    Object.fromEntries(Object.entries(parts).map(([path, content]) => [path, strToU8(content)])),
    // Local time, as the zip format wants it: the same bytes wherever this runs.
    { mtime: new Date(1980, 0, 1), level: 9 },
  );
}

/** The cell metadata that marks a formula as a dynamic array: without it Excel shows `@` or braces around it. */
const METADATA = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

function spillOurs(parts: Parts): void {
  const arrays = /<c ([^>]*)><f t="array"/g;
  const pages = Object.keys(parts).filter((path) => /^xl\/worksheets\/[^/]+\.xml$/.test(path));
  const withArrays = pages.filter((path) => parts[path]?.match(arrays));
  for (const path of withArrays) change(parts, path, arrays, (_, attributes) => `<c ${attributes} cm="1"><f t="array"`);
  if (withArrays.length === 0) return;
  addPart(parts, "xl/metadata.xml", "spreadsheetml.sheetMetadata", METADATA);
  relate(parts, "xl/workbook.xml", "rIdMetadata", "sheetMetadata", "metadata.xml");
}

/** Tells each table the formula of its columns, so that a new row gets it. exceljs numbers tables through the sheets. */
function nameColumnFormulas(parts: Parts, sheets: readonly Sheet[]): void {
  const tables = sheets.flatMap((sheet) => (sheet.tables ?? []).map((table) => ({ sheet, table })));
  for (const [i, { sheet, table }] of tables.entries()) {
    for (const column of table.headings.keys()) {
      const formula = columnFormula(sheet, table, column);
      if (formula === undefined) continue;
      const inFile = toFileFormula(formula);
      const array = callsOurs(formula) ? ' array="1"' : "";
      change(
        parts,
        `xl/tables/table${i + 1}.xml`,
        new RegExp(`(<tableColumn id="${column + 1}"[^>]*)/>`),
        (_, start) =>
          `${start}><calculatedColumnFormula${array}>${escapeXml(inFile)}</calculatedColumnFormula></tableColumn>`,
      );
    }
  }
}

/** The formula that every row of a table's column has; undefined where they differ or one has none. */
function columnFormula({ cells }: Sheet, table: Table, column: number): string | undefined {
  const formulas = Array.from({ length: table.rows }, (_, r) => {
    const content = cells.find(
      (cell) => cell.row === table.row + 1 + r && cell.column === table.column + column,
    )?.content;
    return content && "formula" in content ? content.formula : undefined;
  });
  return formulas.every((formula) => formula === formulas[0]) ? formulas[0] : undefined;
}

/** What a font says, in the order of the schema (ECMA-376 Part 1, 18.8.22); exceljs has another one. */
const FONT_ORDER = "b i strike condense extend outline shadow u vertAlign sz color name family charset scheme".split(
  " ",
);

function orderFonts(parts: Parts): void {
  const place = (element: string): number => FONT_ORDER.indexOf(/^<(\w+)/.exec(element)?.[1] ?? "");
  change(parts, "xl/styles.xml", /<fonts.*<\/fonts>/s, (fonts = "") =>
    fonts.replace(/(?<=<font>).*?(?=<\/font>)/gs, (inside) =>
      (inside.match(/<[^>]*>/g) ?? []).sort((a, b) => place(a) - place(b)).join(""),
    ),
  );
}

/**
 * Names the calculation engine that saved the file as a present one. Excel works out again what an older engine
 * saved, and without the add-in that would put #NAME? in place of the saved figures.
 */
function keepCachedResults(parts: Parts): void {
  change(parts, "xl/workbook.xml", /calcId="\d+"/, () => 'calcId="191029"');
}
