import type { Work } from "../host";
import { calculateAgain } from "./calculation";
import type { LaidOut } from "./laidOut";
import { type AddingSheet, askForNames, planSheets, queueDraft, takeAway } from "./newSheets";
import { setUpPages } from "./pageSetup";
import { MOST_BYTES, queuedBytes } from "./payload";
import { sentence } from "./sentences";

/**
 * Adds a sheet and shows it, in as many requests as it takes, mostly four; gives the name it got. A stop is heard between
 * two of them, until the sheet stands; as when one is refused, the unfinished sheet is taken away again.
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
    worksheet = queueDraft(context, draft);
    let isFound = false;
    const send = async (share: number) => {
      context.application.suspendApiCalculationUntilNextSync();
      await context.sync();
      draft.key = worksheet.id;
      isFound = true;
      turn(share);
    };
    let queued = 0;
    for (const [i, step] of draft.steps.entries()) {
      const bytes = queuedBytes(step);
      if (queued + bytes > MOST_BYTES) {
        await send(0.1 + (0.7 * i) / draft.steps.length);
        queued = 0;
      }
      step(worksheet);
      queued += bytes;
    }
    // What is left goes along with the last request, unless it is not known yet by what the sheet is found.
    if (!isFound) await send(0.8);
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
