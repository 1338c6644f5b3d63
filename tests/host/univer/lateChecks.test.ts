import { DataValidationStatus } from "@univerjs/core";
import {
  SheetsDataValidationValidatorService,
  UniverSheetsDataValidationPlugin,
} from "@univerjs/preset-sheets-data-validation";
import { describe, expect, it, vi } from "vitest";
import "../../../src/host/univer/editing/lateChecks";
import { Headless } from "./headless";

// Its drawing part, which comes along, asks for this as it loads; nothing is drawn.
vi.hoisted(() => vi.stubGlobal("Path2D", class {}));

/** A batch whose one vessel is chosen from its own column. */
const BATCH = {
  name: "Batch",
  widths: [],
  cells: ["Vessel", "Tin"].map((text, row) => ({ row, column: 0, content: { text } })),
  tables: [
    {
      name: "Batch",
      row: 0,
      column: 0,
      headings: ["Vessel"],
      rows: 1,
      choices: [{ heading: "Vessel", from: "Batch", column: "Vessel" }],
    },
  ],
};

describe("checks of cells that come late", () => {
  const page = new Headless([BATCH], [UniverSheetsDataValidationPlugin]);
  const checks = page.injector.get(SheetsDataValidationValidatorService);
  const range = { startRow: 1, endRow: 1, startColumn: 0, endColumn: 0 };

  it("are done while workbook and sheet are there", async () => {
    const { unitId, subUnitId } = page.ids;
    expect((await checks.validatorRanges(unitId, subUnitId, [range])).flat()).toContain(DataValidationStatus.VALID);
  });

  it("find nothing, and are no fault, once the sheet or the workbook has gone", async () => {
    expect(await checks.validatorRanges(page.ids.unitId, "gone", [range])).toEqual([]);
    expect(await checks.validatorRanges("gone", "gone", [range])).toEqual([]);
  });
});
