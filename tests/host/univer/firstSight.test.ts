import type { Injector } from "@univerjs/core";
import { FormulaCalculationSessionController, TriggerCalculationController } from "@univerjs/preset-sheets-core";
import { describe, expect, it } from "vitest";
import { calculateWhileDrawing } from "../../../src/host/univer/firstSight";

describe("the first workbook", () => {
  // In Node Univer begins by itself; drawnSoon.test.ts opens the page.
  it("begins to be worked out at once, with what notes its results listening before", () => {
    const begun: unknown[] = [];
    calculateWhileDrawing({ get: (part: unknown) => begun.push(part) } as unknown as Injector);
    expect(begun).toEqual([FormulaCalculationSessionController, TriggerCalculationController]);
  });
});
