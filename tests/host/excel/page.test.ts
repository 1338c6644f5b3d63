// @vitest-environment happy-dom
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, expect, it, vi } from "vitest";
import { STARTUP } from "../../../src/host/settingsKeys";
import { PLATFORMS, type Platform } from "./client/officeJs";
import { StandIn } from "./standIn";

// The page that Excel loads, with all that is in it, over the oldest Excel that loads it. Invented numbers.

afterEach(() => {
  vi.unstubAllGlobals();
  // Tests of the pane find their fields by the same ids.
  document.body.replaceChildren();
});

const html = readFileSync(join(import.meta.dirname, "../../../src/excelpage/pane.html"), "utf8");

const button = (words: RegExp): HTMLButtonElement | undefined =>
  [...document.querySelectorAll("button")].find(({ textContent }) => words.test(textContent ?? ""));

/** Presses a button once it is there and can be pressed. */
async function press(words: RegExp): Promise<void> {
  await expect.poll(() => button(words)?.disabled).toBe(false);
  button(words)?.click();
}

it("loads Microsoft's client in its head, before the functions and the pane", () => {
  const [head = "", body = ""] = html.split("</head>");
  expect(head).toContain('<script src="office/office.js"></script>');
  expect([...body.matchAll(/<script src="(.*?)"/g)].map(([, file]) => file)).toEqual(["functions.js", "pane.js"]);
});

it.each(Object.keys(PLATFORMS) as Platform[])(
  "in Excel, %s, reads the batch, writes the run sheet, enters stuck formulas again and takes back how the workbook opens",
  async (platform) => {
    const standIn = new StandIn({ platform }).install();
    standIn.book.answer = () => "#NAME?";
    const batch = standIn.table("Batch", "Batch", [
      ["Vessel", "Quantity", "Fill weight (g)"],
      ["Tin", 4, 120],
      ["Jar", 2, 200],
    ]);
    batch.enter(9, 0, "=POUR.FILLWEIGHT(120)");
    standIn.book.answer = () => 7;
    // Only entering it again brings a formula to life that was typed without the add-in.
    standIn.book.isLate = (formula) => formula === "=POUR.FILLWEIGHT(120)";
    document.body.innerHTML = /<body>([\s\S]*)<\/body>/.exec(html)?.[1]?.replace(/<script.*?<\/script>/g, "") ?? "";
    // Its own for each: it begins as soon as it is there.
    await import(/* @vite-ignore */ `../../../src/excelpage/excelPage.ts?in=${platform}`);

    await expect.poll(() => document.body.textContent).toContain("Ready");
    await press(/^Write run sheet/);
    await expect
      .poll(() => standIn.book.sheets.map(({ name }) => name.replace(/\d/g, "0")))
      .toContain("Run 0000-000-00");
    const [, run] = standIn.book.sheets;
    expect([...(run?.cells.values() ?? [])].map(({ value }) => value)).toEqual(expect.arrayContaining(["Tin", "Jar"]));
    expect(standIn.book.sheets[standIn.book.active]).toBe(run);

    await press(/#NAME\?/);
    await expect
      .poll(() => document.querySelector("#fix output")?.textContent)
      .toContain("1 formula was entered again");
    expect(batch.cell(9, 0)?.value).toBe(7);

    const said = () => document.querySelector("#startup output")?.textContent;
    await press(/^Open this workbook without Pourwright$/);
    await expect.poll(said).toContain("Excel opens this workbook without Pourwright");
    expect([standIn.book.startState, standIn.book.settings.get(STARTUP)]).toEqual(["Inactive", "without"]);
    await press(/^Open this workbook with Pourwright$/);
    await expect.poll(said).toContain("Excel loads Pourwright when this workbook is opened");
    expect([standIn.book.startState, standIn.book.settings.get(STARTUP)]).toEqual(["Background", "with"]);
    // Refused by Excel, the button offers the same again, and says why.
    standIn.failure = { sync: standIn.syncs + 1, done: "nothing", code: "AccessDenied" };
    await press(/^Open this workbook without Pourwright$/);
    await expect.poll(said).toContain("Excel could not change how this workbook is opened");
    await expect.poll(() => button(/^Open this workbook without Pourwright$/)?.disabled).toBe(false);
    expect(standIn.book.startState).toBe("Background");
  },
);
