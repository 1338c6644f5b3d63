import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { Book, CellStyle } from "../../../src/file/book";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { styleData, styleOf } from "../../../src/host/univer/file/styleData";
import { changedRich } from "../read/changed";

/** Cells that newer programs show as boxes to tick: [MS-XLSX] 2.2.4.17 and 2.3.11, from memory. */

const BAG = "http://schemas.microsoft.com/office/spreadsheetml/2022/featurepropertybag";
const EXTENSION = `<extLst><ext xmlns:xfpb="${BAG}" uri="{C7286773-470A-42A8-94C5-96B5CB345126}"><xfpb:xfComplement i="0"/></ext></extLst>`;
const BAGS = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<FeaturePropertyBags xmlns="${BAG}"><bag type="Checkbox"/><bag type="XFControls"><bagId k="CellControl">0</bagId></bag><bag type="XFComplement"><bagId k="XFControls">1</bagId></bag><bag type="XFComplements" extRef="XFComplementsMapperExtRef"><a k="MappedFeaturePropertyBags"><bagId>2</bagId></a></bag></FeaturePropertyBags>`;

const before = (text: string, end: string, more: string) => text.replace(end, more + end);

/** The rich workbook with one more look, of cells that are boxes. */
const withBoxes = changedRich({
  "xl/look.xml": (text) =>
    before(text, "</cellXfs>", `<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0">${EXTENSION}</xf>`),
  "xl/featurePropertyBag/featurePropertyBag.xml": BAGS,
  "xl/_rels/book.xml.rels": (text) =>
    before(
      text,
      "</Relationships>",
      `<Relationship Id="rId99" Type="http://schemas.microsoft.com/office/2022/11/relationships/FeaturePropertyBag" Target="featurePropertyBag/featurePropertyBag.xml"/>`,
    ),
  "[Content_Types].xml": (text) =>
    before(
      text,
      "</Types>",
      `<Override PartName="/xl/featurePropertyBag/featurePropertyBag.xml" ContentType="application/vnd.ms-excel.featurepropertybag+xml"/>`,
    ),
});

describe("boxes to tick of newer programs", () => {
  const { book, remarks } = openFile(withBoxes, "boxes.xlsx");
  const box = book.styles.at(-1) as CellStyle;

  it("are said to show what they hold", () => {
    expect(box.control).toBe(0);
    expect(remarks.map(({ what }) => what)).toContain("boxes to tick");
  });

  it("stay boxes in another look", () => {
    const bold = styleOf({ ...styleData(box), bl: 1 }, book.styles[0] as CellStyle);
    const [first, ...others] = book.sheets;
    const cell = { column: 0, value: true, style: book.styles.length };
    const now: Book = {
      ...book,
      styles: [...book.styles, bold],
      sheets: [{ ...first, rows: [...(first?.rows ?? []), { row: 30, cells: [cell] }] }, ...others] as Book["sheets"],
    };
    const { bytes } = saveBook(withBoxes, now);
    const parts = unzipSync(bytes);
    expect(strFromU8(parts["xl/featurePropertyBag/featurePropertyBag.xml"] ?? new Uint8Array())).toBe(BAGS);
    const opened = openFile(bytes, "boxes.xlsx").book;
    const style = opened.styles[opened.sheets[0]?.rows.at(-1)?.cells[0]?.style ?? 0];
    expect(style).toMatchObject({ control: 0, font: { bold: true } });
    // Without the part that says what they are there is none.
    const alone = strFromU8(unzipSync(saveBook(null, now).bytes)["xl/styles.xml"] ?? new Uint8Array());
    expect(alone).not.toContain("xfComplement");
  });
});
