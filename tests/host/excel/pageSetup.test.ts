import { afterEach, describe, expect, it, vi } from "vitest";
import { ExcelHost } from "../../../src/host/excel/adapter";
import type { Sheet } from "../../../src/sheet/sheet";
import { everything, type Knows, knowing, REQUIRED } from "./client/requirementSets";
import { type Failure, StandIn } from "./standIn";

afterEach(() => vi.unstubAllGlobals());

const print: Sheet["print"] = { paper: "a4", landscape: false, repeatRows: [0, 0] };
const sheet: Sheet = { name: "Run", widths: [10], cells: [{ row: 0, column: 0, content: { text: "Wax" } }], print };

function excel(knows: Knows = everything) {
  const standIn = new StandIn({ knows }).install();
  standIn.sheet("Here", [["Name"]]);
  const host = new ExcelHost();
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
