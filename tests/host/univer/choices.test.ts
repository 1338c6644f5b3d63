import { IResourceManagerService } from "@univerjs/core";
import {
  SheetsDataValidationValidatorService,
  UniverSheetsDataValidationPlugin,
} from "@univerjs/preset-sheets-data-validation";
import { describe, expect, it, vi } from "vitest";
import { addRules, CHECKS_RESOURCE, choiceRules } from "../../../src/host/univer/editing/choices";
import "../../../src/host/univer/editing/listCorrections";
import { followEdits } from "../../../src/host/univer/editing/edits";
import { growTables } from "../../../src/host/univer/editing/growTables";
import { starterSheets } from "../../../src/runsheet/sheet/starterSheets";
import { TABLE_TYPES } from "../../../src/runsheet/tables/registry";
import { SAMPLES } from "../../../src/samples/index";
import type { Cell, Sheet } from "../../../src/sheet/sheet";
import { tableSheet } from "../../../src/sheet/tableSheet";
import { Headless } from "./headless";

const named = (
  name: string,
  heading: string,
  values: string[],
  choices: NonNullable<Sheet["tables"]>[0]["choices"] = [],
): Sheet => ({
  name: `My ${name}`,
  widths: [],
  cells: [heading, ...values].map((text, row): Cell => ({ row, column: 0, content: { text } })),
  tables: [{ name, row: 0, column: 0, headings: [heading], rows: values.length, choices }],
});

// Its drawing part, which comes along, asks for this as it loads; nothing is drawn.
vi.hoisted(() => vi.stubGlobal("Path2D", class {}));

/** Vessels Tin and Jar, and a batch that names them. */
const SHEETS = [
  named("Vessels", "Vessel", ["Tin", "Jar"]),
  named("Batch", "Vessel", ["Jar"], [{ heading: "Vessel", from: "Vessels", column: "Vessel" }]),
];

const open = (sheets = SHEETS): Headless => {
  const page = new Headless(sheets, [UniverSheetsDataValidationPlugin]);
  followEdits(page.injector, (edit) => growTables(page.injector, edit));
  return page;
};

const rules = (
  page: Headless,
): Record<string, { uid: string; formula1: string; ranges: { startRow: number; endRow: number }[] }[]> => {
  const hooks = page.injector.get(IResourceManagerService).getAllResourceHooks();
  return JSON.parse(hooks.find(({ pluginName }) => pluginName === CHECKS_RESOURCE)?.toJson(page.ids.unitId) || "{}");
};

describe("choices in a table's cells", () => {
  it("are those that the other table knows, and what is not among them is marked, not refused", () => {
    expect(rules(open()).sheet2).toMatchObject([
      {
        type: "list",
        formula1: "='My Vessels'!$A$2:$A$3",
        ranges: [{ startRow: 1, endRow: 1, startColumn: 0, endColumn: 0 }],
        // Univer's DataValidationErrorStyle.WARNING; STOP would be 1.
        errorStyle: 2,
        allowBlank: true,
      },
    ]);
  });

  it("are left out where that table or its column is not there", () => {
    const batch = SHEETS[1]?.tables?.[0];
    if (!batch) throw new Error("no table");
    expect(choiceRules(batch, [])).toEqual([]);
    const other = { name: "Vessels", sheet: "V", row: 0, column: 0, headings: ["Jar"], rows: 2 };
    expect(choiceRules(batch, [other])).toEqual([]);
  });

  it("follow the table that knows them as it grows, and go on in the rows that the other one takes in", async () => {
    const page = open();
    // Two new vessels below the two there were.
    await page.enter(3, 0, [["Cup"], ["Bowl"]]);
    expect(rules(page).sheet2?.[0]?.formula1).toBe("='My Vessels'!$A$2:$A$5");
    page.workbook.setActiveSheet(page.workbook.getSheetBySheetId("sheet2") as never);
    await page.enter(2, 0, [["Cup"]]);
    expect(rules(page).sheet2?.[0]?.ranges).toMatchObject([{ startRow: 1, endRow: 2 }]);
  });

  it.each([
    ["tin", "valid"],
    [" JAR ", "valid"],
    ["Lid", "invalid"],
    ["Example: write over it", "invalid"],
  ])("take %s as %s: in capitals or not, and no example", async (typed, status) => {
    const [vessels, batch] = [named("Vessels", "Vessel", ["Tin", "Jar", "Example: write over it"]), SHEETS[1] as Sheet];
    const page = open([vessels, batch]);
    const checks = page.injector.get(SheetsDataValidationValidatorService);
    page.workbook.setActiveSheet(page.workbook.getSheetBySheetId("sheet2") as never);
    // The list is read in one of the next turns.
    await page.enter(1, 0, [["Tin"]]);
    await vi.waitFor(async () => expect(await checks.validatorCell(page.ids.unitId, "sheet2", 1, 0)).toBe("valid"));
    await page.enter(1, 0, [[typed]]);
    expect(await checks.validatorCell(page.ids.unitId, "sheet2", 1, 0)).toBe(status);
  });

  it("may be words, of which the starter of burn tests offers the products that are known", async () => {
    const { columns } = TABLE_TYPES.burnTests.starter("g", () => undefined, []);
    const sheet = tableSheet({ name: "Tests", table: "BurnTests", columns }, [[]]);
    const page = open([...SHEETS, sheet]);
    const product = columns.findIndex(({ heading }) => heading === "Product");
    expect(rules(page).sheet3?.map(({ formula1 }) => formula1)).toEqual([
      "='My Vessels'!$A$2:$A$3",
      "container,tea light",
    ]);
    const checks = page.injector.get(SheetsDataValidationValidatorService);
    page.workbook.setActiveSheet(page.workbook.getSheetBySheetId("sheet3") as never);
    for (const [typed, status] of [
      ["tea light", "valid"],
      ["pillar", "invalid"],
    ] as const) {
      await page.enter(1, product, [[typed]]);
      await vi.waitFor(async () =>
        expect(await checks.validatorCell(page.ids.unitId, "sheet3", 1, product)).toBe(status),
      );
    }
  });

  it("wait in the workbook while the part that shows them has not loaded", () => {
    const page = new Headless(SHEETS);
    addRules(page.injector, page.workbook, "sheet1", [{ uid: "x" }]);
    const waiting = page.workbook.getSnapshot().resources?.find(({ name }) => name === CHECKS_RESOURCE);
    const held = JSON.parse(waiting?.data ?? "{}");
    expect([held.sheet1, held.sheet2.length]).toEqual([[{ uid: "x" }], 1]);
  });

  it("of the starter tables and of the samples name tables and columns that are there", () => {
    for (const sheets of [starterSheets("g"), ...SAMPLES.map((sample) => sample.sheets())]) {
      const tables = sheets.flatMap((sheet) => (sheet.tables ?? []).map((table) => ({ ...table, sheet: sheet.name })));
      for (const table of tables) expect(choiceRules(table, tables)).toHaveLength(table.choices?.length ?? 0);
    }
    const batch = starterSheets("g").find(({ name }) => name === "Batch")?.tables?.[0];
    expect(batch?.choices?.map(({ heading }) => heading)).toEqual(["Vessel", "Scent"]);
  });

  it("of the samples hold what stands in their cells", () => {
    for (const sample of SAMPLES) {
      const sheets = sample.sheets();
      const texts = (table: string, heading: string): string[] => {
        const sheet = sheets.find((one) => one.tables?.some(({ name }) => name === table));
        const own = sheet?.tables?.find(({ name }) => name === table);
        const column = own ? own.column + own.headings.indexOf(heading) : -1;
        return (sheet?.cells ?? []).flatMap(({ row, column: at, content }) =>
          own && at === column && row > own.row && row <= own.row + own.rows && content && "text" in content
            ? [content.text]
            : [],
        );
      };
      for (const table of sheets.flatMap((sheet) => sheet.tables ?? [])) {
        for (const choices of table.choices ?? []) {
          const known = "among" in choices ? choices.among : texts(choices.from, choices.column);
          expect(texts(table.name, choices.heading).filter((text) => !known.includes(text))).toEqual([]);
        }
      }
    }
  });
});
