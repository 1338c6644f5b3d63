import type { Page } from "playwright-core";
import { afterEach, beforeEach, expect, it } from "vitest";
import { OpenedSite } from "./opened";

const site = new OpenedSite();
let page: Page;
/** What a user must never meet. */
let complaints: string[];
beforeEach(async () => {
  page = await site.browser.newPage({ viewport: { width: 320, height: 800 } });
  complaints = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("response", (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()} for ${response.url()}`);
    if (!response.url().startsWith(`${site.origin}/`)) complaints.push(`an answer from ${response.url()}`);
  });
});
afterEach(() => page.close());

it("opened outside Excel, the pane says where it belongs, and nothing leaves the machine", async () => {
  const refused = page.waitForEvent("console", (message) => message.text().includes("frame-src 'self'"));
  await page.goto(`${site.origin}/pane.html`);
  await page.getByText("This page works inside Excel").waitFor();
  expect(await page.getByRole("link", { name: "page with a spreadsheet of its own" }).getAttribute("href")).toBe(
    "index.html",
  );
  expect(await page.locator("#fix").isVisible()).toBe(false);
  // The frame by which office.js reports; without the page's rule it would have been asked for.
  await refused;
  expect(complaints).toEqual([]);
});

it("says which part is missing when office.js did not load", async () => {
  await page.route("**/office.js", (route) => route.abort());
  await page.goto(`${site.origin}/pane.html`);
  await page.getByText("did not load: office/office.js").waitFor();
});

/** Enough of Office to open the pane in an Excel that refuses everything. */
const LOCKED_EXCEL = `
  var refused = () => Promise.reject(Object.assign(new Error("no"), { code: "AccessDenied" }));
  var Office = {
    onReady: async () => ({ host: "Excel" }),
    HostType: { Excel: "Excel" },
    StartupBehavior: { load: "Load" },
    addin: { setStartupBehavior: refused },
  };
  var Excel = { run: refused };
  var CustomFunctions = { associate() {} };`;

it("opens the pane in Excel, and words what Excel refuses", async () => {
  await page.route("**/office.js", (route) => route.fulfill({ contentType: "text/javascript", body: LOCKED_EXCEL }));
  await page.goto(`${site.origin}/pane.html`);
  await page.locator("#pane h1").first().waitFor();
  // The pane asks for both at once, and shows the refusal that came last.
  await page
    .getByText(/Excel could not (list the tables|read the settings): the workbook or the sheet is protected/)
    .first()
    .waitFor();
  await page.getByRole("button", { name: "Fix formulas" }).click();
  await page.locator("#fix output").getByText("Excel could not fix the formulas: the workbook").waitFor();
  expect(complaints).toEqual([]);
});

it("says what to do when Excel has not answered for 10 seconds", async () => {
  const silent = "var Office = { onReady: () => new Promise(() => {}) }; var CustomFunctions = { associate() {} };";
  await page.route("**/office.js", (route) => route.fulfill({ contentType: "text/javascript", body: silent }));
  await page.clock.install();
  await page.goto(`${site.origin}/pane.html`);
  await page.clock.fastForward(9_000);
  expect(await page.locator("#pane").textContent()).toBe("");
  await page.clock.fastForward(1_000);
  await page.getByText("Excel has not answered for 10 seconds").waitFor();
});
