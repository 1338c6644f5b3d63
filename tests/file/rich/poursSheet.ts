import { LOOK } from "./styles";
import { MAIN, NAMESPACES, XML } from "./xml";

/** Days of three pours, counted from 1900. */
const DAYS = [46_350, 46_351, 46_352];
const JARS = [12, 8, 4];
const FILLS = [215, 180, 215];

const row = (i: number, from1904: boolean): string => {
  const at = i + 4;
  const [jars = 0, fill = 0, day = 0] = [JARS[i], FILLS[i], DAYS[i]];
  return `<row r="${at}" spans="1:6"><c r="A${at}" s="${LOOK.input}" t="s"><v>${[1, 2, 1][i]}</v></c><c r="B${at}" s="${LOOK.input}"><v>${jars}</v></c><c r="C${at}"><v>${fill}</v></c><c r="D${at}"><f>Pours[[#This Row],[Jars]]*Pours[[#This Row],[Fill (g)]]</f><v>${jars * fill}</v></c><c r="E${at}" s="${LOOK.day}"><v>${from1904 ? day - 1462 : day}</v></c><c r="F${at}" cm="1"><f t="array" ref="F${at}">_xldudf_POUR_FILLWEIGHT(250,0.86)</f><v>215</v></c></row>`;
};

const WAX = JARS.reduce((sum, jars, i) => sum + jars * (FILLS[i] as number), 0);

/** A table with totals and a filter, formulas of ours, frozen rows, print set-up. */
export const poursSheet = (from1904: boolean): string =>
  `${XML}<worksheet ${NAMESPACES}><sheetPr><tabColor rgb="FF7A3E06"/><pageSetUpPr fitToPage="1"/></sheetPr><dimension ref="A1:F7"/><sheetViews><sheetView showGridLines="0" tabSelected="1" workbookViewId="0"><pane ySplit="3" topLeftCell="A4" activePane="bottomLeft" state="frozen"/><selection pane="bottomLeft" activeCell="A4" sqref="A4"/></sheetView></sheetViews><sheetFormatPr defaultRowHeight="15"/><cols><col min="1" max="1" width="24.7109375" customWidth="1"/><col min="2" max="6" width="12" customWidth="1"/></cols><sheetData><row r="1" spans="1:6" ht="24" customHeight="1"><c r="A1" s="${LOOK.title}" t="s"><v>0</v></c></row><row r="3" spans="1:6" ht="30" customHeight="1">${[
    3, 4, 5, 6, 7, 8,
  ]
    .map((text, i) => `<c r="${"ABCDEF"[i]}3" s="${LOOK.heading}" t="s"><v>${text}</v></c>`)
    .join(
      "",
    )}</row>${[0, 1, 2].map((i) => row(i, from1904)).join("")}<row r="7" spans="1:6"><c r="A7" t="s"><v>9</v></c><c r="B7"><f>SUBTOTAL(109,Pours[Jars])</f><v>24</v></c><c r="D7"><f>SUBTOTAL(109,Pours[Wax (g)])</f><v>${WAX}</v></c></row></sheetData><pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/><pageSetup paperSize="9" orientation="landscape" fitToHeight="0" r:id="rId1"/><headerFooter><oddFooter>&amp;L&amp;A&amp;R&amp;P / &amp;N</oddFooter></headerFooter><tableParts count="1"><tablePart r:id="rId2"/></tableParts></worksheet>`;

export const POURS_TABLE = `${XML}<table xmlns="${MAIN}" id="1" name="Pours" displayName="Pours" ref="A3:F7" totalsRowCount="1"><autoFilter ref="A3:F6"><filterColumn colId="1"><customFilters><customFilter operator="greaterThan" val="3"/></customFilters></filterColumn></autoFilter><tableColumns count="6"><tableColumn id="1" name="Scent" totalsRowLabel="Total"/><tableColumn id="2" name="Jars" totalsRowFunction="sum"/><tableColumn id="3" name="Fill (g)"/><tableColumn id="4" name="Wax (g)" totalsRowFunction="sum"><calculatedColumnFormula>Pours[[#This Row],[Jars]]*Pours[[#This Row],[Fill (g)]]</calculatedColumnFormula></tableColumn><tableColumn id="5" name="Poured"/><tableColumn id="6" name="Fill_x000a_worked out"><calculatedColumnFormula array="1">_xldudf_POUR_FILLWEIGHT(250,0.86)</calculatedColumnFormula></tableColumn></tableColumns><tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="1" showColumnStripes="0"/></table>`;

/** Shared texts by number; the first one has several looks and a pronunciation. */
export const TEXTS = `${XML}<sst xmlns="${MAIN}" count="13" uniqueCount="11"><si><r><t xml:space="preserve">Pours of </t></r><r><rPr><i/><sz val="16"/><color rgb="FF235E53"/><rFont val="Georgia"/></rPr><t>November</t></r><rPh sb="0" eb="5"><t>never read</t></rPh></si>${[
  "Fig",
  "Moss",
  "Scent",
  "Jars",
  "Fill (g)",
  "Wax (g)",
  "Poured",
  "Fill\nworked out",
  "Total",
  "007",
]
  .map((text) => `<si><t>${text}</t></si>`)
  .join("")}</sst>`;
