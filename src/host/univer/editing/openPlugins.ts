/** What of the spreadsheet loads only once it is drawn: sorting, filters, finding, checks, formats, links, notes. */

import "@univerjs/preset-sheets-conditional-formatting/lib/index.css";
import "@univerjs/preset-sheets-data-validation/lib/index.css";
import "@univerjs/preset-sheets-filter/lib/index.css";
import "@univerjs/preset-sheets-find-replace/lib/index.css";
import "@univerjs/preset-sheets-hyper-link/lib/index.css";
import "@univerjs/preset-sheets-note/lib/index.css";
import "@univerjs/preset-sheets-sort/lib/index.css";
import "./editing.css";
import { LocaleService, LocaleType, merge, type Univer } from "@univerjs/core";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import conditionTexts from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import validationTexts from "@univerjs/preset-sheets-data-validation/locales/en-US";
import { UniverSheetsFilterPreset } from "@univerjs/preset-sheets-filter";
import filterTexts from "@univerjs/preset-sheets-filter/locales/en-US";
import { UniverSheetsFindReplacePreset } from "@univerjs/preset-sheets-find-replace";
import findTexts from "@univerjs/preset-sheets-find-replace/locales/en-US";
import { UniverSheetsHyperLinkPreset } from "@univerjs/preset-sheets-hyper-link";
import linkTexts from "@univerjs/preset-sheets-hyper-link/locales/en-US";
import { UniverSheetsNotePreset } from "@univerjs/preset-sheets-note";
import noteTexts from "@univerjs/preset-sheets-note/locales/en-US";
import { SheetsSortService, UniverSheetsSortPreset } from "@univerjs/preset-sheets-sort";
import sortTexts from "@univerjs/preset-sheets-sort/locales/en-US";
import { reachBareControls } from "./bareControls";
import { keepOrderOfRules } from "./duplicating";
import { moveFarRules } from "./farRules";
import { canFind, correctFinding } from "./finding";
import { addLinkKeys } from "./linkKeys";
import { addNoteKeys } from "./noteKeys";
import { addOrder } from "./order";
import { headRefusals } from "./refusals";
import { followRenames } from "./renamedSheets";
import { OUR_WORDS } from "./words";
import "./fixedRules";
import "./lateChecks";
import "./listCorrections";

/** Adds them to a spreadsheet that runs: what an open workbook holds for them is read as they come. */
export async function register(univer: Univer): Promise<void> {
  const injector = univer.__getInjector();
  injector.get(LocaleService).load({
    [LocaleType.EN_US]: merge(
      {},
      sortTexts,
      filterTexts,
      findTexts,
      validationTexts,
      conditionTexts,
      linkTexts,
      noteTexts,
      OUR_WORDS,
    ),
  });
  for (const { plugins } of [
    UniverSheetsSortPreset(),
    UniverSheetsFilterPreset(),
    UniverSheetsFindReplacePreset(),
    // A search field in the list would take what is being typed into the cell: the list opens then too.
    UniverSheetsDataValidationPreset({ showEditOnDropdown: false, showSearchOnDropdown: false }),
    UniverSheetsConditionalFormattingPreset(),
    UniverSheetsHyperLinkPreset(),
    UniverSheetsNotePreset(),
  ]) {
    for (const plugin of plugins) {
      if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], plugin[1]);
      else univer.registerPlugin(plugin);
    }
  }
  // Univer starts plugins that come late in one of its next turns.
  while (!injector.has(SheetsSortService) || !canFind(injector)) await new Promise((next) => setTimeout(next, 5));
  addOrder(injector);
  correctFinding(injector);
  reachBareControls(injector);
  addNoteKeys(injector);
  addLinkKeys(injector);
  headRefusals(injector);
  keepOrderOfRules(injector);
  moveFarRules(injector);
  followRenames(injector);
}
