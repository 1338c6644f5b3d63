import { starterSheet, starterSheets } from "../../runsheet/sheet/starterSheets";
import { knownItems } from "../../runsheet/tables/knownItems";
import { readTables } from "../../runsheet/tables/readTables";
import type { FurtherTypeId } from "../../runsheet/tables/registry";
import { givenTables } from "../givenTables";
import type { Book } from "./book";

/** Adds the tables that a maker begins with. Tried again after a failure, only what is missing is put in. */
export async function addStarterTables({ host, kept }: Book): Promise<void> {
  if (!kept) return;
  for (const sheet of starterSheets(kept.choices.unit, await host.tables())) await host.addSheet(sheet);
}

/** Adds a table that adds to a run sheet: empty, but for the names that the other tables know already. */
export async function addTable({ host, kept, rowsLeft, refresh }: Book, type: FurtherTypeId): Promise<void> {
  if (!kept) return;
  const { unit } = kept.choices;
  const given = givenTables(await refresh(), kept, rowsLeft);
  const known = given ? knownItems(readTables(given.tables, unit).rows) : [];
  await host.addSheet(starterSheet(type, unit, undefined, known));
}
