import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser, Locator, Page } from "playwright-core";
import type { CellValue, Source, SourceRows } from "../../src/host/host";
import type { UniverHost } from "../../src/host/univer/adapter";
import type { Spreadsheet } from "../../src/host/univer/start";
import { later } from "./later";

declare global {
  interface Window {
    readonly pourwright: Spreadsheet;
    readonly axe: typeof import("axe-core");
  }
}

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** For conditions that come late on a busy machine: only one that never comes meets its end. */
export const PATIENCE = { timeout: 240_000 };

export interface PageSize {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  /** Whether the ways to begin are left as a newcomer finds them; else the demo is chosen. */
  readonly isNew?: boolean;
}

/** The host's methods that take and give plain data. */
type Method = Exclude<keyof UniverHost, "onChange" | "mostFormulas">;
type Given<M extends Method> = Parameters<UniverHost[M]>;
type Answer<M extends Method> = Awaited<ReturnType<UniverHost[M]>>;

/** Row and column from 0 of a cell such as `B6`, or of the first one of a range. */
function placeOf(range: string): { readonly row: number; readonly column: number } {
  const [, letters = "", digits = ""] = /^([A-Z]+)(\d+)/.exec(range) ?? [];
  const column = [...letters].reduce((before, letter) => before * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { row: Number(digits) - 1, column };
}

/** The page, driven by mouse and keyboard as a user does; only values are read from behind it. */
export class TryoutPage {
  /** Requests to anywhere but the site, missing files, faults of the page, console errors. There should be none. */
  readonly complaints: string[] = [];

  /** Set once the page is opened. */
  page!: Page;

  async open(
    browser: Browser,
    origin: string,
    { width = 1280, height = 800, dark = false, isNew = false }: PageSize = {},
  ): Promise<this> {
    const page = await browser.newPage({ viewport: { width, height }, colorScheme: dark ? "dark" : "light" });
    this.page = page;
    page.on("request", (request) => {
      if (/^(data|blob):/.test(request.url()) || request.url().startsWith(`${origin}/`)) return;
      this.complaints.push(`request to ${request.url()}`);
    });
    page.on("response", (response) => {
      if (response.status() >= 400) this.complaints.push(`${response.status()} for ${response.url()}`);
    });
    page.on("pageerror", (error) => this.complaints.push(`page error: ${error.message}`));
    page.on("console", (message) => {
      // Univer keeps entries of formulas that were registered anew, skips them, and says so.
      const isNoise = message.text().startsWith("Dependency tree not found for treeId");
      if (message.type() === "error" && !isNoise) this.complaints.push(`console: ${message.text()}`);
    });
    await page.goto(`${origin}/`);
    await page.waitForFunction(() => "pourwright" in window);
    if (!isNew) await page.getByRole("button", { name: "Look at the demo" }).click();
    return this;
  }

  /** Gives the open page another size, as a user does who turns a phone or changes to dark. */
  async resize({ width = 1280, height = 800, dark = false }: Omit<PageSize, "isNew">): Promise<void> {
    await this.page.setViewportSize({ width, height });
    await this.page.emulateMedia({ colorScheme: dark ? "dark" : "light" });
    await this.idle();
  }

  close(): Promise<void> {
    return this.page.close();
  }

  /** What a person would look at to say why the page does not go on. */
  async seen(): Promise<string> {
    if (!this.page || this.page.isClosed()) return "The page is closed.";
    return this.page.evaluate(() => {
      const said = (selector: string) =>
        [...document.querySelectorAll<HTMLElement>(selector)].map((one) => one.textContent);
      const { activeElement } = document;
      const focus = `${activeElement?.outerHTML.slice(0, 200)}${document.hasFocus() ? "" : " (the page has no focus)"}`;
      return JSON.stringify({
        focus,
        dialogs: said("dialog[open], [role=dialog]"),
        files: said("#files"),
        alerts: said("[role=alert]"),
      });
    });
  }

  /** Begins a new workbook, by what the list behind New calls it. */
  async openWorkbook(title: string): Promise<void> {
    await this.page.getByRole("button", { name: "New", exact: true }).click();
    await this.page.getByRole("button", { name: title, exact: true }).click();
    await this.page.locator("#beginnings").waitFor({ state: "hidden" });
    await this.idle();
  }

  /** Goes back to a workbook of the list, as it was left. */
  async comeBackTo(name: string): Promise<void> {
    await this.page.getByRole("button", { name: "My workbooks" }).click();
    await this.page.getByRole("dialog", { name: "My workbooks" }).getByRole("button", { name, exact: true }).click();
    await this.page.locator("#name").getByText(name, { exact: true }).waitFor();
    await this.idle();
  }

  /** Shows another view of the pane: Plan, Log, Stock or Trace. */
  async openView(name: string): Promise<void> {
    await this.page.locator(".pourwright-pane").getByRole("tab", { name, exact: true }).click();
  }

  /** Presses a button of the pane, in whichever view it is. */
  async press(name: string): Promise<void> {
    const pane = this.page.locator(".pourwright-pane");
    if (name === "Write run sheet") await this.openView("Plan");
    const button = pane.getByRole("button", { name, exact: true, includeHidden: true });
    const tab = await button.evaluate((one) => one.closest("[role=tabpanel]")?.getAttribute("aria-labelledby"));
    if (tab) await pane.locator(`#${tab}`).click();
    await button.click();
  }

  /** Unfolds the pane's settings. */
  async openSettings(): Promise<void> {
    await this.openView("Plan");
    const settings = this.page.locator(".pourwright-pane .settings");
    if (!(await settings.evaluate((details: HTMLDetailsElement) => details.open))) {
      await settings.locator("summary").click();
    }
  }

  /** Opens a sheet by its tab. */
  async openSheet(name: string): Promise<void> {
    // The pane has tabs too, which may bear the name of a sheet.
    await this.page.getByRole("tablist", { name: "Sheet tabs" }).getByRole("tab", { name, exact: true }).click();
    await this.idle();
  }

  /** Where Univer shows the selected cell. */
  get nameBox(): Locator {
    return this.page.locator("[data-u-comp=defined-name] input");
  }

  /** Goes to a cell such as `B6`, or selects a range such as `A4:C6`, of the open sheet by the name box. */
  async goTo(range: string): Promise<void> {
    const { row, column } = placeOf(range);
    // The box also follows the selection, so a late change of that one may overwrite what stands in it.
    for (let tries = 0; tries < 20; tries++) {
      await this.nameBox.fill(range);
      await this.nameBox.press("Enter");
      await this.idle();
      const selected = await this.page.evaluate(() => window.pourwright.selectedCell());
      if (selected?.row === row && selected.column === column) return;
    }
    throw new Error(`the name box does not lead to ${range}`);
  }

  /** Opens the menu of a row of the open sheet, by its number from 1, at the row's own heading. */
  async openRowMenu(row: number): Promise<void> {
    const canvas = await this.page.locator("canvas[id^=univer-sheet-main-canvas]").boundingBox();
    const [left, top] = [canvas?.x ?? 0, canvas?.y ?? 0];
    const rowAt = async (down: number): Promise<number> => {
      await this.page.mouse.click(left + 60, top + down);
      await this.idle();
      return Number(/\d+/.exec(await this.nameBox.inputValue()));
    };
    // Halved until its upper edge is at most six pixels above: near an edge no menu opens.
    let [above, below] = [0, canvas?.height ?? 0];
    while (below - above > 6) {
      const middle = (above + below) / 2;
      if ((await rowAt(middle)) < row) above = middle;
      else below = middle;
    }
    if ((await rowAt(below)) !== row) throw new Error(`row ${row} is not on the screen`);
    await this.page.mouse.click(left + 20, top + below + 8, { button: "right" });
  }

  /** Types into a cell of the open sheet and leaves it with Enter. */
  async type(cell: string, text: string): Promise<void> {
    await this.goTo(cell);
    // The first key opens the cell. Key by key the rest would take Univer most of a test's time.
    await this.page.keyboard.press(text.charAt(0));
    await this.editing(true);
    await this.page.keyboard.insertText(text.slice(1));
    await (text.startsWith("=") ? this.enterFormula() : this.enter());
  }

  /** Fills cells from this one on with what another program put on the clipboard: rows of texts, numbers or shares. */
  async paste(cell: string, rows: readonly (readonly (string | number)[])[]): Promise<void> {
    await this.page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await this.goTo(cell);
    const text = rows.map((row) => row.join("\t")).join("\n");
    await later(this.page, (text) => navigator.clipboard.writeText(text), text);
    // The browser hands the clipboard over in its own time: what was pasted has come when a cell of it is another one.
    const sheet = await this.host("activeSheet");
    const { row, column } = placeOf(cell);
    const first = rows
      .flatMap((values, r) => values.map((value, c) => ({ r, c, value })))
      .find(({ value }) => value !== "");
    if (!first) throw new Error("nothing is to be pasted");
    const held = async () => (await this.cells(sheet, row + first.r, column + first.c))[0]?.[0];
    const before = await held();
    await this.page.keyboard.press("Control+v");
    const end = Date.now() + PATIENCE.timeout;
    for (let now = await held(); now === before && now !== first.value; now = await held()) {
      if (Date.now() > end) throw new Error(`what was pasted into ${cell} has not come`);
    }
    await this.idle();
  }

  /** Pastes from a cell on what another program put on the clipboard, plain and as HTML, whatever comes of it. */
  async pasteFrom(cell: string, text: string, html = ""): Promise<void> {
    await this.page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await later(
      this.page,
      ([plain, rich]) => {
        const parts = { "text/plain": plain, ...(rich && { "text/html": rich }) };
        const blobs = Object.entries(parts).map(([type, part]) => [type, new Blob([part], { type })]);
        return navigator.clipboard.write([new ClipboardItem(Object.fromEntries(blobs))]);
      },
      [text, html] as const,
    );
    await this.goTo(cell);
    await this.page.keyboard.press("Control+V");
    await this.idle();
  }

  /** What Undo says that it takes back. */
  undoWords(): Promise<string | null> {
    const undo = this.page.locator("[data-u-command='univer.command.undo'] [aria-label]");
    return undo.first().getAttribute("aria-label");
  }

  /** Leaves the cell with the formula that is typed into it. */
  async enterFormula(): Promise<void> {
    // Enter would take one of the suggestions that a name still in the making brought up.
    await this.idle();
    await this.page.locator("ul[data-u-comp=sheets-formula-editor]").waitFor({ state: "detached" });
    await this.enter();
  }

  /** Opens the selected cell for editing, as it is, and leaves it with Enter. */
  async enterAgain(): Promise<void> {
    await this.page.keyboard.press("F2");
    await this.enter();
  }

  private async enter(): Promise<void> {
    await this.editing(true);
    await this.idle();
    await this.page.keyboard.press("Enter");
    await this.editing(false);
    await this.idle();
  }

  /** Resolves when a cell is being edited, or none any more: its editor stands far outside the page then. */
  private async editing(wanted: boolean): Promise<void> {
    await this.page.waitForFunction((open) => {
      const editor = document.getElementById("__editor___INTERNAL_EDITOR__DOCS_NORMAL");
      return editor !== null && editor.getBoundingClientRect().left > -900 === open;
    }, wanted);
  }

  /** Resolves when the page has worked off what was asked of it. */
  async idle(): Promise<void> {
    await later(this.page, () => new Promise<void>((idle) => requestIdleCallback(() => idle())));
  }

  /** What a method of the page's host gives; rejects with the message that a user would see. */
  async host<M extends Method>(method: M, ...given: Given<M>): Promise<Answer<M>> {
    const answer = await later(
      this.page,
      ([name, all]) => {
        const host = window.pourwright.host as unknown as Record<string, (...all: unknown[]) => Promise<unknown>>;
        return host[name]?.(...all);
      },
      [method as string, given as unknown[]] as const,
    );
    return answer as Answer<M>;
  }

  /** The tables as the pane sees them, once all formulas are calculated. */
  tables(): Promise<Source[]> {
    return this.host("tables");
  }

  /** The rows of a table, once all formulas are calculated. */
  async table(name: string): Promise<SourceRows> {
    const source = (await this.tables()).find((one) => one.name === name);
    if (!source) throw new Error(`there is no table ${name}`);
    return this.host("read", source);
  }

  /** The exact values of a range of a sheet, rows and columns from 0, once all formulas are calculated. */
  async cells(sheet: string, row: number, column: number, rows = 1, columns = 1): Promise<CellValue[][]> {
    const all = await this.host("readSheet", sheet);
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => all[row + r]?.[column + c] ?? null),
    );
  }

  /** The names of the sheets, in order. */
  sheetNames(): Promise<string[]> {
    return this.host("sheetNames");
  }

  /** The message for the selected cell in the strip under the sheet. */
  async message(): Promise<string> {
    return (await this.page.locator("#message").textContent()) ?? "";
  }

  /** The problems listed in the strip under the sheet. */
  problems(): Promise<string[]> {
    return this.page.locator("#problems li button").allTextContents();
  }

  /** What axe finds wrong in this part of the page. */
  async faults(part: string | { readonly include?: string[]; readonly exclude: string[] }): Promise<string[]> {
    if (!(await this.page.evaluate(() => "axe" in window))) await this.page.evaluate(AXE);
    return later(
      this.page,
      async (where) => {
        // What is still fading in has colours of its own.
        const ending = document
          .getAnimations()
          .filter(({ effect }) => effect?.getComputedTiming().endTime !== Number.POSITIVE_INFINITY);
        await Promise.allSettled(ending.map(({ finished }) => finished));
        const { violations } = await window.axe.run(where);
        return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
      },
      part,
    );
  }
}
