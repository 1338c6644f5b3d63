import { NAMESPACES, RELATIONSHIPS, XML } from "./xml";

const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006";
const SPACES = `xmlns:xdr="${DRAWING}/spreadsheetDrawing" xmlns:a="${DRAWING}/main" xmlns:r="${RELATIONSHIPS}"`;

const corner = (name: string, column: number, row: number): string =>
  `<xdr:${name}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${name}>`;

const anchored = (column: number, row: number, what: string): string =>
  `<xdr:twoCellAnchor>${corner("from", column, row)}${corner("to", column + 4, row + 8)}${what}<xdr:clientData/></xdr:twoCellAnchor>`;

const SHAPE =
  '<a:xfrm><a:off x="0" y="0"/><a:ext cx="100000" cy="100000"/></a:xfrm><a:prstGeom prst="rect"><a:avLst/></a:prstGeom>';

/** A chart, a picture and a shape. */
export const DRAWN = `${XML}<xdr:wsDr ${SPACES}>${anchored(
  7,
  1,
  `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="Cost by month"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="${DRAWING}/chart"><c:chart xmlns:c="${DRAWING}/chart" r:id="rId1"/></a:graphicData></a:graphic></xdr:graphicFrame>`,
)}${anchored(
  7,
  12,
  `<xdr:pic><xdr:nvPicPr><xdr:cNvPr id="3" name="A jar" descr="A jar"/><xdr:cNvPicPr/></xdr:nvPicPr><xdr:blipFill><a:blip r:embed="rId2"/><a:stretch><a:fillRect/></a:stretch></xdr:blipFill><xdr:spPr>${SHAPE}</xdr:spPr></xdr:pic>`,
)}${anchored(
  7,
  24,
  `<xdr:sp macro="" textlink=""><xdr:nvSpPr><xdr:cNvPr id="4" name="A box"/><xdr:cNvSpPr/></xdr:nvSpPr><xdr:spPr>${SHAPE}</xdr:spPr></xdr:sp>`,
)}</xdr:wsDr>`;

/** What a sheet that is a chart shows. */
export const CHART_PAGE_DRAWN = `${XML}<xdr:wsDr ${SPACES}><xdr:absoluteAnchor><xdr:pos x="0" y="0"/><xdr:ext cx="9000000" cy="6000000"/><xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="Cost"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="${DRAWING}/chart"><c:chart xmlns:c="${DRAWING}/chart" r:id="rId1"/></a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/></xdr:absoluteAnchor></xdr:wsDr>`;

export const CHART_PAGE = `${XML}<chartsheet ${NAMESPACES}><sheetPr/><sheetViews><sheetView workbookViewId="0" zoomToFit="1"/></sheetViews><pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/><drawing r:id="rId1"/></chartsheet>`;

/** A chart of bars over cells of a sheet. */
export const chart = (sheet: string): string =>
  `${XML}<c:chartSpace xmlns:c="${DRAWING}/chart" xmlns:a="${DRAWING}/main" xmlns:r="${RELATIONSHIPS}"><c:chart><c:autoTitleDeleted val="1"/><c:plotArea><c:layout/><c:barChart><c:barDir val="col"/><c:grouping val="clustered"/><c:varyColors val="0"/><c:ser><c:idx val="0"/><c:order val="0"/><c:cat><c:strRef><c:f>${sheet}!$A$4:$A$6</c:f></c:strRef></c:cat><c:val><c:numRef><c:f>${sheet}!$B$4:$B$6</c:f></c:numRef></c:val></c:ser><c:axId val="1001"/><c:axId val="1002"/></c:barChart><c:catAx><c:axId val="1001"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="0"/><c:axPos val="b"/><c:crossAx val="1002"/></c:catAx><c:valAx><c:axId val="1002"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="0"/><c:axPos val="l"/><c:crossAx val="1001"/></c:valAx></c:plotArea><c:plotVisOnly val="1"/></c:chart></c:chartSpace>`;

/** One transparent dot. */
export const PICTURE = Uint8Array.from(
  atob("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg=="),
  (letter) => letter.charCodeAt(0),
);

const NOTE_SHAPE = (id: number, row: number, column: number): string =>
  `<v:shape id="_x0000_s${id}" type="#_x0000_t202" style="position:absolute;margin-left:80pt;margin-top:5pt;width:100pt;height:60pt;z-index:1;visibility:hidden" fillcolor="#ffffe1" o:insetmode="auto"><v:fill color2="#ffffe1"/><v:shadow on="t" color="black" obscured="t"/><v:path o:connecttype="none"/><v:textbox style="mso-direction-alt:auto"><div style="text-align:left"/></v:textbox><x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>2, 15, 0, 10, 4, 15, 4, 4</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`;

/** The boxes of the notes in B4 and B5. */
export const NOTE_BOXES = `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><o:shapelayout v:ext="edit"><o:idmap v:ext="edit" data="1"/></o:shapelayout><v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>${NOTE_SHAPE(1025, 3, 1)}${NOTE_SHAPE(1026, 4, 1)}</xml>`;
