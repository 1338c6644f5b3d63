import { LocaleType, Univer, UniverInstanceType } from "@univerjs/core";
import { UniverFormulaEnginePlugin, UniverSheetsFormulaPlugin, UniverSheetsPlugin } from "@univerjs/preset-sheets-core";
import {
  ConditionalFormattingService,
  UniverSheetsConditionalFormattingPlugin,
} from "@univerjs/sheets-conditional-formatting";
import { expect, it, vi } from "vitest";
import { showConditions } from "../../../src/host/univer/lateConditions";
import { workbookData } from "../../../src/host/univer/workbook";

// The module brings the whole preset, whose menus need a page.
vi.mock("@univerjs/preset-sheets-conditional-formatting", () => import("@univerjs/sheets-conditional-formatting"));

const RULE = {
  cfId: "dear",
  ranges: [{ startRow: 0, endRow: 9, startColumn: 0, endColumn: 0 }],
  stopIfTrue: false,
  rule: {
    type: "highlightCell",
    subType: "number",
    operator: "greaterThan",
    value: 2,
    style: { bg: { rgb: "#FFC7CE" } },
  },
};

it("shows conditional formats of a workbook that was open before they loaded", async () => {
  const univer = new Univer({ locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: {} } });
  const injector = univer.__getInjector();
  univer.registerPlugin(UniverFormulaEnginePlugin);
  univer.registerPlugin(UniverSheetsPlugin);
  univer.registerPlugin(UniverSheetsFormulaPlugin);
  const data = workbookData("late-conditions", [
    { name: "Costs", widths: [], cells: [{ row: 0, column: 0, look: "input", content: { number: 3 } }] },
  ]);
  const sheetId = data.sheetOrder[0] as string;
  const resource = { name: "SHEET_CONDITIONAL_FORMATTING_PLUGIN", data: JSON.stringify({ [sheetId]: [RULE] }) };
  univer.createUnit(UniverInstanceType.UNIVER_SHEET, { ...data, resources: [...(data.resources ?? []), resource] });
  univer.registerPlugin(UniverSheetsConditionalFormattingPlugin);
  await vi.waitFor(() => expect(injector.has(ConditionalFormattingService)).toBe(true));
  injector.get(ConditionalFormattingService);

  showConditions(injector);
  await vi.waitFor(() =>
    expect(injector.get(ConditionalFormattingService).composeStyle(data.id, sheetId, 0, 0)).toMatchObject({
      style: { bg: { rgb: "#FFC7CE" } },
    }),
  );
  univer.dispose();
});
