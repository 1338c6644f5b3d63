import { MAIN, MICROSOFT, NAMESPACES, XML } from "./xml";

/** Pieces of the rich workbook beside its sheets. */

export const PIVOT_SOURCE = `${XML}<pivotCacheDefinition ${NAMESPACES} r:id="rId1" refreshedBy="A maker" refreshedDate="46352" createdVersion="6" refreshedVersion="6" minRefreshableVersion="3" recordCount="3"><cacheSource type="worksheet"><worksheetSource ref="A3:B6" sheet="Pours"/></cacheSource><cacheFields count="2"><cacheField name="Scent" numFmtId="0"><sharedItems count="2"><s v="Fig"/><s v="Moss"/></sharedItems></cacheField><cacheField name="Jars" numFmtId="0"><sharedItems containsSemiMixedTypes="0" containsString="0" containsNumber="1" containsInteger="1" minValue="4" maxValue="12"/></cacheField></cacheFields></pivotCacheDefinition>`;

export const PIVOT_RECORDS = `${XML}<pivotCacheRecords ${NAMESPACES} count="3"><r><x v="0"/><n v="12"/></r><r><x v="1"/><n v="8"/></r><r><x v="0"/><n v="4"/></r></pivotCacheRecords>`;

export const PIVOT = `${XML}<pivotTableDefinition xmlns="${MAIN}" name="Jars by scent" cacheId="1" applyNumberFormats="0" applyBorderFormats="0" applyFontFormats="0" applyPatternFormats="0" applyAlignmentFormats="0" applyWidthHeightFormats="1" dataCaption="Values" updatedVersion="6" minRefreshableVersion="3" useAutoFormatting="1" itemPrintTitles="1" createdVersion="6" indent="0" outline="1" outlineData="1" multipleFieldFilters="0"><location ref="A3:B6" firstHeaderRow="1" firstDataRow="1" firstDataCol="1"/><pivotFields count="2"><pivotField axis="axisRow" showAll="0"><items count="3"><item x="0"/><item x="1"/><item t="default"/></items></pivotField><pivotField dataField="1" showAll="0"/></pivotFields><rowFields count="1"><field x="0"/></rowFields><rowItems count="3"><i><x/></i><i><x v="1"/></i><i t="grand"><x/></i></rowItems><colItems count="1"><i/></colItems><dataFields count="1"><dataField name="Sum of Jars" fld="1" baseField="0" baseItem="0"/></dataFields><pivotTableStyleInfo name="PivotStyleLight16" showRowHeaders="1" showColHeaders="1" showRowStripes="0" showColStripes="0" showLastColumn="1"/></pivotTableDefinition>`;

export const NOTES = `${XML}<comments xmlns="${MAIN}"><authors><author>A maker</author><author>tc={4B2F6A10-0000-4000-8000-000000000001}</author></authors><commentList><comment ref="B4" authorId="0"><text><r><rPr><b/><sz val="9"/><rFont val="Tahoma"/></rPr><t>A maker:</t></r><r><rPr><sz val="9"/><rFont val="Tahoma"/></rPr><t xml:space="preserve">
dearer since June</t></r></text></comment><comment ref="B5" authorId="1"><text><t>[Threaded comment]

Comment:
    Is that with postage?</t></text></comment></commentList></comments>`;

const TALK = `${MICROSOFT}/spreadsheetml/2018/threadedcomments`;
const PERSON = "{4B2F6A10-0000-4000-8000-0000000000AA}";

export const CONVERSATION = `${XML}<ThreadedComments xmlns="${TALK}"><threadedComment ref="B5" dT="2026-11-02T09:10:00.00" personId="${PERSON}" id="{4B2F6A10-0000-4000-8000-000000000001}"><text>Is that with postage?</text></threadedComment><threadedComment ref="B5" dT="2026-11-02T09:12:00.00" personId="${PERSON}" id="{4B2F6A10-0000-4000-8000-000000000002}" parentId="{4B2F6A10-0000-4000-8000-000000000001}"><text>Yes, &amp; with the box.</text></threadedComment></ThreadedComments>`;

export const PEOPLE = `${XML}<personList xmlns="${TALK}"><person displayName="A maker" id="${PERSON}" userId="maker" providerId="None"/></personList>`;

/** Marks formulas that spill by themselves: a cell's `cm="1"`. */
export const METADATA = `${XML}<metadata xmlns="${MAIN}" xmlns:xda="${MICROSOFT}/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

export const OTHER_WORKBOOK = `${XML}<externalLink ${NAMESPACES}><externalBook r:id="rId1"><sheetNames><sheetName val="Prices"/></sheetNames><sheetDataSet><sheetData sheetId="0"><row r="1"><cell r="A1"><v>12.5</v></cell></row></sheetData></sheetDataSet></externalBook></externalLink>`;

export const CONNECTIONS = `${XML}<connections xmlns="${MAIN}"><connection id="1" name="Prices" type="6" refreshedVersion="6"><textPr sourceFile="prices.txt"><textFields><textField/></textFields></textPr></connection></connections>`;

export const SOMEONES = `${XML}<workshop xmlns="urn:example:workshop"><shelf name="left &amp; right"/></workshop>`;
export const SOMEONES_PROPERTIES = `${XML}<ds:datastoreItem ds:itemID="{11111111-2222-4333-8444-555555555555}" xmlns:ds="http://schemas.openxmlformats.org/officeDocument/2006/customXml"><ds:schemaRefs><ds:schemaRef ds:uri="urn:example:workshop"/></ds:schemaRefs></ds:datastoreItem>`;

export const CORE = `${XML}<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"><dc:creator>A maker</dc:creator><dcterms:created xsi:type="dcterms:W3CDTF">2026-01-01T00:00:00Z</dcterms:created></cp:coreProperties>`;
export const APP = `${XML}<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>Workshop</Application></Properties>`;
