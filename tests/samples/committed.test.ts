import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { matchColumns, missingFields, TABLE_TYPES, type TableTypeId } from "../../src/runsheet/tables/registry";
import { makeSample } from "../../src/samples/file/makeSample";
import { SAMPLES } from "../../src/samples/index";
import type { Cell, Content, Sheet, Table } from "../../src/sheet/sheet";
import { faultsOf } from "../file/write/packageFaults";
import { metadata, metadataText, script } from "../functions/built";
import { attributesOf, partsOf, sharedTexts, sheetsOf, tablesOf, type WrittenCell } from "./zipped";

const fileOf = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../sample-workbooks/${name}`, import.meta.url)));

const letters = (column: number): string => String.fromCharCode(65 + column);
const addressOf = ({ row, column }: { row: number; column: number }): string => `${letters(column)}${row + 1}`;
const cellsOf = ({ row, column, rows }: { row: number; column: number; rows: number }): string[] =>
  Array.from({ length: rows }, (_, r) => addressOf({ row: row + r, column }));
const formulaOf = (content: Content | undefined) => (content && "formula" in content ? content.formula : undefined);

/** Functions younger than the file format, which a file marks: [MS-XLSX] 2.2.2 lists them, from memory. */
const YOUNGER = ["TEXTJOIN", "CONCAT", "MAXIFS", "MINIFS", "IFNA"];

/** The formula as a file has it, worked out another way than the writer does: by the list of our functions. */
function inFile(formula: string): string {
  const marked = YOUNGER.reduce((text, name) => text.replaceAll(`${name}(`, `_xlfn.${name}(`), formula);
  return metadata.functions.reduce(
    (text, { id }) => text.replaceAll(`POUR.${id}(`, `_xldudf_POUR_${id}(`),
    marked.slice(1),
  );
}

describe.each(SAMPLES)("the sample workbook $file", (sample) => {
  const { file } = sample;
  const bytes = fileOf(file);
  const parts = partsOf(bytes);
  const sheets = sheetsOf(parts);
  const described = sample.sheets();
  const formulas = sheets.flatMap(({ name, cells }) =>
    cells.filter(({ formula }) => formula !== undefined).map((cell) => ({ ...cell, name })),
  );
  const ours = formulas.filter(({ formula }) => formula?.includes("POUR"));
  const byAddress = new Map(
    sheets.map(({ name, cells }) => [name, new Map(cells.map((cell) => [cell.address, cell]))]),
  );
  const writtenAt = (sheet: Sheet, cell: { row: number; column: number }): WrittenCell | undefined =>
    byAddress.get(sheet.name)?.get(addressOf(cell));

  it("is what `npm run samples` writes now, twice the same", async () => {
    const functions = { script, metadata: metadataText };
    const [once, again] = [await makeSample(sample, functions), await makeSample(sample, functions)];
    expect(Buffer.compare(once, again)).toBe(0);
    expect(Buffer.compare(once, bytes), "run `npm run samples`").toBe(0);
  });

  it("carries no time of its making in the zip", () => {
    // A local file header has its time at byte 10 and its date at byte 12: 0 and 33 are midnight of 1980-01-01
    // (APPNOTE.TXT 4.4.6, from memory).
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    expect([view.getUint16(10, true), view.getUint16(12, true)]).toEqual([0, 33]);
  });

  it("holds every cell that is described: texts as texts, formulas with a saved value", () => {
    const texts = sharedTexts(parts);
    expect(sheets.map(({ name }) => name)).toEqual(described.map(({ name }) => name));
    for (const sheet of described) {
      for (const cell of sheet.cells) {
        const written = writtenAt(sheet, cell);
        const { content } = cell;
        if (!content) continue;
        if ("text" in content) {
          expect(written?.formula, content.text).toBeUndefined();
          expect(written?.attributes.t).toBe("s");
          expect(texts[Number(written?.value)]).toBe(content.text);
        } else if ("number" in content) {
          expect(Number(written?.value)).toBe(content.number);
        } else {
          expect(written?.formula).toBe(inFile(content.formula));
          expect(written?.value, content.formula).toBeDefined();
        }
      }
    }
    const count = described.flatMap(({ cells }) => cells).filter(({ content }) => formulaOf(content)).length;
    expect(formulas).toHaveLength(count);
  });

  it("shows no error: #N/A stands only where a chart leaves a point out, in a hidden column", () => {
    const undrawn = described.flatMap(({ charts = [] }) =>
      charts.flatMap(({ series }) =>
        series.flatMap(({ y }) => {
          const isHidden = described.find(({ name }) => name === y.sheet)?.widths[y.column] === 0;
          return isHidden ? cellsOf(y).map((address) => `${y.sheet}!${address} #N/A`) : [];
        }),
      ),
    );
    const errors = sheets.flatMap(({ name, cells }) =>
      cells.filter(({ attributes }) => attributes.t === "e").map(({ address, value }) => `${name}!${address} ${value}`),
    );
    expect(errors.filter((error) => !undrawn.includes(error))).toEqual([]);
  });

  it("has no table that bears a name the pane looks for and does not tell what the pane needs", () => {
    for (const { name, headings } of described.flatMap(({ tables = [] }) => tables)) {
      const kind = (Object.keys(TABLE_TYPES) as TableTypeId[]).find((one) => TABLE_TYPES[one].name === name);
      if (kind) expect(missingFields(kind, matchColumns(kind, headings)), name).toEqual([]);
    }
  });

  it("calls our functions by the names Excel keeps for an add-in, each of them built", () => {
    const ids = metadata.functions.map(({ id }) => id);
    const called = ours.flatMap(({ formula }) =>
      [...(formula ?? "").matchAll(/_xldudf_POUR_(\w+)\(/g)].map(([, id]) => id),
    );
    expect(called.length).toBeGreaterThan(0);
    expect(called.filter((id) => !ids.includes(id ?? ""))).toEqual([]);
    expect(formulas.filter(({ formula }) => /POUR\./i.test(formula ?? ""))).toEqual([]);
  });

  it("uses nothing that only the newest spreadsheets know", () => {
    const newest =
      /\b(FILTER|XLOOKUP|XMATCH|LET|LAMBDA|SORT|SORTBY|UNIQUE|SEQUENCE|VSTACK|HSTACK|TAKE|DROP)\(|\[@|[A-Z]\d+#/;
    expect(formulas.filter(({ formula }) => newest.test(formula ?? "")).map(({ formula }) => formula)).toEqual([]);
  });

  it("marks each formula of ours, and no other, as a dynamic array", () => {
    expect(ours.map(({ attributes }) => attributes.cm)).toEqual(ours.map(() => "1"));
    for (const { address, formulaAttributes } of ours) {
      expect(formulaAttributes.t).toBe("array");
      expect(formulaAttributes.ref?.split(":")[0]).toBe(address);
    }
    const natives = formulas.filter((one) => !ours.includes(one));
    expect(natives.filter(({ attributes, formulaAttributes }) => attributes.cm || formulaAttributes.t)).toEqual([]);
  });

  it("keeps the spilled values inside the range of their formula", () => {
    for (const sheet of described) {
      const own = new Set(sheet.cells.filter(({ content }) => content).map(addressOf));
      const written = sheets.find(({ name }) => name === sheet.name)?.cells ?? [];
      const ranges = written
        .filter(({ formula }) => formula)
        .map(({ formulaAttributes }) => formulaAttributes.ref ?? "");
      const spilled = written.filter(({ address, value }) => value !== undefined && !own.has(address));
      for (const { address } of spilled) {
        expect(
          ranges.some((range) => isInside(address, range)),
          `${sheet.name}!${address}`,
        ).toBe(true);
      }
    }
  });

  it("has metadata that says what the mark means, reached from the workbook", () => {
    const xml = parts["xl/metadata.xml"] ?? "";
    expect(xml).toMatch(/<metadataType name="XLDAPR"/);
    expect(xml).toContain('uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"');
    expect(xml).toContain('<xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/>');
    expect(xml).toContain('<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata>');
    expect(parts["[Content_Types].xml"]).toContain(
      'PartName="/xl/metadata.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml"',
    );
    expect(parts["xl/_rels/workbook.xml.rels"]).toContain(
      'Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/sheetMetadata" Target="metadata.xml"',
    );
  });

  it("is a package without faults: parts, relations, ids, tables, order of elements", () => {
    expect(faultsOf(bytes)).toEqual([]);
  });

  it("says what a font is in the order of the schema", () => {
    // ECMA-376 Part 1, 18.8.22, as Microsoft's validator wants it.
    const order = "b i strike condense extend outline shadow u vertAlign sz color name family charset scheme".split(
      " ",
    );
    const fonts = [...(parts["xl/styles.xml"] ?? "").matchAll(/<font>(.*?)<\/font>/gs)].map(([, inside = ""]) =>
      [...inside.matchAll(/<(\w+)/g)].map(([, name = ""]) => order.indexOf(name)),
    );
    expect(fonts.length).toBeGreaterThan(1);
    for (const places of fonts) expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(fonts.flat()).not.toContain(-1);
  });

  it("is not worked out again when Excel opens it without the add-in", () => {
    const tag = /<calcPr [^>]*>/.exec(parts["xl/workbook.xml"] ?? "")?.[0] ?? "";
    const { calcId, fullCalcOnLoad } = attributesOf(tag);
    // 191029 is what Excel 2019 and later write (from memory).
    expect(Number(calcId)).toBeGreaterThanOrEqual(191029);
    expect(fullCalcOnLoad).toBeUndefined();
  });

  it("has its tables where they are described, and each column's formula with the column", () => {
    const tables = described.flatMap((sheet) => (sheet.tables ?? []).map((table) => ({ sheet, table })));
    const written = tablesOf(parts);
    expect(written.map(({ name }) => name)).toEqual(tables.map(({ table }) => table.name));
    for (const [i, { sheet, table }] of tables.entries()) {
      const last = { row: table.row + table.rows, column: table.column + table.headings.length - 1 };
      expect(written[i]?.ref).toBe(`${addressOf(table)}:${addressOf(last)}`);
      expect(written[i]?.columns.map(({ name }) => name)).toEqual(table.headings);
      for (const [c, column] of (written[i]?.columns ?? []).entries()) {
        const cells = rowsOf(table).map((row) => writtenAt(sheet, { row, column: table.column + c }));
        const [first] = cells;
        const isFormula = first?.formula !== undefined && cells.every((cell) => cell?.formula === first.formula);
        expect(column.formula, `${table.name}[${column.name}]`).toBe(isFormula ? first?.formula : undefined);
        expect(column.array).toBe(isFormula && first?.attributes.cm === "1");
        const headingCell = sheet.cells.find((one) => one.row === table.row && one.column === table.column + c);
        expect(textOf(headingCell)).toBe(column.name);
      }
    }
  });

  it("keeps headings apart from each other, and notes from the framed values before them", () => {
    for (const { name, cells, widths } of described) {
      const inputs = new Map(cells.filter(({ look }) => look === "input").map((cell) => [addressOf(cell), cell]));
      for (const cell of cells) {
        const words = textOf(cell);
        const width = widths[cell.column] ?? 0;
        if (cell.look === "heading" && words && width > 0) {
          const longest = Math.max(...linesOf(words, width).map(({ length }) => length));
          expect(longest, `${name}: ${words}`).toBeLessThan(width);
        }
        const before = inputs.get(addressOf({ row: cell.row, column: cell.column - 1 }));
        if (cell.look !== "note" || !before) continue;
        expect(words, name).toMatch(/^ {2}\S/);
        expect(before.align, `${name}: ${words}`).toBe("right");
      }
    }
  });

  it("is set up to be read and printed", () => {
    for (const [i, sheet] of described.entries()) {
      const xml = sheets[i]?.xml ?? "";
      expect(xml).toContain('<pageSetUpPr fitToPage="1"/>');
      expect(attributesOf(/<pageSetup [^>]*>/.exec(xml)?.[0] ?? "")).toMatchObject({
        fitToWidth: "1",
        fitToHeight: "0",
      });
      const margins = attributesOf(/<pageMargins [^>]*>/.exec(xml)?.[0] ?? "");
      const [left, right, top, bottom] = ["left", "right", "top", "bottom"].map((side) => Number(margins[side]));
      // A4 is 210 by 297 mm (ISO 216), Letter 8.5 by 11 inches: what A4 holds within the margins is whole on Letter.
      const [width, height] = sheet.print?.landscape ? [297, 210] : [210, 297];
      const [letterWidth, letterHeight] = sheet.print?.landscape ? [11, 8.5] : [8.5, 11];
      const least = 2 * 0.5;
      expect(width / 25.4 - (left ?? 0) - (right ?? 0)).toBeLessThan(letterWidth - least);
      expect(height / 25.4 - (top ?? 0) - (bottom ?? 0)).toBeLessThan(letterHeight - least);
      // A width is in digits of 7 pixels and 5 pixels beside them (ECMA-376 Part 1, 18.3.1.13, from memory).
      const pixels = sheet.widths.reduce((sum, one) => sum + (one === 0 ? 0 : one * 7 + 5), 0);
      const room = (width / 25.4 - (left ?? 0) - (right ?? 0)) * 96;
      // The widest sheet has fifteen columns, each with room for its heading and a button.
      const points = sheet.name === "Burn tests" ? 7 : 8;
      expect(11 * Math.min(1, room / pixels), `points of print on ${sheet.name}`).toBeGreaterThanOrEqual(points);
      const pane = attributesOf(/<pane [^>]*>/.exec(xml)?.[0] ?? "");
      expect(Number(pane.ySplit ?? 0)).toBe(sheet.frozenRows ?? 0);
    }
  });
});

/** The lines of a text broken between words to this many characters. */
function linesOf(words: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(" ")) {
    const joined = `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && joined.length <= width) lines[lines.length - 1] = joined;
    else lines.push(word);
  }
  return lines;
}

const rowsOf = (table: Table): number[] => Array.from({ length: table.rows }, (_, r) => table.row + 1 + r);
const textOf = (cell: Cell | undefined) => (cell?.content && "text" in cell.content ? cell.content.text : undefined);

function isInside(address: string, range: string): boolean {
  const place = (text: string) => {
    const [, column = "", row = ""] = /^([A-Z])(\d+)$/.exec(text) ?? [];
    return { column: column.charCodeAt(0), row: Number(row) };
  };
  const [from = "", to = from] = range.split(":");
  const [at, start, end] = [place(address), place(from), place(to)];
  return at.row >= start.row && at.row <= end.row && at.column >= start.column && at.column <= end.column;
}
