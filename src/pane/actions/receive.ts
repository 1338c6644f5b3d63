import type { TypedReceipt } from "../receiving/parseReceipt";
import { besideOf, planReceipt, shownOf } from "../receiving/planReceipt";
import { LOGGING } from "../words/logging";
import { RECEIVING } from "../words/receiving";
import type { Book } from "./book";

/** Adds a receipt to the moves if it is still what was shown; gives the words, and whether it was added. */
export async function receive(
  { host, kept, refresh }: Book,
  typed: TypedReceipt,
  shown: string | undefined,
): Promise<{ words: string; isAdded: boolean }> {
  if (!kept) throw new Error(LOGGING.settingsUnread);
  const beside = besideOf(await refresh(), kept);
  if (beside.refused !== undefined) throw new Error(beside.refused);
  const plan = planReceipt(typed, beside);
  if (!plan.ready || shownOf(plan) !== shown) return { words: RECEIVING.changed, isAdded: false };
  const { line, table, addition } = plan.ready;
  await host.append([addition]);
  await refresh();
  return { words: RECEIVING.done(line, table ?? "Moves"), isAdded: true };
}
