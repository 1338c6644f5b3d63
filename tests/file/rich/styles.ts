import { NAMESPACES, XML } from "./xml";

/** Numbers of the looks below. */
export const LOOK = {
  plain: 0,
  title: 1,
  heading: 2,
  money: 3,
  day: 4,
  percent: 5,
  time: 6,
  input: 7,
  held: 8,
  turned: 9,
  pattern: 10,
  named: 11,
};

export const STYLES = `${XML}<styleSheet ${NAMESPACES}><numFmts count="2"><numFmt numFmtId="164" formatCode="&quot;£&quot;#,##0.00;[Red]\\-&quot;£&quot;#,##0.00"/><numFmt numFmtId="165" formatCode="yyyy\\-mm\\-dd"/></numFmts>\
<fonts count="5"><font><sz val="11"/><color theme="1"/><name val="Calibri"/><family val="2"/><scheme val="minor"/></font>\
<font><b/><sz val="16"/><color rgb="FF7A3E06"/><name val="Georgia"/></font>\
<font><b/><i/><u val="double"/><sz val="11"/><color theme="4" tint="-0.249977111117893"/><name val="Calibri"/></font>\
<font><strike/><sz val="9"/><color indexed="10"/><name val="Calibri"/></font>\
<font><vertAlign val="superscript"/><sz val="11"/><name val="Calibri"/></font></fonts>\
<fills count="6"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill>\
<fill><patternFill patternType="solid"><fgColor rgb="FFE8E2D6"/><bgColor indexed="64"/></patternFill></fill>\
<fill><patternFill patternType="solid"><fgColor theme="0" tint="-0.149998474074526"/><bgColor indexed="64"/></patternFill></fill>\
<fill><patternFill patternType="lightGrid"><fgColor rgb="FF000000"/><bgColor rgb="FFFFFF00"/></patternFill></fill>\
<fill><gradientFill degree="90"><stop position="0"><color rgb="FFFFFFFF"/></stop><stop position="1"><color rgb="FF808080"/></stop></gradientFill></fill></fills>\
<borders count="3"><border><left/><right/><top/><bottom/><diagonal/></border>\
<border><left style="thin"><color rgb="FF8A8175"/></left><right style="thin"><color rgb="FF8A8175"/></right><top style="thin"><color rgb="FF8A8175"/></top><bottom style="thin"><color rgb="FF8A8175"/></bottom><diagonal/></border>\
<border diagonalUp="1"><left/><right/><top/><bottom style="double"><color auto="1"/></bottom><diagonal style="dashed"><color rgb="FF000000"/></diagonal></border></borders>\
<cellStyleXfs count="2"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/><xf numFmtId="9" fontId="2" fillId="2" borderId="0"/></cellStyleXfs>\
<cellXfs count="12"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>\
<xf numFmtId="0" fontId="1" fillId="0" borderId="0" xfId="0" applyFont="1"/>\
<xf numFmtId="0" fontId="2" fillId="2" borderId="2" xfId="0" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1"><alignment horizontal="center" vertical="top" wrapText="1"/></xf>\
<xf numFmtId="164" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>\
<xf numFmtId="165" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>\
<xf numFmtId="10" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>\
<xf numFmtId="20" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>\
<xf numFmtId="0" fontId="0" fillId="3" borderId="1" xfId="0" applyFill="1" applyBorder="1" applyProtection="1"><protection locked="0"/></xf>\
<xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0" quotePrefix="1" applyNumberFormat="1"/>\
<xf numFmtId="0" fontId="3" fillId="5" borderId="0" xfId="0" applyFont="1" applyFill="1" applyAlignment="1"><alignment textRotation="135" indent="2" shrinkToFit="1"/></xf>\
<xf numFmtId="0" fontId="4" fillId="4" borderId="0" xfId="0" applyFont="1" applyFill="1" applyAlignment="1"><alignment horizontal="right" textRotation="255"/></xf>\
<xf numFmtId="9" fontId="2" fillId="2" borderId="0" xfId="1"/></cellXfs>\
<cellStyles count="2"><cellStyle name="Normal" xfId="0" builtinId="0"/><cellStyle name="Load" xfId="1"/></cellStyles>\
<dxfs count="2"><dxf><font><b/><color rgb="FF8A1C0B"/></font><fill><patternFill><bgColor rgb="FFFBECE6"/></patternFill></fill></dxf><dxf><numFmt numFmtId="164" formatCode="&quot;£&quot;#,##0.00;[Red]\\-&quot;£&quot;#,##0.00"/></dxf></dxfs>\
<tableStyles count="0" defaultTableStyle="TableStyleMedium2" defaultPivotStyle="PivotStyleLight16"/></styleSheet>`;

const solid = (name: string, color: string): string => `<a:${name}><a:srgbClr val="${color}"/></a:${name}>`;
const FONTS = '<a:latin typeface="Calibri"/><a:ea typeface=""/><a:cs typeface=""/>';
const FILL = '<a:solidFill><a:schemeClr val="phClr"/></a:solidFill>';
const LINE = `<a:ln w="6350">${FILL}</a:ln>`;
const EFFECT = "<a:effectStyle><a:effectLst/></a:effectStyle>";

export const THEME = `${XML}<a:theme xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" name="Workshop"><a:themeElements><a:clrScheme name="Workshop"><a:dk1><a:sysClr val="windowText" lastClr="000000"/></a:dk1><a:lt1><a:sysClr val="window" lastClr="FFFFFF"/></a:lt1>${[
  ["dk2", "44546A"],
  ["lt2", "E7E6E6"],
  ["accent1", "7A3E06"],
  ["accent2", "C07F1A"],
  ["accent3", "235E53"],
  ["accent4", "8A78C8"],
  ["accent5", "9C2F2F"],
  ["accent6", "4F7A1E"],
  ["hlink", "0563C1"],
  ["folHlink", "954F72"],
]
  .map(([name = "", color = ""]) => solid(name, color))
  .join(
    "",
  )}</a:clrScheme><a:fontScheme name="Workshop"><a:majorFont>${FONTS}</a:majorFont><a:minorFont>${FONTS}</a:minorFont></a:fontScheme><a:fmtScheme name="Workshop"><a:fillStyleLst>${FILL.repeat(3)}</a:fillStyleLst><a:lnStyleLst>${LINE.repeat(3)}</a:lnStyleLst><a:effectStyleLst>${EFFECT.repeat(3)}</a:effectStyleLst><a:bgFillStyleLst>${FILL.repeat(3)}</a:bgFillStyleLst></a:fmtScheme></a:themeElements></a:theme>`;
