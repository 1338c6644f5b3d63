import type { Browser, Page } from "playwright-core";
import type { CellValue, Source, SourceRows } from "../../src/host/host";
import type { Spreadsheet } from "../../src/host/univer/start";

/** The try-out page, driven by mouse and keyboard as a user does; only values are read from behind it. */
export class TryoutPage {
  /** Requests to anywhere but the site, missing files, faults of the page, console errors. There should be none. */
  readonly complaints: string[] = [];

  private constructor(readonly page: Page) {}

  static async open(browser: Browser, origin: string, { width = 1280, height = 800, dark = false } = {}) {
    const page = await browser.newPage({ viewport: { width, height }, colorScheme: dark ? "dark" : "light" });
    const tryout = new TryoutPage(page);
    page.on("request", (request) => {
      if (/^(data|blob):/.test(request.url()) || request.url().startsWith(`${origin}/`)) return;
      tryout.complaints.push(`request to ${request.url()}`);
    });
    page.on("response", (response) => {
      if (response.status() >= 400) tryout.complaints.push(`${response.status()} for ${response.url()}`);
    });
    page.on("pageerror", (error) => tryout.complaints.push(`page error: ${error.message}`));
    page.on("console", (message) => {
      if (message.type() === "error") tryout.complaints.push(`console: ${message.text()}`);
    });
    await page.goto(`${origin}/`);
    await page.waitForFunction(() => "pourwright" in window);
    return tryout;
  }

  close(): Promise<void> {
    return this.page.close();
  }

  /** Opens a sheet by its tab. */
  async openSheet(name: string): Promise<void> {
    await this.page.getByRole("tab", { name, exact: true }).click();
    await this.idle();
  }

  /** Goes to a cell such as `B6`, or selects a range such as `A4:C6`, of the open sheet by the name box. */
  async goTo(range: string): Promise<void> {
    const box = this.page.locator("[data-u-comp=defined-name] input");
    const [, letters = "", digits = ""] = /^([A-Z]+)(\d+)/.exec(range) ?? [];
    const column = [...letters].reduce((before, letter) => before * 26 + letter.charCodeAt(0) - 64, 0) - 1;
    // The box also follows the selection, so a late change of that one may overwrite what stands in it.
    for (let tries = 0; tries < 20; tries++) {
      await box.fill(range);
      await box.press("Enter");
      await this.idle();
      const selected = await this.page.evaluate(() => (window as unknown as Hook).pourwright.selectedCell());
      if (selected?.row === Number(digits) - 1 && selected.column === column) return;
    }
    throw new Error(`the name box does not lead to ${range}`);
  }

  /** Types into a cell of the open sheet and leaves it with Enter. */
  async type(cell: string, text: string): Promise<void> {
    await this.goTo(cell);
    await this.page.keyboard.type(text, { delay: 5 });
    await (text.startsWith("=") ? this.enterFormula() : this.enter());
  }

  /** Leaves the cell with the formula that is typed into it. */
  async enterFormula(): Promise<void> {
    // Enter would take one of the suggestions that a name still in the making brought up.
    await this.idle();
    await this.page.locator("ul[data-u-comp=sheets-formula-editor]").waitFor({ state: "detached" });
    await this.enter();
  }

  private async enter(): Promise<void> {
    await this.idle();
    await this.page.keyboard.press("Enter");
    await this.idle();
  }

  /** Resolves when the page has worked off what was asked of it. */
  async idle(): Promise<void> {
    await this.page.evaluate(() => new Promise<void>((idle) => requestIdleCallback(() => idle())));
  }

  /** The tables as the pane sees them, once all formulas are calculated. */
  tables(): Promise<Source[]> {
    return this.page.evaluate(() => (window as unknown as Hook).pourwright.host.tables());
  }

  /** The rows of a table, once all formulas are calculated. */
  async table(name: string): Promise<SourceRows> {
    return this.page.evaluate(async (wanted) => {
      const { host } = (window as unknown as Hook).pourwright;
      const source = (await host.tables()).find((one) => one.name === wanted);
      if (!source) throw new Error(`there is no table ${wanted}`);
      return host.read(source);
    }, name);
  }

  /** The exact values of a range of a sheet, rows and columns from 0, once all formulas are calculated. */
  async cells(sheet: string, row: number, column: number, rows = 1, columns = 1): Promise<CellValue[][]> {
    const all = await this.page.evaluate((name) => (window as unknown as Hook).pourwright.host.readSheet(name), sheet);
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => all[row + r]?.[column + c] ?? null),
    );
  }

  /** The names of the sheets, in order. */
  sheetNames(): Promise<string[]> {
    return this.page.evaluate(() => (window as unknown as Hook).pourwright.host.sheetNames());
  }

  /** The message for the selected cell in the strip under the sheet. */
  async message(): Promise<string> {
    return (await this.page.locator("#message").textContent()) ?? "";
  }

  /** The problems listed in the strip under the sheet. */
  problems(): Promise<string[]> {
    return this.page.locator("#problems li button").allTextContents();
  }
}

interface Hook {
  readonly pourwright: Spreadsheet;
}
