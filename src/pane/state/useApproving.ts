import { useMemo, useState } from "react";
import { type ApprovalPlan, planApproval } from "../../runsheet/series/approveWick";
import { approveWick } from "../actions/approveWick";
import type { Book } from "../actions/book";
import { approvalTables } from "../burning/approvalTables";
import { APPROVING } from "../words/approving";
import type { ReadTables } from "./useTables";
import type { RunTask } from "./useTask";

/** What may be approved, the press that does it, and what it asks first. Read only while somebody looks. */
export function useApproving(book: Book, read: ReadTables, isShown: boolean, run: RunTask) {
  const { kept, settings } = book;
  const [asked, setAsked] = useState<{ readonly test: string; readonly doubts: readonly string[] }>();
  const planOf = useMemo(() => {
    if (!isShown || !kept || !settings) return undefined;
    const tables = approvalTables(read, kept, settings);
    // The pane is drawn anew at each letter that is typed into it.
    const known = new Map<string, ApprovalPlan>();
    return (test: string): ApprovalPlan => {
      const plan = known.get(test) ?? planApproval(test, tables, settings);
      known.set(test, plan);
      return plan;
    };
  }, [isShown, read, kept, settings]);
  return {
    /** What a press would do for the wick of this test. */
    planOf,
    /** What was asked of it; undefined where nothing was. */
    doubtsOf: (test: string) => (asked?.test === test ? asked.doubts : undefined),
    approve: (test: string) =>
      run(APPROVING.under, async () => {
        const { words, doubts } = await approveWick(book, test, asked?.test === test ? asked.doubts : undefined);
        setAsked(doubts && { test, doubts });
        return words;
      }),
  } as const;
}

export type Approving = ReturnType<typeof useApproving>;
