import { strToU8 } from "fflate";
import { describe, expect, it } from "vitest";
import { openFile } from "../../../src/file/openFile";
import { richWorkbook } from "../richWorkbook";
import { changedRich, rewrittenRich } from "./changed";
import { book, cell, remarks, sheetOf } from "./readRich";

describe("the same workbook written in another way", () => {
  const utf16 = (xml: string, little: boolean): Uint8Array =>
    Uint8Array.from(
      [...`\ufeff${xml.replace("UTF-8", "UTF-16")}`].flatMap((letter) => {
        const code = letter.charCodeAt(0);
        return little ? [code & 255, code >> 8] : [code >> 8, code & 255];
      }),
    );
  const main = /xmlns="(http:\/\/schemas\.openxmlformats\.org\/(?:spreadsheetml|package)[^"]*)"/g;
  /** All names of the parts' own namespace with a prefix. */
  const prefixed = (xml: string): string =>
    main.test(xml) ? xml.replace(main, 'xmlns:q="$1"').replace(/<(\/?)(?=[A-Za-z\d]+[\s/>])/g, "<$1q:") : xml;
  const strict = (xml: string): string =>
    xml
      .replaceAll(
        "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
        "http://purl.oclc.org/ooxml/spreadsheetml/main",
      )
      .replaceAll(
        "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
        "http://purl.oclc.org/ooxml/officeDocument/relationships",
      )
      .replaceAll("http://schemas.openxmlformats.org/drawingml/2006/", "http://purl.oclc.org/ooxml/drawingml/");

  it.each<[string, (xml: string) => Uint8Array]>([
    ["in UTF-16, low byte first", (xml) => utf16(xml, true)],
    ["in UTF-16, high byte first", (xml) => utf16(xml, false)],
    ["with a mark of UTF-8", (xml) => strToU8(`\ufeff${xml}`)],
    ["with prefixes", (xml) => strToU8(prefixed(xml))],
    ["in the strict form of the standard", (xml) => strToU8(strict(xml))],
    [
      "with remarks and line ends between all",
      (xml) => strToU8(xml.replace(/(<row |<\/row>|<col |<xf )/g, "<!-- x -->\r\n$1")),
    ],
    [
      "with letters as numbers and texts as CDATA",
      (xml) => strToU8(xml.replaceAll(">Moss<", "><![CDATA[Mo]]>&#115;&#x73;<")),
    ],
  ])("%s reads the same", (_, rewrite) => {
    expect(openFile(rewrittenRich(rewrite), "rich.xlsx")).toEqual({ book, remarks });
  });

  it("with days counted from 1904 shows the same days", () => {
    const { book: later, remarks: said } = openFile(richWorkbook({ from1904: true }), "rich.xlsx");
    expect(later.from1904).toBe(true);
    expect({ ...later, from1904: false }).toEqual(book);
    expect(said.filter(({ what }) => !remarks.some((one) => one.what === what)).map(({ what }) => what)).toEqual([
      "days counted from 1904",
    ]);
  });

  it("without addresses at rows and cells reads the same cells", () => {
    const rows = '<row><c><v>1</v></c><c><v>2</v></c></row><row><c t="d"><v>2026-11-26T12:00:00</v></c></row>';
    const bytes = changedRich({
      "xl/sheets/summary.xml": (text) => text.replace(/<sheetData>.*<\/sheetData>/, `<sheetData>${rows}</sheetData>`),
    });
    expect(
      sheetOf("Summary", openFile(bytes, "a").book).rows.map(({ row, cells }) => [
        row,
        ...cells.map(({ column, value }) => [column, value]),
      ]),
    ).toEqual([
      [0, [0, 1], [1, 2]],
      [1, [0, 46_352.5]],
    ]);
  });

  it("with cells out of order and twice reads the last ones in order", () => {
    const rows =
      '<row r="5"><c r="B5"><v>2</v></c><c r="A5"><v>1</v></c><c r="B5"><v>3</v></c></row><row r="2"><c r="A2"><v>0</v></c></row>';
    const bytes = changedRich({
      "xl/sheets/summary.xml": (text) => text.replace(/<sheetData>.*<\/sheetData>/, `<sheetData>${rows}</sheetData>`),
    });
    expect(
      sheetOf("Summary", openFile(bytes, "a").book).rows.map(({ row, cells }) => [
        row,
        ...cells.map(({ column, value }) => [column, value]),
      ]),
    ).toEqual([
      [1, [0, 0]],
      [4, [0, 1], [1, 3]],
    ]);
  });

  it("with a shared formula that is missing keeps the values and says so", () => {
    const bytes = changedRich({ "xl/sheets/costs.xml": (text) => text.replace(/<f t="shared" ref.*?<\/f>/, "") });
    const { book: without, remarks: said } = openFile(bytes, "a");
    expect([cell("C5", "Maker's costs", without)?.value, cell("C5", "Maker's costs", without)?.formula]).toEqual([
      28.5,
      undefined,
    ]);
    expect(said.map(({ what }) => what)).toContain("2 formulas that are incomplete in the file");
  });

  it("with a link into the workbook that is written as an address leads to the same place", () => {
    const written = (target: string) => {
      const bytes = changedRich({
        "xl/sheets/costs.xml": (text) => text.replace('location="Pours!A1"', 'r:id="rId77"'),
        "xl/sheets/_rels/costs.xml.rels": (text) =>
          text.replace(
            "</Relationships>",
            `<Relationship Id="rId77" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/hyperlink" Target="${target}" TargetMode="External"/></Relationships>`,
          ),
      });
      return sheetOf("Maker's costs", openFile(bytes, "a").book).links[1];
    };
    const link = sheetOf("Maker's costs", book).links[1];
    expect(link?.place).toBe("Pours!A1");
    expect(written("#Pours!A1")).toEqual(link);
    expect(written("#'Pour%20days'!A1")).toEqual({ ...link, place: "'Pour days'!A1" });
    expect(written("#100%!A1")?.place).toBe("100%!A1");
  });

  it("takes letters that XML cannot hold for what they are", () => {
    const bytes = changedRich({
      "xl/texts.xml": (text) => text.replace("<t>Fig</t>", "<t>F_x000D_i_x005F_x000D_g</t>"),
    });
    expect(cell("A4", "Pours", openFile(bytes, "a").book)?.value).toBe("F\ri_x000D_g");
  });
});
