/** Univer with its open packages for sheets, as the page has it, but without drawing anything. */

import {
  IUniverInstanceService,
  type IWorkbookData,
  LocaleType,
  Univer,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { UniverFormulaEnginePlugin, UniverSheetsFormulaPlugin, UniverSheetsPlugin } from "@univerjs/preset-sheets-core";
import { UniverSheetsTablePlugin } from "@univerjs/preset-sheets-table";
import { UniverSheetsConditionalFormattingPlugin } from "@univerjs/sheets-conditional-formatting";
import { UniverSheetsDataValidationPlugin } from "@univerjs/sheets-data-validation";
import { UniverSheetsFilterPlugin } from "@univerjs/sheets-filter";
import { UniverSheetsHyperLinkPlugin } from "@univerjs/sheets-hyper-link";
import { UniverSheetsNotePlugin } from "@univerjs/sheets-note";
import { type Bundle, loadBundle } from "../../../src/engine/bundle";
import { executors } from "../../../src/engine/functions";
import { forgetOldMessages } from "../../../src/engine/problems";
import { knowTotals } from "../../../src/engine/tableParts";
import type { Book } from "../../../src/file/book";
import { Calculation } from "../../../src/host/univer/calculation";
import { keepOrderOfRules } from "../../../src/host/univer/editing/duplicating";
import { moveFarRules } from "../../../src/host/univer/editing/farRules";
import { followRenames } from "../../../src/host/univer/editing/renamedSheets";
import "../../../src/host/univer/editing/fixedRules";
import { fromUniver } from "../../../src/host/univer/file/fromUniver";
import { workedOut } from "../../../src/host/univer/file/workedOut";
import { totalsOf } from "../../../src/host/univer/placedTables";
import { snapshotOf } from "../../../src/host/univer/snapshot";

/** One function, for tests that need no built files: water times density. */
const FILLWEIGHT: Bundle = {
  script: 'CustomFunctions.associate("FILLWEIGHT", (water, density) => [[water[0][0] * density[0][0]]]);',
  metadata: JSON.stringify({
    functions: [
      {
        id: "FILLWEIGHT",
        name: "FILLWEIGHT",
        parameters: [
          { name: "water", dimensionality: "matrix" },
          { name: "density", dimensionality: "matrix" },
        ],
      },
    ],
  }),
};

export class UniverInNode {
  readonly univer = new Univer({ locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: {} } });
  readonly injector = this.univer.__getInjector();
  #calculation: Calculation | undefined;

  /** @param without a plugin that the page loads later */
  constructor(bundle: Bundle = FILLWEIGHT, without?: typeof UniverSheetsFilterPlugin) {
    const { univer } = this;
    const functions = executors(loadBundle(bundle));
    univer.registerPlugin(UniverFormulaEnginePlugin, { function: functions });
    univer.registerPlugin(UniverSheetsPlugin);
    univer.registerPlugin(UniverSheetsFormulaPlugin, { initialFormulaComputing: 0 });
    univer.registerPlugin(UniverSheetsTablePlugin);
    if (without !== UniverSheetsFilterPlugin) univer.registerPlugin(UniverSheetsFilterPlugin);
    univer.registerPlugin(UniverSheetsDataValidationPlugin);
    univer.registerPlugin(UniverSheetsConditionalFormattingPlugin);
    univer.registerPlugin(UniverSheetsNotePlugin);
    univer.registerPlugin(UniverSheetsHyperLinkPlugin);
  }

  /** Opens a workbook; resolves when its formulas are worked out. */
  async open(data: IWorkbookData): Promise<Workbook> {
    const workbook = this.univer.createUnit<IWorkbookData, Workbook>(UniverInstanceType.UNIVER_SHEET, data);
    if (!this.#calculation) {
      forgetOldMessages(this.injector);
      keepOrderOfRules(this.injector);
      moveFarRules(this.injector);
      followRenames(this.injector);
      knowTotals(this.injector, totalsOf(this.injector));
      this.#calculation = new Calculation(this.injector);
    }
    await this.settled();
    return workbook;
  }

  async settled(): Promise<void> {
    await this.#calculation?.settled();
  }

  /** What an open workbook is for a file now, as the page sends it to be saved. */
  book(workbook: Workbook, openedAs: Book | null): Book {
    const sent = structuredClone({
      data: snapshotOf(this.injector, workbook),
      worked: workedOut(this.injector, workbook),
    });
    return fromUniver(sent.data, openedAs, sent.worked);
  }

  close(workbook: Workbook): void {
    this.injector.get(IUniverInstanceService).disposeUnit(workbook.getUnitId());
  }

  dispose(): void {
    this.univer.dispose();
  }
}
