import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";
import type { Running } from "../../src/build/server";
import { launch, serveBuilt } from "./launch";
import { type PageSize, TryoutPage } from "./page";

/** One for all files that a worker takes: it ends with the worker. */
let started: Promise<[Browser, Running]> | undefined;

/** A browser and the built site, there for the tests of the file or block that makes it. */
export class OpenedSite {
  browser!: Browser;
  origin = "";
  private readonly opened: TryoutPage[] = [];

  constructor() {
    beforeAll(async () => {
      started ??= Promise.all([launch(), serveBuilt()]);
      const [browser, { address }] = await started;
      this.browser = browser;
      this.origin = address;
    });
    // Whatever a test does, its pages stay without a fault and ask for nothing elsewhere.
    afterEach(async ({ task }) => {
      if (task.result?.state === "fail") for (const one of this.opened) console.error(await one.seen());
      for (const { complaints } of this.opened) expect(complaints.splice(0)).toEqual([]);
    });
    // An open page draws on, though nobody looks.
    afterAll(async () => {
      for (const { page } of this.opened) await page?.close();
    });
  }

  /** The page, opened anew. */
  async open(size?: PageSize): Promise<TryoutPage> {
    const tryout = await new TryoutPage().open(this.browser, this.origin, size);
    this.opened.push(tryout);
    return tryout;
  }

  /** One page for all tests of the file or block. */
  page(size?: PageSize): TryoutPage {
    const tryout = new TryoutPage();
    this.opened.push(tryout);
    beforeAll(async () => {
      await tryout.open(this.browser, this.origin, size);
    });
    afterAll(() => tryout.page?.close());
    return tryout;
  }
}
