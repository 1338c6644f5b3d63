import { describe, expect, it } from "vitest";
import { fromFileFormula } from "../../../src/file/formula/fromFile";
import { withLost } from "../../../src/file/formula/lost";
import { formulaMover } from "../../../src/file/formula/move";
import { toFileFormula } from "../../../src/file/formula/toFile";
import { joined, looksElsewhere, tokens } from "../../../src/file/formula/tokens";

describe("a formula in a file and as it is typed", () => {
  it.each([
    ["SUM(A1:B2)", "=SUM(A1:B2)"],
    // The form that Excel keeps for an add-in's functions: platform documentation of custom functions.
    ["_xldudf_POUR_FILLWEIGHT(B2,0.86)", "=POUR.FILLWEIGHT(B2,0.86)"],
    ['_xlfn.TEXTJOIN(", ",TRUE,A1:A3)', '=TEXTJOIN(", ",TRUE,A1:A3)'],
    ["_xlfn._xlws.FILTER(A1:A9,B1:B9>1)", "=FILTER(A1:A9,B1:B9>1)"],
    ["SUM(_xlfn._xlws.SORT(A1:A9))", "=SUM(SORT(A1:A9))"],
    ["_xlfn.SINGLE(A1:A9)", "=@A1:A9"],
    ["_xlfn.SINGLE(Names)+1", "=@Names+1"],
    ["_xlfn.SINGLE(A1+B1)", "=@(A1+B1)"],
    ["_xlfn.SINGLE(_xldudf_POUR_LOAD(A1:A9))", "=@POUR.LOAD(A1:A9)"],
    ["SUM(_xlfn.ANCHORARRAY(A1))", "=SUM(A1#)"],
    ["_xlfn.ANCHORARRAY('My sheet'!$A$1)", "='My sheet'!$A$1#"],
    ["_xlfn.SINGLE(_xlfn.ANCHORARRAY(A1))", "=@A1#"],
    ["_xlfn.LET(_xlpm.x,A1,_xlpm.y,_xlpm.x+1,_xlpm.x*_xlpm.y)", "=LET(x,A1,y,x+1,x*y)"],
    ["_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.a,_xlpm.a*x))", "=MAP(A1:A3,LAMBDA(a,a*x))"],
    ["Pots[[#This Row],[Wax (g)]]*1.5E+3", "=Pots[[#This Row],[Wax (g)]]*1.5E+3"],
    ['[1]Prices!A1&"_xlfn.SINGLE(A1) POUR.X( @x"', '=[1]Prices!A1&"_xlfn.SINGLE(A1) POUR.X( @x"'],
    ["'_xlfn.IFS('!A1", "='_xlfn.IFS('!A1"],
    ["IF(ISNA(#N/A),#REF!,Sheet1:Sheet3!A1)", "=IF(ISNA(#N/A),#REF!,Sheet1:Sheet3!A1)"],
    ["T[[#Headers],['#1 @ x]]", "=T[[#Headers],['#1 @ x]]"],
    ["SUM(A:A 1:1)", "=SUM(A:A 1:1)"],
    ["_xldudf_OTHER_F(A1)", "=_xldudf_OTHER_F(A1)"],
  ])("%s is %s", (inFile, typed) => {
    expect(fromFileFormula(inFile)).toBe(typed);
    expect(toFileFormula(typed)).toBe(inFile);
  });

  it.each([
    ["_xldudf_pour_FillWeight(1)", "=POUR.FILLWEIGHT(1)"],
    ["_XLFN.TEXTJOIN(A1)", "=TEXTJOIN(A1)"],
    ["_xlws.SORT(A1)", "=SORT(A1)"],
    ["_xlfn._xlws.sort(_xlfn.anchorarray(A1))", "=SORT(A1#)"],
    ["=SUM(A1)", "=SUM(A1)"],
    ["POUR.LOAD(1)", "=POUR.LOAD(1)"],
  ])("reads %s, which other programs write, as %s", (inFile, typed) => expect(fromFileFormula(inFile)).toBe(typed));

  it("takes any text apart without loss", () => {
    for (const text of [
      "'a",
      '"a',
      "[a",
      "a]",
      "((",
      "#",
      "@",
      "#@",
      "@#",
      "A1##",
      "x!",
      "'it''s'!A1",
      "🕯+ä",
      "",
      "=",
    ]) {
      expect(joined(tokens(text))).toBe(text);
      expect(() => toFileFormula(fromFileFormula(text))).not.toThrow();
    }
  });
});

it.each([
  ["[1]Prices!A1", true],
  ["1+'[2]My prices'!A1", true],
  ["[1]!Rate", true],
  ["[0]!Rate", false],
  ["T[1]", false],
  ["T[[#This Row],[1]]", false],
  ['"[1]Prices!A1"', false],
  ["A1", false],
])("%s looks into another workbook: %s", (formula, is) => expect(looksElsewhere(formula)).toBe(is));

describe("a formula moved two rows down and one column right", () => {
  it.each([
    ["A1+$A1+A$1+$A$1", "B3+$A3+B$1+$A$1"],
    ["SUM(A1:B$2)", "SUM(B3:C$2)"],
    ["SUM(A:C,$A:C,2:5,$2:5)", "SUM(B:D,$A:D,4:7,$2:7)"],
    ["'It''s A1'!A1+Sheet1!B2", "'It''s A1'!B3+Sheet1!C4"],
    ["A1:B1!C3", "A1:B1!D5"],
    ['"A1"&A1', '"A1"&B3'],
    ["LOG10(A1)+LOG10", "LOG10(B3)+LOH12"],
    ["T[A1]+T[[#This Row],[B2]]+T1[[#Headers],[A1]]", "T[A1]+T[[#This Row],[B2]]+T1[[#Headers],[A1]]"],
    ["[1]S!A1", "[1]S!B3"],
    ["TRUE+Rate_1+x.A1+A1.b", "TRUE+Rate_1+x.A1+A1.b"],
    ["1E5+A1E5", "1E5+A1E5"],
    ["A1#", "B3#"],
    ["XFD1+A1048576", "#REF!+#REF!"],
    ["XFE1+A1048577+ABCD1", "XFE1+A1048577+ABCD1"],
    ["a1+$b$2", "B3+$B$2"],
    ["IF(A1,,B2 C3)", "IF(B3,,C4 D5)"],
  ])("%s becomes %s", (formula, moved) => expect(formulaMover(formula)(2, 1)).toBe(moved));

  it("does not lead out of the sheet upwards", () =>
    expect(formulaMover("A1+B3+SUM(1:2)")(-2, -1)).toBe("#REF!+A1+SUM(#REF!)"));
});

describe("a formula without a sheet Costs and a table Jars", () => {
  it.each([
    ["=Costs!A1+costs!$B$2:C4*'Costs'!A:A", "=#REF!+#REF!*#REF!"],
    ["=SUM(Costs!A1:Costs!B2)", "=SUM(#REF!)"],
    ["=Costs!Rate*2", "=#REF!*2"],
    ["=Costs!#REF!", "=#REF!"],
    ["=Jars[Cost]+ROWS(jars)+SUM(Jars[[#This Row],[Cost]:[Load]])", "=#REF!+ROWS(#REF!)+SUM(#REF!)"],
    ["Costs!$A$1:$A$9,Costs!$C$1", "#REF!,#REF!"],
    // What is only called alike, stands in a text or in another workbook.
    ["=Costs2!A1+'My Costs'!A1+[1]Costs!A1+'[1]Costs'!A1", "=Costs2!A1+'My Costs'!A1+[1]Costs!A1+'[1]Costs'!A1"],
    ['="Costs!A1"&Costs&Jars2[Cost]&Tins[Jars]&JARS(1)', '="Costs!A1"&Costs&Jars2[Cost]&Tins[Jars]&JARS(1)'],
  ])("reads %s as %s", (formula, lost) => {
    expect(withLost(formula, { sheets: ["Costs"], tables: ["Jars"] })).toBe(lost);
  });

  it("takes quotes in a sheet's name for part of it", () => {
    expect(withLost("='Jan''s jars'!A1*2", { sheets: ["Jan's jars"], tables: [] })).toBe("=#REF!*2");
  });
});
