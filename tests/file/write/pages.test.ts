import { strFromU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { fromUniver } from "../../../src/host/univer/file/fromUniver";
import { workbookData } from "../../../src/host/univer/workbook";
import { buildRun } from "../../../src/runsheet/buildRun";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT } from "../../../src/runsheet/sheet/layout";
import type { Sheet } from "../../../src/sheet/sheet";
import { faultsOf } from "./packageFaults";

/** Millimetres of the papers, from ISO 216 and ANSI; of an inch, and points of one. */
const PAPERS = { letter: [215.9, 279.4], a4: [210, 297] } as const;
const INCH = 25.4;
const POINTS = 72;

/** A run of ten pots in which something stands on each row, as the embedded sheet holds it. */
function runSheet(paper: Settings["paper"]): Sheet {
  const settings: Settings = { ...FIRST_SETTINGS, loss: 0, paper };
  const rows = Array.from({ length: 10 }, (_, i) => ["Tin", 15, 107, `Scent ${i}`, 0.07]);
  const columns = { vessel: 0, quantity: 1, fill: 2, scent: 3, load: 4 };
  const pour = { type: "pour", headings: [], rows, columns };
  const known = { scent: 0, waxMaximum: 1, productLimit: 2 };
  const limits = rows.map(([, , , scent]) => [scent, 0.1, 0.25]);
  const scents = { type: "scents", headings: [], rows: limits, columns: known };
  const run = buildRun({ pour, scents } as never, settings);
  return describeRun(run, { lot: "2026-330-01", date: 46352, settings });
}

describe.each(["letter", "a4"] as const)("a run sheet saved in a new file for %s", (paper) => {
  const sheet = runSheet(paper);
  const bytes = saveBook(null, fromUniver(workbookData("book", [sheet]), null)).bytes;
  const parts = unzipSync(bytes);
  const part = (path: string): string => strFromU8(parts[path] as Uint8Array);
  let xml: string;
  /** As the file says it, beginning with the row of that number less one. */
  let breaks: number[];
  beforeAll(() => {
    expect(faultsOf(bytes)).toEqual([]);
    xml = part("xl/worksheets/sheet1.xml");
    breaks = [...xml.matchAll(/<brk id="(\d+)" max="16383" man="1"\/>/g)].map(([, row]) => Number(row));
  });
  const margin = (side: string): number => Number(new RegExp(`<pageMargins [^>]*${side}="([\\d.]+)"`).exec(xml)?.[1]);

  it("names the paper, its margins and the title that each page repeats, and fits the width", () => {
    expect(xml).toContain(`paperSize="${paper === "letter" ? 1 : 9}"`);
    expect(xml).toContain('fitToPage="1"');
    expect(xml).toContain('fitToHeight="0"');
    // What the page prints with: 7 mm at the sides, 10 above, 14 below.
    for (const [side, millimetres] of Object.entries({ left: 7, right: 7, top: 10, bottom: 14 })) {
      expect(margin(side) * INCH).toBeCloseTo(millimetres, 1);
    }
    expect(part("xl/workbook.xml")).toMatch(/Print_Titles" localSheetId="0">'Run 2026-330-01'!\$1:\$1</);
  });

  it("breaks pages before pots alone, and has room on each for the pots that stand there", () => {
    const keyed = (kind: string): number[] =>
      sheet.cells.flatMap(({ row, column, content }) =>
        column === AT.key && content && "text" in content && content.text.endsWith(` ${kind}`) ? [row] : [],
      );
    const pots = keyed("pot");
    expect(pots).toHaveLength(10);
    for (const row of breaks) expect(pots).toContain(row);
    expect(breaks[0]).toBe(pots[0]);
    // The list on a page of its own, then ten pots on three.
    expect(breaks.length).toBeLessThanOrEqual(3);
    const heights = new Map(
      [...xml.matchAll(/<row r="(\d+)"[^>]*? ht="([\d.]+)"/g)].map(([, row, height]) => [Number(row), Number(height)]),
    );
    const widths = [...xml.matchAll(/<col min="(\d+)" max="(\d+)" width="([\d.]+)"(?![^>]*hidden)/g)];
    const pixels = widths.reduce((sum, [, first, last, width]) => {
      return sum + (Number(last) - Number(first) + 1) * Math.trunc(Number(width) * 7);
    }, 0);
    const [across, up] = PAPERS[paper];
    const wide = (across / INCH - margin("left") - margin("right")) * POINTS;
    const room = (up / INCH - margin("top") - margin("bottom")) * POINTS;
    const end = Math.max(...sheet.cells.map(({ row }) => row)) + 1;
    const ends = [...breaks, end];
    for (const [i, first] of [0, ...breaks].entries()) {
      let height = i === 0 ? 0 : (heights.get(1) as number);
      for (let row = first; row < (ends[i] as number); row++) height += heights.get(row + 1) ?? 15;
      expect((height * wide) / (pixels * 0.75)).toBeLessThanOrEqual(room);
    }
  });

  it("tells the page that opens it where its pages begin", () => {
    const { book, remarks } = openFile(bytes, "run.xlsx");
    expect(book.sheets[0]?.print).toEqual({ paper, repeatRows: [0, 0], newPages: breaks });
    expect(remarks).toEqual([]);
  });
});
