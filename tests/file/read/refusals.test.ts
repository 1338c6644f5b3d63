import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { openFile } from "../../../src/file/openFile";
import { LARGEST_FILE } from "../../../src/file/read/fileKind";
import { FileRefused } from "../../../src/file/refused";
import { rawZip } from "../rawZip";
import { richWorkbook } from "../richWorkbook";
import { changedRich } from "./changed";

const rich = richWorkbook();
const utf16 = (text: string): number[] => [...text].flatMap((letter) => [letter.charCodeAt(0), 0]);

/** A container of the old kind with a directory entry of this name. */
const compound = (name: string): Uint8Array => {
  const bytes = new Uint8Array(2048);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  bytes.set(utf16(name), 1152);
  return bytes;
};

const flipped = (bytes: Uint8Array, at: number): Uint8Array => bytes.map((byte, i) => (i === at ? byte ^ 0xff : byte));
const workbookType = (type: string) => ({
  "[Content_Types].xml": (text: string) =>
    text.replace("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml", type),
});
const inSheet = (from: string | RegExp, to: string) => ({
  "xl/sheets/costs.xml": (text: string) => text.replace(from, to),
});
const bomb = `<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa">${"bcdefgh"
  .split("")
  .map((name, i) => `<!ENTITY ${name} "${`&${"abcdefg"[i]};`.repeat(10)}">`)
  .join("")}]>`;

describe("a file that is not opened", () => {
  it.each<[string, () => Uint8Array, string, RegExp]>([
    ["an empty one", () => new Uint8Array(), "a.xlsx", /empty/],
    ["a huge one", () => new Uint8Array(LARGEST_FILE + 1), "a.xlsx", /101 MB.*up to 100 MB/],
    ["one that is cut", () => rich.subarray(0, rich.length / 2), "a.xlsx", /damaged.*end is missing/],
    ["one with a changed byte", () => flipped(rich, 3000), "a.xlsx", /damaged/],
    ["one with a password", () => compound("EncryptedPackage"), "a.xlsx", /password/],
    ["an old workbook", () => compound("Workbook"), "a.xls", /\(\.xls\).*save it there as an \.xlsx/],
    ["an older workbook", () => compound("Book"), "a.xls", /\(\.xls\)/],
    ["the oldest workbook", () => new Uint8Array([9, 8, 16, 0, 0, 6, 5, 0]), "a.xls", /\(\.xls\)/],
    ["an old document", () => compound("WordDocument"), "a.doc", /no workbook/],
    ["a PDF", () => strToU8("%PDF-1.7\n"), "a.pdf", /PDF/],
    ["a picture", () => new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]), "a.png", /neither a workbook/],
    [
      "macros",
      () => changedRich(workbookType("application/vnd.ms-excel.sheet.macroEnabled.main+xml")),
      "a.xlsm",
      /macros \(\.xlsm\).*as an \.xlsx/,
    ],
    [
      "a template with macros",
      () => changedRich(workbookType("application/vnd.ms-excel.template.macroEnabled.main+xml")),
      "a.xltm",
      /macros/,
    ],
    [
      "an add-in",
      () => changedRich(workbookType("application/vnd.ms-excel.addin.macroEnabled.main+xml")),
      "a.xlam",
      /macros/,
    ],
    ["macros that are not said", () => changedRich({ "xl/vbaProject.bin": "x" }), "a.xlsx", /macros/],
    [
      "a binary workbook",
      () => changedRich(workbookType("application/vnd.ms-excel.sheet.binary.macroEnabled.main")),
      "a.xlsb",
      /\.xlsb/,
    ],
    [
      "a template",
      () => changedRich(workbookType("application/vnd.openxmlformats-officedocument.spreadsheetml.template.main+xml")),
      "a.xltx",
      /template/,
    ],
    [
      "a document",
      () =>
        changedRich(workbookType("application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml")),
      "a.docx",
      /document or a presentation/,
    ],
    ["another content type", () => changedRich(workbookType("text/plain")), "a.xlsx", /not marked as a workbook/],
    ["no content types", () => changedRich({ "[Content_Types].xml": null }), "a.xlsx", /not marked as a workbook/],
    [
      "an .ods",
      () =>
        zipSync({
          mimetype: [strToU8("application/vnd.oasis.opendocument.spreadsheet"), { level: 0 }],
          "content.xml": strToU8("<a/>"),
        }),
      "a.ods",
      /\.ods/,
    ],
    [
      "a .numbers",
      () => zipSync({ "Index/Document.iwa": strToU8("x"), "preview.jpg": strToU8("x") }),
      "a.numbers",
      /\.numbers/,
    ],
    ["a zip of other things", () => zipSync({ "a.txt": strToU8("x") }), "a.zip", /no workbook in this file/],
    ["an empty zip", () => zipSync({}), "a.xlsx", /no workbook in this file/],
    ["the workbook's part missing", () => changedRich({ "xl/book.xml": null }), "a.xlsx", /no workbook/],
    [
      "the workbook's part being something else",
      () => changedRich({ "xl/book.xml": "<styleSheet/>" }),
      "a.xlsx",
      /should be the workbook/,
    ],
    ["a sheet missing", () => changedRich({ "xl/sheets/first.xml": null }), "a.xlsx", /sheet "Pours" is missing/],
    [
      "a sheet without a relationship",
      () => changedRich({ "xl/_rels/book.xml.rels": (text) => text.replace('Id="rId1"', 'Id="rId99"') }),
      "a.xlsx",
      /sheet "Pours" is missing/,
    ],
    [
      "a sheet of a wrong type",
      () => changedRich({ "[Content_Types].xml": (text) => text.replace("worksheet+xml", "styles+xml") }),
      "a.xlsx",
      /sheet "Pours" is not marked/,
    ],
    [
      "a sheet's part being something else",
      () => changedRich({ "xl/sheets/first.xml": "<workbook/>" }),
      "a.xlsx",
      /should be a sheet/,
    ],
    [
      "a table missing",
      () => changedRich({ "xl/tables/pours.xml": null }),
      "a.xlsx",
      /"xl\/tables\/pours.xml" is missing/,
    ],
    [
      "texts missing that cells need",
      () => changedRich({ "xl/texts.xml": null }),
      "a.xlsx",
      /holds a text that is missing/,
    ],
    ["looks missing that cells need", () => changedRich({ "xl/look.xml": null }), "a.xlsx", /looks, which are missing/],
    [
      "no sheet with cells",
      () => changedRich({ "xl/book.xml": (text) => text.replace(/<sheets>.*<\/sheets>/, "<sheets/>") }),
      "a.xlsx",
      /no sheet with cells/,
    ],
    [
      "XML that breaks off",
      () => changedRich(inSheet(/<row r="8".*/s, "")),
      "a.xlsx",
      /"xl\/sheets\/costs.xml" is no well-formed XML/,
    ],
    [
      "a DTD",
      () =>
        changedRich({
          "xl/book.xml": (text) =>
            text.replace("<workbook", '<!DOCTYPE workbook SYSTEM "file:///etc/passwd"><workbook'),
        }),
      "a.xlsx",
      /DTD/,
    ],
    [
      "an entity bomb",
      () =>
        changedRich(
          inSheet(
            /<worksheet.*<row r="1">/s,
            `${bomb}<worksheet><sheetData><row r="1"><c t="inlineStr"><is><t>&h;</t></is></c>`,
          ),
        ),
      "a.xlsx",
      /DTD/,
    ],
    ["an entity that nobody knows", () => changedRich(inSheet("Costs", "&costs;")), "a.xlsx", /no well-formed XML/],
    ["a nest", () => changedRich(inSheet("<sheetData>", "<x>".repeat(100_000))), "a.xlsx", /nested too deep/],
    [
      "letters that are none",
      () => changedRich({ "xl/texts.xml": new Uint8Array([...strToU8("<sst><si><t>"), 0xff, 0xfe, 0xfd]) }),
      "a.xlsx",
      /letters that are none/,
    ],
    [
      "an unknown encoding",
      () => changedRich(inSheet('encoding="UTF-8"', 'encoding="KLINGON"')),
      "a.xlsx",
      /unknown way/,
    ],
    [
      "a cell in another row",
      () => changedRich(inSheet('r="B4"', 'r="B5"')),
      "a.xlsx",
      /A cell is called "B5" in row 4/,
    ],
    [
      "a cell outside of the sheet",
      () => changedRich(inSheet('r="B4"', 'r="ZZZ4"')),
      "a.xlsx",
      /A cell is called "ZZZ4"/,
    ],
    ["a row that cannot be", () => changedRich(inSheet('<row r="4">', '<row r="0">')), "a.xlsx", /number "0"/],
    ["a number that is none", () => changedRich(inSheet("<v>10.5</v>", "<v>ten</v>")), "a.xlsx", /number that is none/],
    [
      "a formula without end",
      () => changedRich(inSheet("B4:B6*10", `1${"+1".repeat(20_000)}`)),
      "a.xlsx",
      /longer than any can be/,
    ],
    [
      "an area that begins elsewhere",
      () => changedRich(inSheet('ref="D4:D6"', 'ref="A1:D6"')),
      "a.xlsx",
      /begins elsewhere/,
    ],
    [
      "a zip bomb",
      () => rawZip([{ path: "xl/workbook.xml", content: new Uint8Array(900_000), size: 700_000_000 }]),
      "a.xlsx",
      /700 MB.*up to 500 MB/,
    ],
  ])("%s", (_, file, name, message) => {
    const bytes = file();
    expect(() => openFile(bytes, name)).toThrow(FileRefused);
    expect(() => openFile(bytes, name)).toThrow(message);
    expect(() => openFile(bytes, name)).toThrow(/^[A-Z].*\.$/s);
  });

  it("one whose short formula is shared by very many cells", () => {
    const long = `"${"x".repeat(30_000)}"`;
    const rows = Array.from(
      { length: 10_000 },
      (_, i) =>
        `<row r="${i + 1}"><c r="A${i + 1}"><f t="shared" si="0"${i === 0 ? ` ref="A1:A10000">${long}</f>` : "/>"}</c></row>`,
    );
    const bytes = changedRich(inSheet(/<sheetData>.*<\/sheetData>/s, `<sheetData>${rows.join("")}</sheetData>`));
    expect(() => openFile(bytes, "a.xlsx")).toThrow(/too large. Its formulas/);
  });

  it("is opened without looks and texts that no cell needs", () => {
    const plain = changedRich({
      "xl/look.xml": null,
      "xl/texts.xml": null,
      "xl/theme/theme.xml": null,
      "xl/book.xml": (text) => text.replace(/<sheet name="(?:Pours|Maker).*?\/>/g, ""),
    });
    const { book } = openFile(plain, "a.xlsx");
    expect(book.sheets.map(({ name }) => name)).toEqual(["Summary", "Old"]);
    expect(book.styles.length).toBe(1);
  });
});
