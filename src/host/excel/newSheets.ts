import type { Sheet } from "../../sheet/sheet";
import { sheetName } from "../../sheet/sheetName";
import type { LaidOut } from "./laidOut";

/** Sheets that are about to be added, asked for and not there yet. */
interface Asked {
  readonly worksheets: Excel.WorksheetCollection;
  readonly tables: Excel.TableCollection;
  readonly names: Excel.NamedItemCollection;
  readonly protection: Excel.WorkbookProtection;
  readonly shown: Excel.Worksheet;
}

/** A sheet that is about to be added. */
export interface AddingSheet extends LaidOut {
  /** The name it gets last. Until then one that nobody else uses tells which sheet to take away again. */
  readonly name: string;
  /** By what it is found: its draft name, then its id. */
  key: string;
}

/** Asks for what must be known of a workbook before sheets are added; the caller syncs. */
export function askForNames({ workbook }: Excel.RequestContext): Asked {
  return {
    worksheets: workbook.worksheets.load("items/name"),
    tables: workbook.tables.load("items/name"),
    names: workbook.names.load("items/name"),
    protection: workbook.protection.load("protected"),
    shown: workbook.worksheets.getActiveWorksheet().load("id"),
  };
}

/** Names for the sheets that nobody has; refuses what the workbook cannot take. */
export function planSheets(
  sheets: readonly LaidOut[],
  { worksheets, tables, names, protection }: Asked,
): AddingSheet[] {
  if (protection.protected) {
    throw new Error(
      "The workbook is protected, so no sheet can be added. Take the protection off (Review tab, Protect Workbook) and try again.",
    );
  }
  const taken = [...tables.items, ...names.items].map(({ name }) => name);
  const used = worksheets.items.map(({ name }) => name);
  return sheets.map((one) => {
    const { sheet } = one;
    refuseTakenNames(sheet, taken);
    taken.push(...(sheet.tables ?? []).map(({ name }) => name));
    const name = sheetName(sheet.name, used);
    used.push(name);
    return { ...one, name, key: `Pourwright ${crypto.randomUUID().slice(0, 8)}` };
  });
}

/** Queues an empty worksheet under its draft name. */
export const queueDraft = ({ workbook }: Excel.RequestContext, { key }: AddingSheet): Excel.Worksheet =>
  workbook.worksheets.add(key).load("id");

function refuseTakenNames(sheet: Sheet, taken: readonly string[]): void {
  const used = new Set(taken.map((name) => name.toLowerCase()));
  const double = sheet.tables?.find(({ name }) => used.has(name.toLowerCase()));
  if (double) {
    throw new Error(`The workbook already has something named ${double.name}. Rename or delete it, then try again.`);
  }
}

/** Takes unfinished sheets away and shows what was shown before. */
export async function takeAway(
  drafts: readonly AddingSheet[],
  shown: string,
  why: string,
  cause: unknown,
): Promise<void> {
  try {
    await Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      const unfinished = drafts.map(({ key }) => worksheets.getItemOrNullObject(key).load("id"));
      await context.sync();
      const there = unfinished.filter(({ isNullObject }) => !isNullObject);
      if (there.length === 0) return;
      worksheets.getItem(shown).activate();
      for (const sheet of there) sheet.delete();
      await context.sync();
    });
  } catch {
    throw new Error(`${why} An unfinished sheet may be left at the end of the workbook; delete it yourself.`, {
      cause,
    });
  }
}
