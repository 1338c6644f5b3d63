import { describe, expect, it } from "vitest";
import type { CellValue } from "../../src/host/host";
import { readMe } from "../../src/samples/studio/readMe";
import { later } from "./later";
import { OpenedSite } from "./opened";

/** All cells of all sheets, by their names. */
type Cells = Record<string, readonly (readonly CellValue[])[]>;

/** The file's values come from Node, where roots and powers may end in another last digit than in a browser. */
const rounded = (cells: Cells) =>
  JSON.stringify(cells, (_, value) => (typeof value === "number" ? Number(value.toPrecision(12)) : value));

/** Reads all cells as the sheet is drawn, before any formula of it has run, and once more when all have. */
const READ_TWICE = `
  const cells = async (host) =>
    Object.fromEntries(await Promise.all((await host.sheetNames()).map(async (name) => [name, await host.readSheet(name)])));
  const read = async (spreadsheet) => {
    const { host, work } = spreadsheet;
    const before = await cells(host);
    await work;
    await host.tables();
    return { before, after: await cells(host) };
  };
  let spreadsheet;
  Object.defineProperty(window, "pourwright", {
    get: () => spreadsheet,
    set: (given) => {
      spreadsheet = given;
      window.twice = read(given);
    },
  });`;

/** Notes how long everything is put off until the sheet is drawn. */
const NOTE_WAITS = `
  const { setTimeout } = window;
  window.waits = [];
  window.setTimeout = (run, wait = 0, ...given) => {
    if (!("pourwright" in window)) window.waits.push(wait);
    return setTimeout(run, wait, ...given);
  };`;

const [TITLE] = readMe().cells.flatMap(({ content }) => (content && "text" in content ? [content.text] : []));

/** Notes whether the page took what is typed already when it first drew the title of the first sheet. */
const NOTE_DRAWING = `
  const { fillText } = CanvasRenderingContext2D.prototype;
  CanvasRenderingContext2D.prototype.fillText = function (text, ...place) {
    if (text === ${JSON.stringify(TITLE)}) window.wasReady ??= "pourwright" in window;
    fillText.call(this, text, ...place);
  };`;

describe("the first workbook", () => {
  const site = new OpenedSite();

  // 300: SingleUnitUIController of @univerjs/ui, version 0.25.1.
  it("is drawn without the 300 ms that Univer would wait before it", async () => {
    const page = await site.browser.newPage();
    await page.addInitScript(NOTE_WAITS);
    await page.goto(`${site.origin}/`);
    await page.waitForFunction(() => "pourwright" in window);
    const waits = await page.evaluate(() => (window as unknown as { waits: number[] }).waits);
    expect(waits).toContain(0);
    expect(waits).not.toContain(300);
    await page.close();
  });

  it("is drawn before what answers to her hands is made", async () => {
    const page = await site.browser.newPage();
    await page.addInitScript(NOTE_DRAWING);
    await page.goto(`${site.origin}/`);
    await page.waitForFunction(() => "wasReady" in window && "pourwright" in window);
    expect(await page.evaluate(() => (window as unknown as { wasReady: boolean }).wasReady)).toBe(false);
    await page.close();
  });

  it("knows what its functions do once all parts have come", async () => {
    const opened = await site.open();
    const { page } = opened;
    await later(page, () => window.pourwright.work);
    await opened.goTo("C3");
    await page.keyboard.type("=SUMIF");
    const list = page.locator("ul[data-u-comp=sheets-formula-editor]");
    // In the words of sheets-formula of @univerjs, locale en-US.
    await list.getByText("Adds the cells specified by a given criteria").waitFor();
    await page.keyboard.press("Escape");
  });

  it("holds as it is drawn what its formulas give when they have run", async () => {
    const page = await site.browser.newPage();
    await page.addInitScript(READ_TWICE);
    await page.goto(`${site.origin}/`);
    await page.waitForFunction(() => "twice" in window);
    const { before, after } = await later(
      page,
      () => (window as unknown as { twice: Promise<{ before: Cells; after: Cells }> }).twice,
    );
    // 17.5 x 0.86 = 15.05, by hand; the plan of pots fills rows below its formula.
    expect(before.Vessels?.[4]?.[4]).toBeCloseTo(15.05, 10);
    expect(before.Pots?.[19]?.[1]).toBe("Wide bowl");
    expect(rounded(before)).toEqual(rounded(after));
    await page.close();
  });
});
