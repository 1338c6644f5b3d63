/** Links by keys: the one that a cell has, to follow, change or remove it, or a new one. */

import { ICommandService, type Injector, IUniverInstanceService, type Workbook } from "@univerjs/core";
import { KeyCode, MetaKeys } from "@univerjs/preset-sheets-core";
import { InsertHyperLinkOperation, SheetsHyperLinkPopupService } from "@univerjs/preset-sheets-hyper-link";
import { keyAdder } from "./keys";
import type { Selected } from "./selected";
import { whenThere } from "./whenThere";

type PopUp = Parameters<SheetsHyperLinkPopupService["showPopup"]>[0];
/** Univer does not give out its word for a link that is only looked at. */
const VIEWING = "viewing" as PopUp["type"];

export function addLinkKeys(injector: Injector): void {
  keyAdder(injector)("open-link", [KeyCode.K | MetaKeys.CTRL_COMMAND], async (at) => {
    if (!showLink(injector, at)) await injector.get(ICommandService).executeCommand(InsertHyperLinkOperation.id);
  });
  const popUps = injector.get(SheetsHyperLinkPopupService);
  const { showPopup } = popUps;
  // The address of cells in this workbook would lead nowhere outside of it: only that of a page can be copied.
  popUps.showPopup = function (at) {
    return showPopup.call(this, { ...at, copyPermission: Boolean(at.copyPermission) && leadsOut(injector, at) });
  };
  document.addEventListener("keydown", ({ key }) => {
    if (key !== "Escape") return;
    popUps.hideCurrentPopup(undefined, true);
    popUps.endEditing();
  });
}

function leadsOut(injector: Injector, { unitId, subUnitId, row, col, customRange }: PopUp): boolean {
  const sheet = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId)?.getSheetBySheetId(subUnitId);
  const links = customRange ? [customRange] : (sheet?.getCellRaw(row, col)?.p?.body?.customRanges ?? []);
  return links.every(({ properties }) => !String(properties?.url ?? "").startsWith("#"));
}

/** Shows the link of the selected cell, the keyboard at it; false where there is none. */
function showLink(injector: Injector, at: Selected): boolean {
  if (!at.sheet.getCell(at.row, at.column)?.p?.body?.customRanges?.length) return false;
  const may = { editPermission: true, copyPermission: true };
  const place = { ...at.ids, row: at.row, col: at.column };
  injector.get(SheetsHyperLinkPopupService).showPopup({ ...place, ...may, type: VIEWING, showAll: true });
  whenThere("[data-u-comp=rect-popup] [role=button]", (link) => link.focus());
  return true;
}
