import ExcelJS from "exceljs";
import { beforeAll, describe, expect, it } from "vitest";
import { give } from "./givenFile";
import { OpenedSite } from "./opened";

describe("a long workbook, in a browser", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  let long: Buffer;

  beforeAll(async () => {
    const book = new ExcelJS.Workbook();
    for (let i = 1; i <= 20; i++) {
      const sheet = book.addWorksheet(`Month ${i}`);
      sheet.addRow(["Vessel", "Water", "Fill", "Scent", "Load", "Quantity", "Note", "Pot"]);
      for (let row = 2; row <= 1001; row++) {
        const fill = { formula: `ROUND(B${row}*0.86,1)`, result: Math.round((100 + row) * 8.6) / 10 };
        sheet.addRow([`Jar ${row % 7}`, 100 + row, fill, "Fig", 0.06, row % 12, `note ${row} of ${i}`, row % 5]);
      }
    }
    long = Buffer.from(await book.xlsx.writeBuffer());
  });

  it("can be stopped, and what is open stays", async () => {
    const before = await tryout.sheetNames();
    // The worker comes only when the stop was pressed, however fast the machine is.
    let goOn = () => {};
    const stopped = new Promise<void>((resolve) => {
      goOn = resolve;
    });
    await tryout.page.route("**/fileWorker.js*", async (route) => {
      await stopped;
      await route.abort().catch(() => {});
    });
    await give(tryout, "long.xlsx", long);
    const stop = tryout.page.getByRole("button", { name: "Stop" });
    await stop.waitFor();
    expect(await tryout.faults("#files")).toEqual([]);
    await stop.click();
    await tryout.page.getByText("Stopped. Nothing was changed.").waitFor();
    goOn();
    await tryout.page.unroute("**/fileWorker.js*");
    expect(await tryout.sheetNames()).toEqual(before);
  });

  it("opens with the page answering; it is measured how long that takes", async () => {
    await tryout.page.evaluate(() => {
      const tasks: number[] = [];
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) tasks.push(duration);
      }).observe({ entryTypes: ["longtask"] });
      Object.assign(window, { tasks });
    });
    const begun = performance.now();
    await give(tryout, "long.xlsx", long);
    await tryout.page.getByRole("tab", { name: "Month 1", exact: true }).waitFor();
    const shown = performance.now() - begun;
    expect(await tryout.cells("Month 20", 1000, 0, 1, 8)).toEqual([
      ["Jar 0", 1101, 946.9, "Fig", 0.06, 5, "note 1001 of 20", 1],
    ]);
    const all = performance.now() - begun;
    const tasks = await tryout.page.evaluate(() => (window as unknown as { tasks: number[] }).tasks);
    console.log(
      `20 sheets of 1,000 rows: shown after ${Math.round(shown)} ms, worked out after ${Math.round(all)} ms, longest tasks ${tasks
        .sort((a, b) => b - a)
        .slice(0, 6)
        .map(Math.round)
        .join(", ")} ms`,
    );
  });
});
