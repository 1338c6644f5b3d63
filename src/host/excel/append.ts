import type { Addition, NewRows } from "../../sheet/addition";
import type { Sheet } from "../../sheet/sheet";
import { calculateAgain } from "./calculation";
import { laidOut } from "./laidOut";
import { type AddingRows, askForAdded, askForTable, planRows, queueRows } from "./newRows";
import { type AddingSheet, askForNames, planSheets, queueDraft, takeAway } from "./newSheets";
import { setUpPages } from "./pageSetup";
import { queuedBytes, refuseTooMuch } from "./payload";
import { sentence } from "./sentences";

/** What is added, in words. */
export const failedToAdd = (additions: readonly Addition[]): string =>
  `Excel could not add to ${additions.map((one) => ("table" in one ? `the table ${one.table}` : one.name)).join(" and ")}`;

/**
 * Adds rows to tables and sheets with tables of their own, all or nothing. What is known beforehand is asked in one
 * sync, a second writes all, and a third has it calculated. Then pages are set up, which may fail.
 * @param say is told what of that was refused
 */
export async function append(
  context: Excel.RequestContext,
  additions: readonly Addition[],
  say: (refused: string | undefined) => void,
): Promise<void> {
  const rows = additions.filter((one): one is NewRows => "table" in one);
  const sheets = additions.filter((one): one is Sheet => !("table" in one)).map(laidOut);
  const asked = rows.map((one) => askForTable(context, one));
  const there = sheets.length > 0 ? askForNames(context) : undefined;
  await context.sync();

  const adding = asked.map(planRows);
  const drafts = there ? planSheets(sheets, there) : [];
  const ofRows = adding.map((one) => queuedBytes<Excel.Table>((table) => queueRows({ ...one, table })));
  const ofSheets = drafts.flatMap(({ steps }) => steps.map(queuedBytes<Excel.Worksheet>));
  refuseTooMuch([...ofRows, ...ofSheets].reduce((sum, bytes) => sum + bytes, 0));
  let standing: (AddingSheet & { worksheet: Excel.Worksheet })[] = [];
  try {
    context.application.suspendApiCalculationUntilNextSync();
    standing = drafts.map((draft) => ({ ...draft, worksheet: queueDraft(context, draft) }));
    for (const { steps, worksheet } of standing) for (const step of steps) step(worksheet);
    for (const one of adding) queueRows(one);
    await context.sync();
    for (const [i, { worksheet }] of standing.entries()) (drafts[i] as AddingSheet).key = worksheet.id;
    // Names last: until then it is known which sheets are unfinished. What was shown stays in front.
    for (const { worksheet, name } of standing) worksheet.name = name;
    there?.shown.activate();
    calculateAgain(context);
    await context.sync();
  } catch (error) {
    await takeBack(adding, drafts, there?.shown.id ?? "", sentence(failedToAdd(additions), error));
    throw error;
  }
  await setUpPages(context, standing, say);
}

/** Takes back what was added, unless somebody else wrote in it at the same moment. */
async function takeBack(
  adding: readonly AddingRows[],
  drafts: readonly AddingSheet[],
  shown: string,
  because: Error,
): Promise<void> {
  let isRowsLeft = false;
  try {
    if (adding.length > 0) await takeBackRows(adding);
  } catch {
    isRowsLeft = true;
  }
  const left = "Unfinished rows may be left at the end of the table; delete them yourself.";
  const why = isRowsLeft ? `${because.message} ${left}` : because.message;
  if (drafts.length > 0) await takeAway(drafts, shown, why, because);
  if (isRowsLeft) throw new Error(why, { cause: because });
}

/** Rejects when rows of somebody else stand among them. */
const takeBackRows = (adding: readonly AddingRows[]): Promise<void> =>
  Excel.run(async (context) => {
    const added = adding.map((one) => askForAdded(context, one));
    await context.sync();
    if (!added.every((one) => one.areOurs())) throw new Error("others wrote there");
    for (const one of added) one.takeBack();
    await context.sync();
  });
