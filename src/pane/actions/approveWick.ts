import { planApproval } from "../../runsheet/series/approveWick";
import { approvalTables } from "../burning/approvalTables";
import type { ReadTables } from "../state/useTables";
import { APPROVING } from "../words/approving";
import { LOGGING } from "../words/logging";
import { WRITING } from "../words/writing";
import type { Book } from "./book";
import { writeGiven } from "./writeGiven";

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
  const plan = planApproval(test, approvalTables(read, kept, settings), settings);
  if (plan.kind !== "ready") {
    if (plan.kind === "standing") return { words: plan.says };
    throw new Error(plan.says);
  }
  const { doubts, cell, done } = plan;
  const isSeen = JSON.stringify(doubts) === JSON.stringify(shown);
  if (!isSeen && doubts.length > 0) return { doubts, ...(shown.length > 0 && { words: APPROVING.changed }) };
  const { sheet, row, column } = (read.vessels as NonNullable<ReadTables["vessels"]>).place;
  await writeGiven(host, sheet, {
    ...{ row: row + 1 + cell.row, column: column + cell.column },
    content: { text: cell.text },
  });
  await refresh();
  return { words: done };
}
