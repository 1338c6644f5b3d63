/** Pictures to look at, in .cache/screenshots: the pane in its states, and run sheets as they are printed. */

import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { columnLetters } from "../../src/sheet/columnLetters";
import { launch, serveBuilt } from "./launch";
import { TryoutPage } from "./page";
import { fullRun, pdfOf, printable, printPreview } from "./printed";

const FOLDER = fileURLToPath(new URL("../../.cache/screenshots", import.meta.url));

/** The narrow page scrolls; the wide one is made high enough to show the whole pane. */
const SIZES = [
  { width: 320, height: 800 },
  { width: 1280, height: 2800 },
] as const;
const COLOURS = ["light", "dark", "forced"] as const;

/** How the pane gets from each state to the next one, beginning with a page that was just opened. */
const STATES: readonly [name: string, reach: (tryout: TryoutPage) => Promise<void>][] = [
  ["1-ready", ({ page }) => page.locator("button:enabled", { hasText: "Write run sheet" }).waitFor()],
  [
    "2-problems",
    async (tryout) => {
      const { place, headings } = await tryout.table("Batch");
      await tryout.openSheet(place.sheet);
      const quantity = columnLetters(place.column + headings.indexOf("Quantity"));
      await tryout.type(`${quantity}${place.row + 2}`, "1.5");
      await tryout.page.getByRole("button", { name: "Fix row" }).first().waitFor();
    },
  ],
  [
    "3-wrong-field",
    async (tryout) => {
      await tryout.goTo("A1");
      await tryout.page.keyboard.press("Control+z");
      await tryout.page.getByRole("button", { name: "Fix row" }).first().waitFor({ state: "detached" });
      await tryout.openSettings();
      await tryout.page.getByLabel("Default load").fill("6");
      await tryout.page.getByText("6 means 600 %").waitFor();
    },
  ],
  [
    "4-written",
    async ({ page }) => {
      await page.getByLabel("Default load").fill("6%");
      await page.getByRole("button", { name: "Write run sheet" }).click();
      await page.getByText("Run sheet written").waitFor();
    },
  ],
  [
    "5-empty-workbook",
    async (tryout) => {
      await tryout.openWorkbook("An empty workbook");
      await tryout.page.getByRole("button", { name: "Add starter tables" }).waitFor();
    },
  ],
];

async function takePictures(browser: Browser, origin: string): Promise<void> {
  for (const size of SIZES) {
    for (const colours of COLOURS) {
      const tryout = await new TryoutPage().open(browser, origin, { ...size, dark: colours === "dark" });
      if (colours === "forced") await tryout.page.emulateMedia({ forcedColors: "active" });
      for (const [name, reach] of STATES) {
        await reach(tryout);
        await tryout.idle();
        const path = join(FOLDER, `pane-${name}-${size.width}-${colours}.png`);
        await tryout.page.screenshot({ path, fullPage: true });
      }
      await tryout.close();
    }
  }
}

async function print(browser: Browser, origin: string): Promise<void> {
  const tryout = await new TryoutPage().open(browser, origin);
  await tryout.tables();
  for (const paper of ["letter", "a4"] as const) {
    const page = await printPreview(browser, await printable(tryout, fullRun(paper)));
    writeFileSync(join(FOLDER, `run-sheet-${paper}.pdf`), await pdfOf(page));
    await page.close();
  }
  await tryout.close();
}

const [browser, site] = await Promise.all([launch(), serveBuilt()]);
try {
  rmSync(FOLDER, { recursive: true, force: true });
  mkdirSync(FOLDER, { recursive: true });
  await takePictures(browser, site.address);
  await print(browser, site.address);
  console.log(`See ${FOLDER}`);
} finally {
  await browser.close();
  await site.stop();
}
