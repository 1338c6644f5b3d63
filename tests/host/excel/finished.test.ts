import { afterEach, describe, expect, it, vi } from "vitest";
import { ExcelHost } from "../../../src/host/excel/adapter";
import { FunctionRuns } from "../../../src/host/excel/functionRuns";
import { StillCalculating } from "../../../src/host/host";
import { StandIn } from "./standIn";

// Excel may show a cell's old value, and not #BUSY!, until the answer of a function stands in it: so Microsoft's own
// issue list says of some of its versions.

afterEach(() => vi.unstubAllGlobals());

/** A clock that goes on only when it is told to. */
class Clock {
  private time = 0;
  private readonly waiting: { at: number; work: () => void }[] = [];
  readonly now = (): number => this.time;
  readonly later = (work: () => void, milliseconds: number): void => {
    this.waiting.push({ at: this.time + milliseconds, work });
  };

  /** Goes on to when the next thing is due, or so far when that comes first. */
  go(milliseconds: number): void {
    const end = this.time + milliseconds;
    for (;;) {
      this.waiting.sort((a, b) => a.at - b.at);
      const [next] = this.waiting;
      if (!next || next.at > end) break;
      this.waiting.shift();
      this.time = next.at;
      next.work();
    }
    this.time = end;
  }
}

/** What the built functions do on the page that they share with the pane. */
const KEY = Symbol.for("pourwright functions");
const page = globalThis as unknown as { [key: symbol]: { count: number; heard?: () => void } };
const aFunctionRuns = (): void => {
  const runs = page[KEY] as { count: number; heard?: () => void };
  runs.count++;
  runs.heard?.();
};

/** A workbook whose only formula shows 100 and is to show 106, with a host, its clock and what it says. */
function workbook(waits = [0, 0, 0, 0]) {
  const standIn = new StandIn().install();
  standIn.book.answer = () => 100;
  standIn.table("Vessels", "Stock", [
    ["Vessel", "Fill"],
    ["Tin", "=POUR.FILLWEIGHT(120)"],
  ]);
  standIn.book.answer = () => 106;
  const clock = new Clock();
  const host = new ExcelHost(waits, new FunctionRuns(clock));
  const said: string[] = [];
  host.onRemarks(({ waiting }) => {
    if (waiting !== said.at(-1)) said.push(waiting ?? "");
  });
  const { place, headings } = { place: { sheet: "Stock", row: 0, column: 0, rows: 2, columns: 2 }, headings: [] };
  return { standIn, clock, host, said, read: () => host.read({ name: "Vessels", place, headings }) };
}

const FUNCTIONS = "Waiting for the answers of the POUR functions, which are on their way to their cells.";
const EXCEL = "Waiting for Excel, which is still calculating the workbook.";

describe("a read", () => {
  it("waits for the answer of a function that has just run, and says so", async () => {
    const { standIn, clock, said, read } = workbook();
    aFunctionRuns();
    const reading = read();
    await expect.poll(() => said.at(-1)).toBe(FUNCTIONS);
    clock.go(599);
    expect(said.at(-1)).toBe(FUNCTIONS);
    // The answer comes, and the last moment for it passes.
    standIn.book.calculate();
    clock.go(1);
    expect((await reading).rows).toEqual([["Tin", 106]]);
    expect(said.at(-1)).toBe("");
  });

  it("waits anew for each function that runs before the others' answers have come", async () => {
    const { standIn, clock, said, read } = workbook();
    aFunctionRuns();
    const reading = read();
    await expect.poll(() => said.at(-1)).toBe(FUNCTIONS);
    clock.go(500);
    aFunctionRuns();
    clock.go(500);
    expect(said.at(-1)).toBe(FUNCTIONS);
    standIn.book.calculate();
    clock.go(100);
    expect((await reading).rows).toEqual([["Tin", 106]]);
  });

  it("takes nothing that was read while a function ran", async () => {
    const { standIn, clock, said, read } = workbook();
    const before = standIn.syncs;
    standIn.meanwhile = (sync) => {
      if (sync === before + 1) aFunctionRuns();
    };
    const reading = read();
    await expect.poll(() => said.at(-1)).toBe(FUNCTIONS);
    standIn.book.calculate();
    clock.go(600);
    expect((await reading).rows).toEqual([["Tin", 106]]);
  });

  it("says that it waits for Excel itself, and gives up where there is no end of it", async () => {
    const { standIn, said, read } = workbook();
    standIn.book.calculationState = "Calculating";
    await expect(read()).rejects.toThrow(new StillCalculating());
    expect(said).toContain(EXCEL);
    expect(said.at(-1)).toBe("");
  });

  it("gives up where functions never stop running", async () => {
    const { standIn, clock, read } = workbook([0, 0]);
    aFunctionRuns();
    standIn.meanwhile = () => {
      clock.go(600);
      aFunctionRuns();
    };
    let isOver = false;
    const reading = read().finally(() => {
      isOver = true;
    });
    reading.catch(() => {});
    await expect
      .poll(() => {
        clock.go(600);
        return isOver;
      })
      .toBe(true);
    await expect(reading).rejects.toThrow(new StillCalculating());
  });

  it("says nothing where all is there", async () => {
    const { said, read } = workbook();
    expect((await read()).rows).toEqual([["Tin", 100]]);
    expect(said).toEqual([]);
  });
});

describe("whoever listens for changes", () => {
  it("is told when the answers have come, where Excel calculates by itself", async () => {
    const { standIn, clock, host, read } = workbook();
    const heard = vi.fn();
    const stop = host.onChange(heard);
    aFunctionRuns();
    expect(heard).not.toHaveBeenCalled();
    clock.go(600);
    expect(heard).toHaveBeenCalledTimes(1);
    // Where reading has Excel calculate, it would never end.
    standIn.book.calculationMode = "Manual";
    await read();
    aFunctionRuns();
    clock.go(600);
    expect(heard).toHaveBeenCalledTimes(1);
    stop();
  });
});
