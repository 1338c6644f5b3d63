import type { Browser, Page } from "playwright-core";
import { buildRun } from "../../src/runsheet/buildRun";
import { FIRST_SETTINGS, type Settings } from "../../src/runsheet/settings";
import { describeRun } from "../../src/runsheet/sheet/describeRun";
import type { Tables } from "../../src/runsheet/tables/tableRows";
import type { CellValue, Sheet } from "../../src/sheet/sheet";
import type { TryoutPage } from "./page";

/** Invented names as makers write them, and as nobody should. */
export const NAMES = [
  "Straight-sided tumbler with the thick base and the cork lid, 30 cl, second choice",
  "=1+1",
  "<img src=x onerror=alert(1)>",
  "נר בכלי זכוכית גדול",
  "Donaudampfschifffahrtsgesellschaftskapitänskerzenglas",
] as const;

const SCENTS = ["Smoked cedar and dried orange peel on a winter's night", "Fig"] as const;

/** A run with everything a run sheet can hold: three pots for each scent, blends, steps, stock and prices. */
export function fullRun(paper: Settings["paper"], live = true): Sheet {
  const settings: Settings = { ...FIRST_SETTINGS, paper, live, potCapacity: 2500 };
  const table = <K extends keyof Tables>(kind: K, rows: CellValue[][], ...roles: string[]): NonNullable<Tables[K]> =>
    ({ type: kind, headings: [], rows, columns: Object.fromEntries(roles.map((role, i) => [role, i])) }) as never;
  const run = buildRun(
    {
      pour: table(
        "pour",
        SCENTS.flatMap((scent) => NAMES.map((name, i) => [name, 5 + i, 180 + i, scent, 0.08, "of wax"])),
        ...["vessel", "quantity", "fill", "scent", "load", "basis"],
      ),
      scents: table(
        "scents",
        SCENTS.map((scent) => [scent, 0.1, "75 C", "65 C", "55 C", 3, "93 C", 14]),
        ...["scent", "waxMaximum", "melt", "add", "pour", "stir", "flash", "cure"],
      ),
      recipes: table(
        "recipes",
        [
          ["Fig", "Rapeseed wax, pillar grade for the containers", 7, "part", "wax"],
          ["Fig", "Coconut wax", 3, "part", "wax"],
          ["Fig", "Fig oil", 0.08, "of wax", "scent"],
          ["Fig", "Green dye", 0.002, "of wax", "dye"],
        ],
        ...["scent", "ingredient", "share", "basis", "sort"],
      ),
    },
    settings,
  );
  return describeRun(run, { lot: "2026-330-01", date: 46352, settings });
}

/** Adds a sheet to the workbook of the page and gives the page of HTML that its print button prints. */
export async function printable(tryout: TryoutPage, sheet: Sheet): Promise<string> {
  return tryout.host("printable", await tryout.host("addSheet", sheet));
}

/** A page that holds this HTML as it is laid out for printing. */
export async function printPreview(browser: Browser, html: string): Promise<Page> {
  const page = await browser.newPage();
  await page.emulateMedia({ media: "print" });
  await page.setContent(html);
  return page;
}

/** What the browser saves as PDF, on the paper that the page asks for. */
export const pdfOf = (page: Page): Promise<Buffer> => page.pdf({ preferCSSPageSize: true });
