import type { WeightUnit } from "../../runsheet/settings";
import { joinItems } from "../../runsheet/stock/joinItems";
import type { Items } from "../../runsheet/tables/items";
import { readTable } from "../../runsheet/tables/readTables";
import { type ByHand, tableOf } from "../givenTables";
import type { ReadTables } from "../state/useTables";

/** What all tables of items of the workbook say, in this unit. */
export const itemsOn = (read: ReadTables, byHand: ByHand, unit: WeightUnit): Items =>
  joinItems(
    (["items", "stock", "prices"] as const).flatMap((kind) => readTable(tableOf(kind, read, byHand), unit) ?? []),
  );
