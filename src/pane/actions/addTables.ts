import { starterSheet, starterSheets } from "../../runsheet/sheet/starterSheets";
import type { FurtherTypeId } from "../../runsheet/tables/registry";
import type { Book } from "./book";

/** Adds the tables that a maker begins with. Tried again after a failure, only what is missing is put in. */
export async function addStarterTables({ host, kept }: Book): Promise<void> {
  if (!kept) return;
  for (const sheet of starterSheets(kept.choices.unit, await host.tables())) await host.addSheet(sheet);
}

/** Adds an empty table that adds to a run sheet. */
export async function addTable({ host, kept }: Book, type: FurtherTypeId): Promise<void> {
  if (kept) await host.addSheet(starterSheet(type, kept.choices.unit));
}
