import { LOOK } from "./styles";
import { MICROSOFT, NAMESPACES, XML } from "./xml";

const inline = (at: string, text: string, style: number = LOOK.plain): string =>
  `<c r="${at}" s="${style}" t="inlineStr"><is><t xml:space="preserve">${text}</t></is></c>`;

const COSTS = [10.5, 12, 13.25];
const MONTHS = ["Jan", "Feb", "Mar"];

const row = (i: number): string => {
  const at = i + 4;
  const cost = COSTS[i] as number;
  const shared =
    i === 0 ? '<f t="shared" ref="C4:C6" si="0">B4*Markup+\'Maker\'\'s costs\'!$B$4</f>' : '<f t="shared" si="0"/>';
  const array = i === 0 ? '<f t="array" ref="D4:D6">B4:B6*10</f>' : "";
  const sorted = i === 0 ? '<f t="array" ref="E4:E6">_xlfn._xlws.SORT(B4:B6,,-1)</f>' : "";
  const last = [
    `<c r="F4" cm="1"><f t="array" ref="F4">SUM(_xlfn.ANCHORARRAY(E4))</f><v>35.75</v></c>`,
    `<c r="F5"><f>_xlfn.IFS(B4&gt;11,"dear",TRUE,"fair")&amp;" &lt;x&gt;"</f></c>`
      .replace("<c ", '<c t="str" ')
      .replace("</c>", "<v>fair &lt;x&gt;</v></c>"),
    `<c r="F6"><f>[1]Prices!A1</f><v>12.5</v></c>`,
  ][i];
  return `<row r="${at}">${inline(`A${at}`, MONTHS[i] as string)}<c r="B${at}" s="${LOOK.money}"><v>${cost}</v></c><c r="C${at}">${shared}<v>${cost * 1.5 + 10.5}</v></c><c r="D${at}">${array}<v>${cost * 10}</v></c><c r="E${at}"${i === 0 ? ' cm="1"' : ""}>${sorted}<v>${COSTS[2 - i]}</v></c>${last}</row>`;
};

const OTHER_ROWS = `<row r="8"><c r="A8" s="${LOOK.held}" t="s"><v>10</v></c><c r="B8" t="e"><f>NA()</f><v>#N/A</v></c><c r="C8" t="b"><f>B4&gt;B5</f><v>0</v></c><c r="D8" s="${LOOK.percent}"><v>0.06</v></c><c r="E8" s="${LOOK.time}"><v>0.5</v></c><c r="F8" t="b"><v>1</v></c></row>\
<row r="9" s="${LOOK.input}" customFormat="1">${inline("A9", "=1+1 is text", LOOK.input)}<c r="B9" s="${LOOK.turned}"/><c r="C9" s="${LOOK.pattern}"/><c r="D9" s="${LOOK.named}"/></row>\
<row r="14">${inline("A14", "Wax supplier")}</row><row r="15">${inline("A15", "To the pours")}</row>\
<row r="16" hidden="1">${inline("A16", "hidden")}</row><row r="17" outlineLevel="1"><c r="A17"><v>1</v></c></row>`;

const CONDITIONS = `<conditionalFormatting sqref="B4:B6"><cfRule type="cellIs" dxfId="0" priority="1" stopIfTrue="1" operator="greaterThan"><formula>12</formula></cfRule><cfRule type="dataBar" priority="2"><dataBar><cfvo type="min"/><cfvo type="max"/><color rgb="FFC07F1A"/></dataBar><extLst><ext uri="{B025F937-C7B1-47D3-B67F-A62EFF666E3E}" xmlns:x14="${MICROSOFT}/spreadsheetml/2009/9/main"><x14:id>{00000000-0000-4000-8000-000000000001}</x14:id></ext></extLst></cfRule></conditionalFormatting>\
<conditionalFormatting sqref="C4:C6 E4:E6"><cfRule type="colorScale" priority="3"><colorScale><cfvo type="min"/><cfvo type="percentile" val="50"/><cfvo type="max"/><color rgb="FFF8696B"/><color theme="0"/><color rgb="FF63BE7B"/></colorScale></cfRule><cfRule type="top10" dxfId="0" priority="4" percent="1" rank="10"/><cfRule type="iconSet" priority="5"><iconSet iconSet="3Arrows" showValue="0"><cfvo type="percent" val="0"/><cfvo type="percent" val="33"/><cfvo type="percent" val="67"/></iconSet></cfRule></conditionalFormatting>\
<conditionalFormatting sqref="A4:A15"><cfRule type="containsText" dxfId="0" priority="6" operator="containsText" text="Ja"><formula>NOT(ISERROR(SEARCH("Ja",A4)))</formula></cfRule><cfRule type="aboveAverage" dxfId="1" priority="7" aboveAverage="0"/></conditionalFormatting>`;

const VALIDATIONS = `<dataValidations count="2"><dataValidation type="list" allowBlank="1" showInputMessage="1" showErrorMessage="1" errorTitle="Scent" error="Choose one of the list." promptTitle="Scent" prompt="Fig or Moss" sqref="A10:A12"><formula1>"Fig,Moss"</formula1></dataValidation><dataValidation type="whole" errorStyle="warning" showErrorMessage="1" sqref="B10:B12 D10"><formula1>1</formula1><formula2>100</formula2></dataValidation></dataValidations>`;

const EXTENSIONS = `<extLst><ext uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}" xmlns:x14="${MICROSOFT}/spreadsheetml/2009/9/main"><x14:conditionalFormattings><x14:conditionalFormatting xmlns:xm="${MICROSOFT}/excel/2006/main"><x14:cfRule type="dataBar" id="{00000000-0000-4000-8000-000000000001}"><x14:dataBar minLength="0" maxLength="100"><x14:cfvo type="autoMin"/><x14:cfvo type="autoMax"/><x14:negativeFillColor rgb="FFFF0000"/><x14:axisColor rgb="FF000000"/></x14:dataBar></x14:cfRule><xm:sqref>B4:B6</xm:sqref></x14:conditionalFormatting><x14:conditionalFormatting xmlns:xm="${MICROSOFT}/excel/2006/main"><x14:cfRule type="cellIs" priority="8" operator="greaterThan" id="{00000000-0000-4000-8000-000000000002}"><xm:f>Pours!$B$4</xm:f><x14:dxf><font><b/></font></x14:dxf></x14:cfRule><xm:sqref>F8</xm:sqref></x14:conditionalFormatting></x14:conditionalFormattings></ext>\
<ext uri="{CCE6A557-97BC-4b89-ADB6-D9C93CAAB3DF}" xmlns:x14="${MICROSOFT}/spreadsheetml/2009/9/main"><x14:dataValidations xmlns:xm="${MICROSOFT}/excel/2006/main" count="1"><x14:dataValidation type="list" allowBlank="1" showErrorMessage="1"><x14:formula1><xm:f>Pours!$A$4:$A$6</xm:f></x14:formula1><xm:sqref>A13</xm:sqref></x14:dataValidation></x14:dataValidations></ext>\
<ext uri="{05C60535-1F16-4fd2-B633-F4F36F0B64E0}" xmlns:x14="${MICROSOFT}/spreadsheetml/2009/9/main"><x14:sparklineGroups xmlns:xm="${MICROSOFT}/excel/2006/main"><x14:sparklineGroup displayEmptyCellsAs="gap"><x14:colorSeries rgb="FF376092"/><x14:sparklines><x14:sparkline><xm:f>'Maker''s costs'!B4:B6</xm:f><xm:sqref>B7</xm:sqref></x14:sparkline></x14:sparklines></x14:sparklineGroup></x14:sparklineGroups></ext></extLst>`;

/** Formulas of every form, conditional formats, validations, links, notes, a drawing. */
export const COSTS_SHEET = `${XML}<worksheet ${NAMESPACES}><dimension ref="A1:F17"/><sheetViews><sheetView workbookViewId="0" topLeftCell="B3"><pane xSplit="1" ySplit="1" topLeftCell="C4" activePane="bottomRight" state="frozen"/></sheetView></sheetViews><sheetFormatPr defaultColWidth="10.5" defaultRowHeight="16" customHeight="1" outlineLevelRow="1"/><cols><col min="1" max="1" width="20" customWidth="1"/><col min="7" max="7" width="0" hidden="1" customWidth="1"/><col min="8" max="16384" width="9.5" style="${LOOK.input}" customWidth="1"/></cols><sheetData><row r="1">${inline("A1", "Costs", LOOK.title)}<c r="B1" s="${LOOK.title}"/></row>${[0, 1, 2].map(row).join("")}${OTHER_ROWS}</sheetData><mergeCells count="2"><mergeCell ref="A1:D1"/><mergeCell ref="A19:B20"/></mergeCells>${CONDITIONS}${VALIDATIONS}<hyperlinks><hyperlink ref="A14" r:id="rId1" tooltip="Opens a page"/><hyperlink ref="A15" location="Pours!A1" display="To the pours"/></hyperlinks><pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/><pageSetup orientation="portrait"/><drawing r:id="rId2"/><legacyDrawing r:id="rId3"/>${EXTENSIONS}</worksheet>`;
