import type { CellStyle } from "../book";
import { fontXml } from "./fontXml";
import { SPACE, XML } from "./packageEdit";
import { theme } from "./theme";

const MAIN = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const RELATIONS = "http://schemas.openxmlformats.org/package/2006/relationships";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** The parts of a workbook that has no sheets and no looks yet: those of the first style, which all cells begin with. */
export function newPackage({ font }: CellStyle): Map<string, Uint8Array> {
  const parts: Readonly<Record<string, string>> = {
    "[Content_Types].xml": `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${MAIN}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${MAIN}.styles+xml"/><Override PartName="/xl/theme/theme1.xml" ContentType="application/vnd.openxmlformats-officedocument.theme+xml"/><Override PartName="/docProps/core.xml" ContentType="application/vnd.openxmlformats-package.core-properties+xml"/><Override PartName="/docProps/app.xml" ContentType="application/vnd.openxmlformats-officedocument.extended-properties+xml"/></Types>`,
    "_rels/.rels": `<Relationships xmlns="${RELATIONS}"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/><Relationship Id="rId2" Type="${RELATIONS}/metadata/core-properties" Target="docProps/core.xml"/><Relationship Id="rId3" Type="${OFFICE}/extended-properties" Target="docProps/app.xml"/></Relationships>`,
    "docProps/core.xml": `<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:creator>Pourwright</dc:creator></cp:coreProperties>`,
    "docProps/app.xml": `<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>Pourwright</Application></Properties>`,
    "xl/workbook.xml": `<workbook xmlns="${SPACE}" xmlns:r="${OFFICE}"><bookViews><workbookView/></bookViews><sheets/><calcPr calcId="${PRESENT_ENGINE}"/></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${RELATIONS}"><Relationship Id="rId1" Type="${OFFICE}/styles" Target="styles.xml"/><Relationship Id="rId2" Type="${OFFICE}/theme" Target="theme/theme1.xml"/></Relationships>`,
    "xl/styles.xml": `<styleSheet xmlns="${SPACE}"><fonts count="1">${fontXml("font", font)}</fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="0"/><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>`,
    "xl/theme/theme1.xml": theme(font.name),
  };
  const encoder = new TextEncoder();
  return new Map(Object.entries(parts).map(([path, text]) => [path, encoder.encode(XML + text)]));
}

/**
 * The number of a present calculation engine. What an older one saved is worked out again on opening, and without the
 * add-in that would put #NAME? in place of the saved figures.
 */
export const PRESENT_ENGINE = 191029;

export const newSheet = (): string => `${XML}<worksheet xmlns="${SPACE}"><sheetData/></worksheet>`;
