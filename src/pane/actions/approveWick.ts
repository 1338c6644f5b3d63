import { type ApprovalPlan, planApproval } from "../../runsheet/series/approveWick";
import type { Settings } from "../../runsheet/settings";
import { readTable } from "../../runsheet/tables/readTables";
import { tableOf } from "../givenTables";
import type { Kept } from "../state/kept";
import type { ReadTables } from "../state/useTables";
import { APPROVING } from "../words/approving";
import { LOGGING } from "../words/logging";
import { WRITING } from "../words/writing";
import type { Book } from "./book";

/** What came of a press: its words, or what is asked before the wick is written. */
export interface Approved {
  readonly words?: string;
  readonly doubts?: readonly string[];
}

/**
 * Writes the wick of a test into the table of vessels, if nothing is doubtful or what is was shown.
 * @param shown the doubts that the maker saw
 */
export async function approveWick(
  { host, kept, settings, refresh }: Book,
  test: string,
  shown: readonly string[] = [],
): Promise<Approved> {
  if (!kept) throw new Error(LOGGING.settingsUnread);
  if (!settings) throw new Error(WRITING.fixSettings);
  const read = await refresh();
  const plan = approvalIn(test, read, kept, settings);
  if (plan.kind !== "ready") {
    if (plan.kind === "refused") throw new Error(plan.says);
    return { words: plan.says };
  }
  const { doubts, cell, done } = plan;
  const isSeen = JSON.stringify(doubts) === JSON.stringify(shown);
  if (!isSeen && doubts.length > 0) return { doubts, ...(shown.length > 0 && { words: APPROVING.changed }) };
  const { sheet, row, column } = (read.vessels as NonNullable<ReadTables["vessels"]>).place;
  await host.write(sheet, [{ row: row + 1 + cell.row, column: column + cell.column, content: { text: cell.text } }]);
  await refresh();
  return { words: done };
}

/** What a press would do by the tables as they stand. */
export function approvalIn(test: string, read: ReadTables, kept: Kept, settings: Settings): ApprovalPlan {
  const { unit } = settings;
  const vessels = tableOf("vessels", read, kept);
  return planApproval(
    test,
    {
      burnTests: readTable(tableOf("burnTests", read, kept), unit) ?? new Map(),
      readings: readTable(tableOf("readings", read, kept), unit) ?? new Map(),
      vessels: vessels && { ...vessels, name: read.vessels?.name ?? "" },
    },
    settings,
  );
}
