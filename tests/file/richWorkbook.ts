import { strToU8, zipSync } from "fflate";
import { COSTS_SHEET } from "./rich/costsSheet";
import { CHART_PAGE, CHART_PAGE_DRAWN, chart, DRAWN, NOTE_BOXES, PICTURE } from "./rich/drawings";
import { OLD_SHEET, SUMMARY_SHEET } from "./rich/otherSheets";
import * as others from "./rich/others";
import { POURS_TABLE, poursSheet, TEXTS } from "./rich/poursSheet";
import { STYLES, THEME } from "./rich/styles";
import { MICROSOFT, NAMESPACES, relations, XML } from "./rich/xml";

/**
 * A workbook written by hand after the Open XML standard, with what a maker's file may hold and the page does not
 * show: charts, a pivot table, a picture, notes, a conversation, custom parts. Its parts have names of their own, so
 * that they are found by their relationships only.
 */
export function richParts({ from1904 = false } = {}): Record<string, Uint8Array> {
  const binary = {
    "xl/media/jar.png": PICTURE,
    "xl/thing/thing.bin": new Uint8Array([0, 255, 1, 254]),
    "xl/printerSettings/p.bin": new Uint8Array([1, 0, 2, 0]),
  };
  const texts: Record<string, string> = {
    "[Content_Types].xml": CONTENT_TYPES,
    "_rels/.rels": relations(
      ["rId1", "officeDocument", "xl/book.xml"],
      [
        "rId2",
        "http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties",
        "docProps/core.xml",
      ],
      ["rId3", "extended-properties", "docProps/app.xml"],
    ),
    "docProps/core.xml": others.CORE,
    "docProps/app.xml": others.APP,
    "xl/book.xml": workbook(from1904),
    "xl/_rels/book.xml.rels": WORKBOOK_RELATIONS,
    "xl/look.xml": STYLES,
    "xl/theme/theme.xml": THEME,
    "xl/texts.xml": TEXTS,
    "xl/metadata.xml": others.METADATA,
    "xl/calcChain.xml": CALC_CHAIN,
    "xl/persons/person.xml": others.PEOPLE,
    "xl/connections.xml": others.CONNECTIONS,
    "xl/externalLinks/externalLink1.xml": others.OTHER_WORKBOOK,
    "xl/externalLinks/_rels/externalLink1.xml.rels": relations(["rId1", "externalLinkPath", "prices.xlsx", true]),
    "xl/pivot/source.xml": others.PIVOT_SOURCE,
    "xl/pivot/_rels/source.xml.rels": relations(["rId1", "pivotCacheRecords", "records.xml"]),
    "xl/pivot/records.xml": others.PIVOT_RECORDS,
    "xl/pivot/table.xml": others.PIVOT,
    "xl/pivot/_rels/table.xml.rels": relations(["rId1", "pivotCacheDefinition", "source.xml"]),
    "xl/sheets/first.xml": poursSheet(from1904),
    "xl/sheets/_rels/first.xml.rels": relations(
      ["rId1", "printerSettings", "../printerSettings/p.bin"],
      ["rId2", "table", "/xl/tables/pours.xml"],
    ),
    "xl/tables/pours.xml": POURS_TABLE,
    "xl/sheets/costs.xml": COSTS_SHEET,
    "xl/sheets/_rels/costs.xml.rels": relations(
      ["rId1", "hyperlink", "https://example.com/wax?a=1&amp;b=2", true],
      ["rId2", "drawing", "../drawings/drawn.xml"],
      ["rId3", "vmlDrawing", "../drawings/notes.vml"],
      ["rId4", "comments", "../notes.xml"],
      ["rId5", `${MICROSOFT}/2017/10/relationships/threadedComment`, "../threadedComments/talk.xml"],
    ),
    "xl/notes.xml": others.NOTES,
    "xl/threadedComments/talk.xml": others.CONVERSATION,
    "xl/drawings/notes.vml": NOTE_BOXES,
    "xl/drawings/drawn.xml": DRAWN,
    "xl/drawings/_rels/drawn.xml.rels": relations(
      ["rId1", "chart", "../charts/costs.xml"],
      ["rId2", "image", "../media/jar.png"],
    ),
    "xl/charts/costs.xml": chart("'Maker''s costs'"),
    "xl/sheets/summary.xml": SUMMARY_SHEET,
    "xl/sheets/_rels/summary.xml.rels": relations(["rId1", "pivotTable", "../pivot/table.xml"]),
    "xl/sheets/page.xml": CHART_PAGE,
    "xl/sheets/_rels/page.xml.rels": relations(["rId1", "drawing", "../drawings/page.xml"]),
    "xl/drawings/page.xml": CHART_PAGE_DRAWN,
    "xl/drawings/_rels/page.xml.rels": relations(["rId1", "chart", "../charts/page.xml"]),
    "xl/charts/page.xml": chart("Pours"),
    "xl/sheets/old.xml": OLD_SHEET,
    "customXml/item1.xml": others.SOMEONES,
    "customXml/_rels/item1.xml.rels": relations(["rId1", "customXmlProps", "itemProps1.xml"]),
    "customXml/itemProps1.xml": others.SOMEONES_PROPERTIES,
  };
  return { ...Object.fromEntries(Object.entries(texts).map(([path, text]) => [path, strToU8(text)])), ...binary };
}

/** The file of these parts; the same bytes every time. */
export const richWorkbook = (options: { from1904?: boolean } = {}): Uint8Array =>
  zipSync(richParts(options), { mtime: new Date(1980, 0, 1) });

/** Names of the sheets, in the order of their tabs; the fourth is a chart. */
const TABS = [
  ["Pours", 1, ""],
  ["Maker's costs", 4, ""],
  ["Summary", 2, ""],
  ["Chart page", 7, ""],
  ["Old", 5, ' state="hidden"'],
] as const;

const workbook = (from1904: boolean): string =>
  `${XML}<workbook ${NAMESPACES} xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" xmlns:x15="${MICROSOFT}/spreadsheetml/2010/11/main" mc:Ignorable="x15"><workbookPr${from1904 ? ' date1904="1"' : ""} defaultThemeVersion="124226"/><mc:AlternateContent><mc:Choice Requires="x15"><x15ac:absPath url="C:\\workshop\\" xmlns:x15ac="${MICROSOFT}/spreadsheetml/2010/11/ac"/></mc:Choice></mc:AlternateContent><bookViews><workbookView xWindow="0" yWindow="0" windowWidth="20000" windowHeight="10000" activeTab="1"/></bookViews><sheets>${TABS.map(
    ([name, id, state], i) => `<sheet name="${name}" sheetId="${id}"${state} r:id="rId${i + 1}"/>`,
  ).join(
    "",
  )}</sheets><externalReferences><externalReference r:id="rId12"/></externalReferences><definedNames><definedName name="_xlnm._FilterDatabase" localSheetId="4" hidden="1">Old!$A$9:$B$11</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">Pours!$A$1:$F$7</definedName><definedName name="_xlnm.Print_Titles" localSheetId="0">Pours!$A:$A,Pours!$3:$3</definedName><definedName name="Dear" comment="what costs most">MAX('Maker''s costs'!$B$4:$B$6)</definedName><definedName name="Here" localSheetId="1">'Maker''s costs'!$B$4</definedName><definedName name="Markup">1.5</definedName><definedName name="Secret" hidden="1">_xlfn.IFS(TRUE,1)</definedName></definedNames><calcPr calcId="191029"/><customWorkbookViews><customWorkbookView name="Mine" guid="{22222222-3333-4444-8555-666666666666}" windowWidth="20000" windowHeight="10000" activeSheetId="5"/></customWorkbookViews><pivotCaches><pivotCache cacheId="1" r:id="rId13"/></pivotCaches></workbook>`;

const WORKBOOK_RELATIONS = relations(
  ["rId1", "worksheet", "sheets/first.xml"],
  ["rId2", "worksheet", "/xl/sheets/costs.xml"],
  ["rId3", "worksheet", "sheets/summary.xml"],
  ["rId4", "chartsheet", "sheets/page.xml"],
  ["rId5", "worksheet", "sheets/old.xml"],
  ["rId6", "styles", "look.xml"],
  ["rId7", "theme", "theme/theme.xml"],
  ["rId8", "sharedStrings", "texts.xml"],
  ["rId9", "sheetMetadata", "metadata.xml"],
  ["rId10", "calcChain", "calcChain.xml"],
  ["rId11", `${MICROSOFT}/2017/10/relationships/person`, "persons/person.xml"],
  ["rId12", "externalLink", "externalLinks/externalLink1.xml"],
  ["rId13", "pivotCacheDefinition", "pivot/source.xml"],
  ["rId14", "connections", "connections.xml"],
  ["rId15", "customXml", "../customXml/item1.xml"],
  ["rId16", "http://example.com/relationships/thing", "thing/thing.bin"],
);

/** In which order formulas were worked out last, by sheet. */
const CALC_CHAIN = `${XML}<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">${[
  ["D4 D5 D6 B7 D7", 1],
  ["C4 C5 C6 F5 F6 B8 C8", 4],
  ["B2 B4", 5],
]
  .flatMap(([cells, sheet]) =>
    String(cells)
      .split(" ")
      .map((cell) => `<c r="${cell}" i="${sheet}"/>`),
  )
  .join(
    "",
  )}<c r="F4" i="1" a="1"/><c r="F5" i="1" a="1"/><c r="F6" i="1" a="1"/><c r="D4" i="4" a="1"/><c r="E4" i="4" a="1"/><c r="F4" i="4" a="1"/></calcChain>`;

const SHEETML = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const OFFICE_TYPE = "application/vnd.openxmlformats-officedocument";

const CONTENT_TYPES = `${XML}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">${[
  ["rels", "application/vnd.openxmlformats-package.relationships+xml"],
  ["xml", "application/xml"],
  ["png", "image/png"],
  ["bin", `${SHEETML}.printerSettings`],
  ["vml", `${OFFICE_TYPE}.vmlDrawing`],
]
  .map(([extension, type]) => `<Default Extension="${extension}" ContentType="${type}"/>`)
  .join("")}${[
  ["xl/book.xml", `${SHEETML}.sheet.main+xml`],
  ["xl/sheets/first.xml", `${SHEETML}.worksheet+xml`],
  ["xl/sheets/costs.xml", `${SHEETML}.worksheet+xml`],
  ["xl/sheets/summary.xml", `${SHEETML}.worksheet+xml`],
  ["xl/sheets/page.xml", `${SHEETML}.chartsheet+xml`],
  ["xl/sheets/old.xml", `${SHEETML}.worksheet+xml`],
  ["xl/look.xml", `${SHEETML}.styles+xml`],
  ["xl/theme/theme.xml", `${OFFICE_TYPE}.theme+xml`],
  ["xl/texts.xml", `${SHEETML}.sharedStrings+xml`],
  ["xl/metadata.xml", `${SHEETML}.sheetMetadata+xml`],
  ["xl/calcChain.xml", `${SHEETML}.calcChain+xml`],
  ["xl/persons/person.xml", "application/vnd.ms-excel.person+xml"],
  ["xl/connections.xml", `${SHEETML}.connections+xml`],
  ["xl/externalLinks/externalLink1.xml", `${SHEETML}.externalLink+xml`],
  ["xl/pivot/source.xml", `${SHEETML}.pivotCacheDefinition+xml`],
  ["xl/pivot/records.xml", `${SHEETML}.pivotCacheRecords+xml`],
  ["xl/pivot/table.xml", `${SHEETML}.pivotTable+xml`],
  ["xl/tables/pours.xml", `${SHEETML}.table+xml`],
  ["xl/notes.xml", `${SHEETML}.comments+xml`],
  ["xl/threadedComments/talk.xml", "application/vnd.ms-excel.threadedcomments+xml"],
  ["xl/drawings/drawn.xml", `${OFFICE_TYPE}.drawing+xml`],
  ["xl/drawings/page.xml", `${OFFICE_TYPE}.drawing+xml`],
  ["xl/charts/costs.xml", `${OFFICE_TYPE}.drawingml.chart+xml`],
  ["xl/charts/page.xml", `${OFFICE_TYPE}.drawingml.chart+xml`],
  ["xl/thing/thing.bin", "application/octet-stream"],
  ["customXml/itemProps1.xml", `${OFFICE_TYPE}.customXmlProperties+xml`],
  ["docProps/core.xml", "application/vnd.openxmlformats-package.core-properties+xml"],
  ["docProps/app.xml", `${OFFICE_TYPE}.extended-properties+xml`],
]
  .map(([path, type]) => `<Override PartName="/${path}" ContentType="${type}"/>`)
  .join("")}</Types>`;
