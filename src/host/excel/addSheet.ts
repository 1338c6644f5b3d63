import type { Work } from "../host";
import { calculateAgain } from "./calculation";
import type { LaidOut } from "./laidOut";
import { type AddingSheet, askForNames, planSheets, queueDraft, queueSheet, takeAway } from "./newSheets";
import { setUpPages } from "./pageSetup";
import { sentence } from "./sentences";
import { writeOtherFormulas } from "./writeSheet";

/**
 * Adds a sheet and shows it, in three syncs, and one more for its page set-up; gives the name it got. A stop is heard
 * between two of them, until the sheet stands.
 * @param say is told what of the page set-up was refused
 */
export async function addSheet(
  context: Excel.RequestContext,
  described: LaidOut,
  { signal, onProgress }: Work,
  say: (refused: string | undefined) => void,
): Promise<string> {
  const turn = (share: number) => {
    onProgress?.(share);
    signal?.throwIfAborted();
  };
  const there = askForNames(context);
  await context.sync();
  const [draft] = planSheets([described], there) as [AddingSheet];
  turn(0.1);
  let worksheet: Excel.Worksheet;
  try {
    context.application.suspendApiCalculationUntilNextSync();
    worksheet = queueDraft(context, draft);
    queueSheet(worksheet, draft);
    await context.sync();
    draft.key = worksheet.id;
    turn(0.8);
    writeOtherFormulas(worksheet, draft.layout, draft.atOnce);
    calculateAgain(context);
    worksheet.activate();
    worksheet.name = draft.name;
    await context.sync();
  } catch (error) {
    const why = signal?.aborted ? "Stopped." : sentence("Excel could not add the sheet", error).message;
    await takeAway([draft], there.shown.id, why, error);
    throw error;
  }
  onProgress?.(0.9);
  await setUpPages(context, [{ ...draft, worksheet }], say);
  onProgress?.(1);
  return draft.name;
}
