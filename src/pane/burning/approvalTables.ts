import type { ApprovalTables } from "../../runsheet/series/approveWick";
import type { Settings } from "../../runsheet/settings";
import { readTable } from "../../runsheet/tables/readTables";
import { type ByHand, tableOf } from "../givenTables";
import type { ReadTables } from "../state/useTables";

/** The tables by which a wick is approved, as they stand. */
export function approvalTables(read: ReadTables, byHand: ByHand, { unit }: Settings): ApprovalTables {
  const vessels = tableOf("vessels", read, byHand);
  return {
    burnTests: readTable(tableOf("burnTests", read, byHand), unit) ?? new Map(),
    readings: readTable(tableOf("readings", read, byHand), unit) ?? new Map(),
    vessels: vessels && { ...vessels, name: read.vessels?.name ?? "" },
  };
}
