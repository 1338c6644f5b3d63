import type { Browser, BrowserContext, Locator } from "playwright-core";
import { afterEach } from "vitest";
import { OpenedSite } from "./opened";
import { TryoutPage } from "./page";

/** Tabs of a user, there for the tests of the file that makes it; what they share ends with the test. */
export class Tabs {
  readonly site = new OpenedSite();
  private readonly contexts: BrowserContext[] = [];

  constructor() {
    afterEach(async () => {
      for (const context of this.contexts.splice(0)) await context.close();
    });
  }

  /** Pages that share one storage, as the tabs of a user do. */
  async profile(): Promise<BrowserContext> {
    const context = await this.site.browser.newContext({ viewport: { width: 1280, height: 800 } });
    this.contexts.push(context);
    return context;
  }

  /** The page in a new tab. `isNew` where nothing is kept yet. */
  async tab(context: BrowserContext, isNew = false): Promise<TryoutPage> {
    const tryout = new TryoutPage();
    const browser = { newPage: () => context.newPage() } as unknown as Browser;
    await tryout.open(browser, this.site.origin, { isNew: !isNew });
    return tryout;
  }
}

/** What is said at once when something is not kept. */
export const alert = ({ page }: TryoutPage) => page.locator("#unkept").textContent();

/** Resolves once all that was done is kept. */
export const settled = ({ page }: TryoutPage) => page.locator("#kept.safe").waitFor();

export async function reload({ page }: TryoutPage): Promise<void> {
  await page.reload();
  await page.waitForFunction(() => "pourwright" in window);
}

/** What a cell shows once all formulas are calculated. */
export const cell = async (tryout: TryoutPage, sheet: string, row: number, column: number) =>
  (await tryout.cells(sheet, row, column))[0]?.[0];

export async function openList({ page }: TryoutPage): Promise<Locator> {
  await page.getByRole("button", { name: "My workbooks" }).click();
  const list = page.getByRole("dialog", { name: "My workbooks" });
  await list.waitFor();
  return list;
}

export const names = (list: Locator) => list.locator(".name").allTextContents();
