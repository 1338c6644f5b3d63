import type { KnownItems } from "../../runsheet/record/receipt";
import { sameName } from "../../runsheet/sameName";
import type { WeightUnit } from "../../runsheet/settings";
import { readTable } from "../../runsheet/tables/readTables";
import { TABLE_TYPE_IDS, TABLE_TYPES, type TableTypeId } from "../../runsheet/tables/registry";
import type { TableType } from "../../runsheet/tables/tableType";
import { wickOf } from "../../runsheet/tables/wick";
import { type ByHand, tableOf } from "../givenTables";
import type { ReadTables } from "../state/useTables";
import { itemsOn } from "./itemsOn";

/** Fields whose names are counted, and those whose are weighed; of items their kind says it. */
const COUNTED: readonly string[] = ["pour vessel", "vessels vessel", "components vessel", "components item"];
const WEIGHED: readonly string[] = ["pour scent", "scents scent", "recipes ingredient", "recipes scent"];

/** The names that the tables of the workbook know. */
export function namedItems(read: ReadTables, byHand: ByHand, unit: WeightUnit): KnownItems {
  const names = new Map<string, string>();
  const [counted, weighed] = [new Set<string>(), new Set<string>()];
  for (const kind of TABLE_TYPE_IDS) {
    for (const [field, name] of namesIn(kind, read, byHand)) {
      const key = sameName(name);
      if (!names.has(key)) names.set(key, name);
      if (COUNTED.includes(`${kind} ${field}`)) counted.add(key);
      if (WEIGHED.includes(`${kind} ${field}`)) weighed.add(key);
    }
  }
  for (const { wick } of readTable(tableOf("vessels", read, byHand), unit)?.values() ?? []) {
    const { name } = wickOf(wick);
    if (name === "") continue;
    if (!names.has(sameName(name))) names.set(sameName(name), name);
    counted.add(sameName(name));
  }
  const items = itemsOn(read, byHand, unit);
  for (const [key, { count }] of items) if (count.use) (count.use === "count" ? counted : weighed).add(key);
  return { names, counted, weighed, items };
}

/** Each name of a table with its field. */
function namesIn(kind: TableTypeId, read: ReadTables, byHand: ByHand): [field: string, name: string][] {
  const table = tableOf(kind, read, byHand);
  if (!table) return [];
  const { fields } = TABLE_TYPES[kind] as TableType;
  const columns = Object.entries(table.columns as Readonly<Record<string, number>>);
  return columns
    .filter(([field]) => fields[field]?.reads === "name")
    .flatMap(([field, column]) =>
      table.rows.flatMap((row): [string, string][] => {
        const cell = row[column];
        const text = typeof cell === "string" ? cell.trim() : "";
        return text === "" ? [] : [[field, text]];
      }),
    );
}
