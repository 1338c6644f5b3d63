import { afterEach, describe, expect, it, vi } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT } from "../../../src/runsheet/sheet/layout";
import type { CellValue, Sheet } from "../../../src/sheet/sheet";
import { everything, type Knows, knowing, REQUIRED } from "./client/requirementSets";
import type { SheetModel } from "./model";
import { type Failure, newHost, StandIn } from "./standIn";

afterEach(() => vi.unstubAllGlobals());

const print: Sheet["print"] = { paper: "a4", landscape: false, repeatRows: [0, 0] };
const sheet: Sheet = { name: "Run", widths: [10], cells: [{ row: 0, column: 0, content: { text: "Wax" } }], print };

function excel(knows: Knows = everything) {
  const standIn = new StandIn({ knows }).install();
  standIn.sheet("Here", [["Name"]]);
  const host = newHost();
  let doubts: readonly string[] = [];
  return {
    standIn,
    host,
    listen: () => host.onRemarks((remarks) => ({ doubts } = remarks)),
    doubts: () => doubts,
  };
}

/** Where Excel finds no printer it refuses these alone. */
const refusals = (["nothing", "half", "all"] as const).map((done) => done);

describe("a page set-up that Excel refuses", () => {
  it.each(refusals)("with %s of it done leaves the sheet, and it is said", async (done) => {
    const { standIn, host, listen, doubts } = excel();
    standIn.failure = { sync: 4, done, code: "GeneralException" } satisfies Failure;
    const shares: number[] = [];
    expect(await host.addSheet(sheet, { onProgress: (share) => shares.push(share) })).toBe("Run");
    expect(shares.at(-1)).toBe(1);
    listen();
    expect(doubts()).toEqual([expect.stringContaining("Excel did not set up how Run is printed")]);
    expect(standIn.book.find("Run")?.cell(0, 0)?.value).toBe("Wax");
    // The next one that is done leaves nothing to say.
    standIn.failure = null;
    await host.addSheet(sheet);
    expect(doubts()).toEqual([]);
    expect(standIn.book.find("Run (2)")?.page).toMatchObject({ paperSize: "A4" });
  });

  it("of sheets that are added beside rows is said too", async () => {
    const { standIn, host, listen, doubts } = excel();
    standIn.failure = { sync: 4, done: "nothing" };
    await host.append([sheet]);
    listen();
    expect(doubts()).toEqual([expect.stringContaining("how Run is printed")]);
    expect(standIn.book.find("Run")?.cell(0, 0)?.value).toBe("Wax");
  });

  it("is not asked for where nothing is to be printed", async () => {
    const { standIn, host } = excel();
    const { print: _, ...screen } = sheet;
    await host.addSheet(screen);
    expect(standIn.syncs).toBe(3);
  });
});

describe("the pages of a run sheet", () => {
  /** Ten pots, on paper for which the whole run takes a few pages. */
  function runSheet(paper: Settings["paper"]): Sheet {
    const settings: Settings = { ...FIRST_SETTINGS, loss: 0, paper };
    const rows = Array.from({ length: 10 }, (_, i): CellValue[] => ["Tin", 15, 107, `Scent ${i}`, 0.07]);
    const columns = { vessel: 0, quantity: 1, fill: 2, scent: 3, load: 4 };
    const run = buildRun({ pour: { type: "pour", headings: [], rows, columns } }, settings);
    return describeRun(run, { lot: "2026-330-01", date: 46_352, settings });
  }

  it.each(["letter", "a4"] as const)(
    "fit the width of %s and break before pots, with room for those that stand there",
    async (paper) => {
      // The oldest Excel that loads the add-in takes them, in the sync of the page set-up.
      const { standIn, host } = excel(knowing(REQUIRED));
      const run = runSheet(paper);
      const made = standIn.book.find(await host.addSheet(run)) as SheetModel;
      const { page, heights, widths } = made;
      expect(standIn.syncs).toBe(4);
      expect(page.zoom).toEqual({ horizontalFitToPages: 1 });
      // 7 mm at the sides, 10 above, 14 below: points of 72 in an inch of 25.4 mm.
      for (const [side, millimetres] of Object.entries({ left: 7, right: 7, top: 10, bottom: 14 })) {
        expect(((page[`${side}Margin`] as number) / 72) * 25.4).toBeCloseTo(millimetres, 6);
      }
      const breaks = (page.breaks as string[]).map((cell) => Number(/^A(\d+)$/.exec(cell)?.[1]) - 1);
      const pots = run.cells.flatMap(({ row, column, content }) =>
        column === AT.key && content && "text" in content && content.text.endsWith(" pot") ? [row] : [],
      );
      expect(pots).toHaveLength(10);
      expect(breaks[0]).toBe(pots[0]);
      expect(breaks.filter((row) => !pots.includes(row))).toEqual([]);
      // Millimetres of the papers, from ISO 216 and ANSI; points of a row of no height of its own, from memory.
      const [across, up] = { letter: [215.9, 279.4], a4: [210, 297] }[paper] as [number, number];
      const scale = (((across - 14) / 25.4) * 72) / [...widths.values()].reduce((sum, one) => sum + one, 0);
      const heightOf = (row: number): number => heights.get(row) ?? 15;
      const ends = [...breaks, Math.max(...run.cells.map(({ row }) => row)) + 1];
      for (const [i, first] of [0, ...breaks].entries()) {
        let height = i === 0 ? 0 : heightOf(0);
        for (let row = first; row < (ends[i] as number); row++) height += heightOf(row);
        expect(height * scale).toBeLessThanOrEqual(((up - 24) / 25.4) * 72);
      }
    },
  );

  it("begin where a sheet says so", async () => {
    const { standIn, host } = excel();
    await host.addSheet({ ...sheet, print: { paper: "a4", newPages: [4, 9] } });
    expect(standIn.book.find("Run")?.page).toMatchObject({
      zoom: { horizontalFitToPages: 1 },
      breaks: ["A5", "A10"],
    });
    expect(standIn.book.find("Run")?.page).not.toHaveProperty("topMargin");
  });
});

describe("what may be wrong from the start", () => {
  const doubtsOf = async (from1904: boolean, knows: Knows): Promise<readonly string[]> => {
    const { standIn, listen, doubts } = excel(knows);
    standIn.book.from1904 = from1904;
    listen();
    await expect.poll(() => standIn.syncs).toBe(1);
    await new Promise((next) => setTimeout(next));
    return doubts();
  };

  it("is a workbook that counts its days from 1904", async () => {
    expect(await doubtsOf(true, everything)).toEqual([expect.stringContaining("counts its days from 1904")]);
  });
  it("is an Excel that may hand blank cells over as 0", async () => {
    const blanks = expect.stringContaining("a blank cell to a POUR function as 0");
    expect(await doubtsOf(false, knowing(REQUIRED))).toEqual([blanks]);
    const before = new Map(REQUIRED).set("CustomFunctionsRuntime", "1.4");
    expect(await doubtsOf(false, knowing(before))).toEqual([blanks]);
  });
  it("is nothing in a newer Excel that counts from 1900", async () => {
    expect(await doubtsOf(false, knowing(new Map(REQUIRED).set("CustomFunctionsRuntime", "1.5")))).toEqual([]);
  });
});
