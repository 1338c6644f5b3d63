import type { Work } from "../host";
import { type AddingSheet, addDrafts, askForNames, type laidOut, planSheets, queueSheet, takeAway } from "./newSheets";
import { sentence } from "./sentences";

/** Adds a sheet and shows it, in four syncs; gives the name it got. A stop is heard between two of them. */
export async function addSheet(
  context: Excel.RequestContext,
  described: ReturnType<typeof laidOut>,
  { signal, onProgress }: Work,
): Promise<string> {
  const turn = (share: number) => {
    onProgress?.(share);
    signal?.throwIfAborted();
  };
  const there = askForNames(context);
  await context.sync();
  const [draft] = planSheets([described], there) as [AddingSheet];
  turn(0.1);
  try {
    const [added] = (await addDrafts(context, [draft])) as [Excel.Worksheet];
    turn(0.3);
    context.application.suspendApiCalculationUntilNextSync();
    queueSheet(added, draft);
    await context.sync();
    turn(0.9);
    // Who suspends the calculation has to ask for it again.
    context.application.calculate("Recalculate");
    added.activate();
    added.name = draft.name;
    await context.sync();
    onProgress?.(1);
    return draft.name;
  } catch (error) {
    const why = signal?.aborted ? "Stopped." : sentence("Excel could not add the sheet", error).message;
    await takeAway([draft], there.shown.id, why, error);
    throw error;
  }
}
