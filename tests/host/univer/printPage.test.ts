import { describe, expect, it } from "vitest";
import { type PrintedSheet, printPage } from "../../../src/host/univer/printPage";
import type { PrintedCell, PrintedRow } from "../../../src/host/univer/printTable";

type Written = string | Partial<PrintedCell> | undefined;

const BOX = { top: "1pt solid", right: "1pt solid", bottom: "1pt solid", left: "1pt solid" };

const row = (cells: Written[], more: Partial<PrintedRow> = {}): PrintedRow => ({
  height: 24,
  cells: cells.map((cell) => (typeof cell === "string" ? { text: cell } : cell && { text: "", ...cell })),
  ...more,
});
const page = (rows: PrintedRow[], more: Partial<PrintedSheet> = {}): string =>
  printPage({ name: "Sheet", paper: "a4", widths: rows[0]?.cells.map(() => 80) ?? [], rows, ...more });

/** The cells of each row as they were written, tags and all. */
const cellsOf = (html: string): string[][] =>
  [...html.matchAll(/<tr style[^>]*>(.*?)<\/tr>|<tr class="heading"[^>]*>(.*?)<\/tr>/gs)].map(([, one, other]) =>
    [...(one ?? other ?? "").matchAll(/<td.*?<\/td>/gs)].map(([cell]) => cell),
  );

describe("a sheet as a page to print", () => {
  it("holds all texts as text", () => {
    const texts = ["<img src=x onerror=alert(1)>", "=1+1", 'a & "b"', "</td></table><script>alert(1)</script>", "&lt;"];
    const html = page(
      texts.map((text) => row([text, "|"])),
      { name: "</style><script>alert(1)</script>" },
    );
    expect(html).not.toMatch(/<(img|script|\/td><\/table)/);
    expect(html.match(/<style>/g)).toHaveLength(1);
    expect(html.match(/<\/style>/g)).toHaveLength(1);
    expect(cellsOf(html).map(([cell]) => cell)).toEqual([
      '<td dir="auto">&lt;img src=x onerror=alert(1)&gt;</td>',
      '<td dir="auto">=1+1</td>',
      '<td dir="auto">a &amp; &quot;b&quot;</td>',
      '<td dir="auto">&lt;/td&gt;&lt;/table&gt;&lt;script&gt;alert(1)&lt;/script&gt;</td>',
      '<td dir="auto">&amp;lt;</td>',
    ]);
  });

  it("keeps a number that is too wide for its column whole: smaller, with fewer decimals, or not shown", () => {
    const number = (text: string, kind: "plain" | "formatted") => ({ text, number: kind });
    const cells = [
      number("1,250.75", "formatted"),
      number("0.333333333333", "plain"),
      number("1234567890123", "plain"),
    ];
    const [[one, two, three]] = cellsOf(page([row(cells)], { widths: [45, 45, 45] })) as [[string, string, string]];
    expect(one).toMatch(/white-space:nowrap;font-size:(6|7|8)\.\d\dpt.*>1,250\.75</);
    expect(two).toMatch(/>0\.33+</);
    expect(three).toMatch(/>#+</);
  });

  it("lets nothing run or be fetched", () => {
    const html = page([row(["a"])]);
    expect(html).toContain("default-src 'none'; style-src 'unsafe-inline'");
    expect(html).not.toMatch(/url\(|https?:|<link|@import/);
  });

  it("writes the sheet's name into the foot so that no sign of it ends the text", () => {
    const html = page([row(["a"])], { name: 'Line"1" \\ {2}\nnext; שלום' });
    expect(html).toContain('@bottom-left { content: "Line\\22 1\\22  \\5c  \\7b 2\\7d \\a next\\3b  שלום";');
  });

  it("counts the pages in the foot", () => {
    expect(page([row(["a"])])).toContain('@bottom-right { content: "Page " counter(page) " of " counter(pages);');
  });

  // Sizes of paper: ISO 216 for A4; ANSI/ASME Y14.1 for Letter, 8.5 by 11 inches.
  it.each([
    ["a4", false, "210mm 297mm"],
    ["a4", true, "297mm 210mm"],
    ["letter", false, "215.9mm 279.4mm"],
    ["letter", true, "279.4mm 215.9mm"],
  ] as const)("is %s, landscape: %s", (paper, landscape, size) => {
    expect(page([row(["a"])], { paper, landscape })).toContain(`size: ${size};`);
  });

  it("turns a wide sheet of no known set-up, and keeps its text readable", () => {
    const wide = (count: number) => page([row(Array.from({ length: count }, () => "a"))]);
    expect(wide(8)).toContain("size: 210mm 297mm");
    expect(wide(14)).toContain("size: 297mm 210mm");
    const fonts = [2, 8, 14, 60].map((count) => Number(/font: ([\d.]+)pt\/1\.25/.exec(wide(count))?.[1]));
    // 8 columns of 80 pixels fit A4 as they are, 14 fit it sideways (297 mm less twice 7) at less, and less than 8 pt
    // none gets.
    expect(fonts).toEqual([11, 11, 10.51, 8]);
  });

  it("gives columns their share of the width, so that they stay within the paper", () => {
    const html = page([row(["a", "b", "c"])], { widths: [600, 300, 300] });
    expect([...html.matchAll(/<col style="width:([\d.]+)%">/g)].map(([, width]) => Number(width))).toEqual([
      50, 25, 25,
    ]);
    expect(html).toContain('<table style="width:100%">');
    expect(page([row(["a", "b"])])).toContain('<table style="width:160px">');
  });

  it("keeps merged cells, and leaves out what they lie over", () => {
    const html = page([
      row([{ text: "title", across: 3 }, undefined, undefined]),
      row([{ text: "side", down: 2 }, "b", "c"]),
      row([undefined, "d", "e"]),
    ]);
    expect(cellsOf(html)).toEqual([
      ['<td colspan="3" dir="auto">title</td>'],
      ['<td rowspan="2" dir="auto">side</td>', '<td dir="auto">b</td>', '<td dir="auto">c</td>'],
      ['<td dir="auto">d</td>', '<td dir="auto">e</td>'],
    ]);
  });

  it("keeps blank boxes to write in, with room for a hand", () => {
    const html = page(
      [row(["Weight", { borders: BOX }], { height: 20 }), row([{ borders: BOX }, "g"], { height: 60 })],
      {
        widths: [1000, 1000],
      },
    );
    expect(html.match(/<td style="border-top:1pt solid;[^"]*"><\/td>/g)).toHaveLength(2);
    expect([...html.matchAll(/<tr style="height:(\d+)px">/g)].map(([, height]) => Number(height))).toEqual([20, 32]);
  });

  it("lets a text run on over empty cells beside it, but over none that shows anything", () => {
    const long = "a long remark";
    const html = page([
      row([long, "", "", "end"]),
      row([long, { fill: "#eee" }, "", ""]),
      row([{ text: long, wrap: true }, "", "", ""]),
      row([{ text: long, borders: BOX }, "", "", ""]),
      row([{ text: "7.5", align: "right" }, "", "", ""]),
    ]);
    expect(cellsOf(html).map((cells) => cells.length)).toEqual([2, 4, 4, 4, 4]);
    expect(cellsOf(html)[0]?.[0]).toBe(`<td colspan="3" dir="auto">${long}</td>`);
  });

  it("shows looks", () => {
    const html = page([
      row([
        { text: "a", bold: true, italic: true, line: "underline", align: "center", color: "#8a1c0b", fill: "#fbece6" },
        { text: "b", size: 16, borders: { bottom: "0.75pt solid #8c8172" } },
      ]),
    ]);
    expect(cellsOf(html)).toEqual([
      [
        '<td dir="auto" style="text-align:center;font-weight:bold;font-style:italic;text-decoration:underline;color:#8a1c0b;background:#fbece6">a</td>',
        '<td dir="auto" style="font-size:16.00pt;border-bottom:0.75pt solid #8c8172">b</td>',
      ],
    ]);
    expect(html).toContain("print-color-adjust: exact");
  });

  it("repeats its heading rows, with what stands above them printed once", () => {
    const html = page([row(["Title"]), row(["Heading"], { repeats: true }), row(["1"]), row(["2"])]);
    const parts = html.match(/<table.*?<\/table>/gs) ?? [];
    expect(parts).toHaveLength(2);
    expect(parts[0]).toContain(">Title<");
    expect(parts[0]).not.toContain("<thead>");
    expect(/<thead>(.*?)<\/thead>/s.exec(parts[1] ?? "")?.[1]).toContain(">Heading<");
    expect(parts[1]?.replace(/<thead>.*<\/thead>/s, "")).toMatch(/>1<.*>2</s);
  });

  it("repeats none where a merged cell reaches out of the heading rows", () => {
    const html = page([
      row([{ text: "both", down: 2 }, "a"], { repeats: true }),
      row([undefined, "1"]),
      row(["x", "2"]),
    ]);
    expect(html).not.toContain("<thead>");
    expect(cellsOf(html).map((cells) => cells.length)).toEqual([2, 1, 2]);
  });

  it("keeps headings with what they head, and blocks whole that take no more than part of a page", () => {
    const heading = row([{ text: "Pot 1", bold: true, fill: "#eee" }, { fill: "#eee" }]);
    const bold = row([{ text: "Total", bold: true }, "5"]);
    const block = (count: number) => [heading, ...Array.from({ length: count }, () => row(["wax", "1"])), bold];
    const html = page([...block(3), row(["", ""]), ...block(100), row(["", ""]), ...block(3)]);
    expect(html.match(/<tr class="heading"/g)).toHaveLength(3);
    expect([...html.matchAll(/<tbody([^>]*)>/g)].map(([, attributes]) => attributes)).toEqual([
      ' class="together"',
      "",
      ' class="together"',
    ]);
  });

  it("parts no block at an empty row that a merged cell lies over", () => {
    const html = page([row([{ text: "side", down: 3 }, "a"]), row([undefined, ""]), row([undefined, "b"])]);
    expect(html.match(/<tbody/g)).toHaveLength(1);
  });
});
