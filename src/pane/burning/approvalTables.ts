import type { ApprovalTables } from "../../runsheet/series/approveWick";
import type { Settings } from "../../runsheet/settings";
import { readTable } from "../../runsheet/tables/readTables";
import { type ByHand, tableOf } from "../givenTables";
import type { ReadTables } from "../state/useTables";
import { fillOf } from "./fillOf";

/** The tables by which a wick is approved, as they stand. */
export function approvalTables(read: ReadTables, byHand: ByHand, settings: Settings): ApprovalTables {
  const { unit } = settings;
  const vessels = tableOf("vessels", read, byHand);
  const known = readTable(vessels, unit);
  return {
    burnTests: readTable(tableOf("burnTests", read, byHand), unit) ?? new Map(),
    readings: readTable(tableOf("readings", read, byHand), unit) ?? new Map(),
    fillOf: (vessel) => fillOf(vessel, known, settings),
    vessels: vessels && { ...vessels, name: read.vessels?.name ?? "" },
  };
}
