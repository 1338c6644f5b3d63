import { describe, expect, it } from "vitest";
import { openFile } from "../../../src/file/openFile";
import { FileRefused } from "../../../src/file/refused";
import { HOSTILE_TEXTS } from "../../hostileTexts";

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const utf16 = (text: string, little: boolean, mark = true): Uint8Array =>
  Uint8Array.from(
    [...(mark ? `\ufeff${text}` : text)].flatMap((letter) => {
      const code = letter.charCodeAt(0);
      return little ? [code & 255, code >> 8] : [code >> 8, code & 255];
    }),
  );

const open = (content: string | Uint8Array, name = "scents.csv") =>
  openFile(typeof content === "string" ? encode(content) : content, name);

/** The values of the only sheet, blanks as null, in rows of equal length. */
function values(content: string | Uint8Array, name?: string) {
  const rows = open(content, name).book.sheets[0]?.rows ?? [];
  const width = Math.max(...rows.flatMap(({ cells }) => cells.map(({ column }) => column + 1)));
  return rows.map(({ cells }) =>
    Array.from({ length: width }, (_, column) => cells.find((cell) => cell.column === column)?.value ?? null),
  );
}

describe("a list in plain text", () => {
  it("is one sheet called after the file, its headings as they are", () => {
    const { book, remarks } = open("Scent,Jars\nFig,12\n\nMoss,4\n", "C:\\lists\\My scents: new.csv");
    expect(remarks).toEqual([]);
    expect(book.sheets.map(({ name, rows }) => [name, rows.map(({ row }) => row)])).toEqual([
      ["My scents new", [0, 1, 3]],
    ]);
    expect(values("Scent,Jars\nFig,12")).toEqual([
      ["Scent", "Jars"],
      ["Fig", 12],
    ]);
  });

  const rows = [
    ["Größe", "Preis"],
    ["Süß", 1.5],
  ];
  it.each<[string, Uint8Array]>([
    ["UTF-8", encode("Größe;Preis\r\nSüß;1,5")],
    ["UTF-8 with a mark", encode("\ufeffGröße;Preis\r\nSüß;1,5")],
    ["UTF-16, low byte first", utf16("Größe;Preis\r\nSüß;1,5", true)],
    ["UTF-16, high byte first", utf16("Größe;Preis\r\nSüß;1,5", false)],
    ["UTF-16 without a mark", utf16("Größe;Preis\r\nSüß;1,5", true, false)],
    ["Windows-1252", Uint8Array.from("Größe;Preis\r\nSüß;1,5", (letter) => letter.charCodeAt(0))],
  ])("is read in %s", (_, bytes) => expect(values(bytes)).toEqual(rows));

  it.each([
    ["commas", "a,b\n1.5,2"],
    ["semicolons", "a;b\n1,5;2"],
    ["tabs", "a\tb\n1.5\t2"],
    ["bars", "a|b\n1.5|2"],
    ["a separator that it names", "sep=;\na;b\n1,5;2"],
    ["quotes around all", '"a";"b"\r\n"1,5";"2"\r\n'],
  ])("is taken apart at %s", (_, text) =>
    expect(values(text)).toEqual([
      ["a", "b"],
      [1.5, 2],
    ]),
  );

  it("takes decimal commas for what they are also where they are as many as semicolons", () => {
    expect(values("1,5;2,5\n3,5;4,25")).toEqual([
      [1.5, 2.5],
      [3.5, 4.25],
    ]);
  });

  it("keeps commas and ends of lines in quotes", () => {
    expect(values('Name,Note\n"Fig, ripe","two\nlines ""here"""')).toEqual([
      ["Name", "Note"],
      ["Fig, ripe", 'two\nlines "here"'],
    ]);
  });

  it.each<[string, number]>([
    ["0", 0],
    ["-3", -3],
    ["0.86", 0.86],
    [".5", 0.5],
    [" 12 ", 12],
    ["1.5E-05", 0.000015],
    ["123456789012345", 123456789012345],
    ["6%", 0.06],
    ["6.5 %", 0.065],
    ["\u22125", -5],
    ["$4", 4],
    ["-\u20ac3.20", -3.2],
    ["\u20ac -3.20", -3.2],
    ["1'250.50 \u20ac", 1250.5],
    ["1 250.5", 1250.5],
    ["1\u2019250", 1250],
    ["2026-11-26", 46352],
    ["2026-11-26 12:00", 46352.5],
  ])("reads %s as the number %d", (text, number) => expect(values(`x,1.25\n${text},1`)[1]?.[0]).toBe(number));

  it.each([
    "007",
    "1-2",
    "1234567890123456",
    "+491234567",
    "1E5",
    "12E3",
    "1/2",
    "TRUE",
    "=1+1",
    "@x",
    "12.",
    "1.2.3",
    "2026-330-01",
    "2026-02-30",
    "26.11.2026",
    "12 g",
    "$4 each",
    "$4%",
    "\u20ac 4 \u20ac",
    "50 ¢",
    "\u2212-1",
    "12 34",
    "0 250",
    "--1",
    "1,5,0",
    "#N/A",
    "'x",
    "0x10",
    "1_000",
  ])("keeps %s as text, as typing would not", (text) => {
    const [, row] = open(`x|1.25\n${text}|1`).book.sheets[0]?.rows ?? [];
    expect(row?.cells[0]?.value).toBe(text);
    expect(row?.cells[0]?.formula).toBeUndefined();
    if (/^[^$\u20ac\u2212]/.test(text)) expect(row?.cells[0]?.quoted).toBe(true);
  });

  it("shows percentages, money and days as they were written", () => {
    const { sheets, styles } = open("6%,6.25%,€ 3.20,\u22124\u00a0€,$5,2026-11-26,2026-11-26 14:30,Fig").book;
    expect(sheets[0]?.rows[0]?.cells.map(({ style }) => styles[style]?.format)).toEqual([
      "0%",
      "0.00%",
      '"€ "0.00',
      '0" €"',
      '"$"0',
      "yyyy-mm-dd",
      "yyyy-mm-dd hh:mm",
      "General",
    ]);
  });

  it.each<[string, string, unknown[], number]>([
    ["thousands with a dot where commas are decimal", "1.500;2,5", [1500, 2.5], 0],
    ["thousands with a comma where dots are decimal", '"1,500",2.5', [1500, 2.5], 0],
    ["thousands with thin spaces", "1\u202f500;2,5", [1500, 2.5], 0],
    ["millions", "1.500.000,25;2,5", [1500000.25, 2.5], 0],
    ["three decimals beside others", "1.125,2.5", [1.125, 2.5], 0],
    ["a doubtful dot", "1.500;a", ["1.500", "a"], 1],
    ["a doubtful comma between tabs", "1,500\ta", ["1,500", "a"], 1],
    ["both ways in one list", "1,5\t1.5\t1.500", [1.5, 1.5, "1.500"], 1],
    ["both ways in one short list", "1,5\t1.5", [1.5, 1.5], 0],
    ["a decimal comma in quotes beside dots", '"236,5",119.1', [236.5, 119.1], 0],
    ["thousands of either way beside decimals of both", "1.410,5;1,410.5;119.1;2,5", [1410.5, 1410.5, 119.1, 2.5], 0],
    ["what may be a day among decimal commas", "1,5;119.1;12.10", [1.5, 119.1, "12.10"], 1],
    ["a percentage with a decimal comma between commas", '"7,5 %",a', [0.075, "a"], 0],
    ["a doubtful percentage between commas", '"7,125 %",a', ["7,125 %", "a"], 1],
    ["doubtful money", "1.500 €;a", ["1.500 €", "a"], 1],
    ["money that is no day", "1,5;119.1;12.10 €", [1.5, 119.1, 12.1], 0],
    ["by money how decimals are written", "3,20 €\t1.500", [3.2, 1500], 0],
    ["by groups how decimals are written", "1.410,5\t1.500", [1410.5, 1500], 0],
    ["groups with spaces and decimals", "1 250,5;a", [1250.5, "a"], 0],
    ["money in groups with spaces", "1 250 €;a", [1250, "a"], 0],
    ["groups with spaces alone", "1 250;a", ["1 250", "a"], 1],
    ["a number that grows by a plus", "+5;a", ["+5", "a"], 1],
    ["a telephone number", "+491234567;a", ["+491234567", "a"], 0],
    ["more groups with dots than dots can part", "1.5,1.234.567", [1.5, "1.234.567"], 1],
    ["a day that may be a month", "3/4/2026,a", ["3/4/2026", "a"], 1],
  ])("reads %s", (_, text, row, doubts) => {
    expect(values(text)).toEqual([row]);
    expect(open(text).remarks.length).toBe(doubts);
  });

  it("reads whole numbers in groups with spaces in a column that has other numbers", () => {
    expect(values("Weight;Phone;Code\n1 250;555 123 456;12 345\n950;0555;A 1\n12 500 000;;")).toEqual([
      ["Weight", "Phone", "Code"],
      [1250, "555 123 456", "12 345"],
      [950, "0555", "A 1"],
      [12_500_000, null, null],
    ]);
  });

  it("names one of each way in which figures that stay text are written", () => {
    const { remarks } = open("5-;12,-;–5;(5)\n1 250;6-;Fig;7-8\n12 500;;2 500 000;");
    expect(remarks.map(({ what, consequence }) => `${what}: ${consequence}`)).toEqual([
      "figures such as 1 250 and 2 500 000: They were left as text: select those that are numbers and choose Text to Number in the toolbar.",
      "figures such as 5-, 12,- and –5: They were left as text: type them as plain numbers, such as -1250.5, to compute with them.",
    ]);
    expect(open("Size;Note\n(5);A 1\n1-2;5 - 6").remarks.map(({ what }) => what)).toEqual(["figures such as (5)"]);
  });

  it("never computes a text, whatever it is", () => {
    const quoted = HOSTILE_TEXTS.map((text) => `"${text.replaceAll('"', '""')}"`).join("\n");
    const cells = open(`Name\n${quoted}`).book.sheets[0]?.rows.flatMap((row) => row.cells) ?? [];
    expect(cells.length).toBe(HOSTILE_TEXTS.length + 1);
    for (const [i, text] of HOSTILE_TEXTS.entries()) {
      const cell = cells[i + 1];
      expect(cell?.formula).toBeUndefined();
      expect(typeof cell?.value === "string" ? cell.value : text).toBe(text);
    }
  });

  it("says where a quotation mark is out of place", () => {
    const { remarks } = open('a,b\n"x,1\ny,2\n');
    expect(remarks.map(({ what }) => what)).toEqual(["a quotation mark out of place in row 2"]);
  });

  it("reads 200,000 cells", () => {
    const text = Array.from({ length: 20_000 }, (_, i) => `Fig,${i},1.5,a,b,c,d,e,f,2026-11-26`).join("\n");
    const rows = open(text).book.sheets[0]?.rows;
    expect(rows?.length).toBe(20_000);
    expect(rows?.[19_999]?.cells.map(({ value }) => value)).toEqual(["Fig", 19_999, 1.5, ..."abcdef", 46352]);
  });

  it.each<[string, string | Uint8Array, string, RegExp]>([
    ["nothing", "", "a.csv", /empty/],
    ["blanks", " \n\n", "a.csv", /empty/],
    [
      "a web page",
      "<html><table><tr><td>1</td></tr></table></html>",
      "prices.xls",
      /web page.*save it there as an \.xlsx/,
    ],
    ["a web page called a list", "\n<!DOCTYPE html>\n<p>x", "a.csv", /web page/],
    ["XML", '<?xml version="1.0"?><Workbook/>', "a.xls", /XML/],
    ["JSON", '{"a": 1}', "a.csv", /JSON/],
    ["text with another name", "Dear maker,\nhello", "letter.md", /plain text.*ends in \.csv/],
    ["bytes", new Uint8Array([1, 2, 3, 4, 5, 200]), "a.csv", /neither a workbook nor a list/],
    ["too many columns", ",".repeat(17_000), "a.csv", /16,384 columns/],
  ])("refuses %s with what to do", (_, content, name, message) => {
    expect(() => open(content, name)).toThrow(FileRefused);
    expect(() => open(content, name)).toThrow(message);
  });
});
