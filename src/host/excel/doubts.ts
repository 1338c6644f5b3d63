/** What may be wrong with this Excel or this workbook, known from the start. */

/** Where a blank cell may come to a function as 0, the functions say so in their cells; here it is said what to do. */
const OLD =
  "This Excel may hand a blank cell to a POUR function as 0. Where a 0 may be a blank, the functions show an error and no number. Update Excel (Microsoft 365 to version 2504 or later, on a Mac to 16.96), or choose plain numbers under Settings, Weights on the sheet.";

const FROM_1904 =
  "This workbook counts its days from 1904, so dates and lot codes would be four years and a day off. Turn that off in Excel's options (Advanced, Use 1904 date system; on a Mac under Calculation), then check the dates that are there already.";

/** The second day of 1904 is the first after day 0 where days are counted from 1904, and day 1463 where from 1900. */
const SECOND_OF_1904 = [1904, 1, 2] as const;

/** Finds out, and says each doubt under a name of its own. What Excel does not answer is no doubt. */
export function askForDoubts(say: (about: string, doubt: string | undefined) => void): void {
  const isNew = typeof Office === "undefined" || Office.context?.requirements?.isSetSupported(...RIGHT_BLANKS);
  say("blanks", isNew ? undefined : OLD);
  countsFrom1904()
    .then((does) => say("days", does ? FROM_1904 : undefined))
    .catch(() => {});
}

/** What an Excel has that is known to hand blank cells over as blanks; the functions ask for it too. */
const RIGHT_BLANKS = ["CustomFunctionsRuntime", "1.5"] as const;

/** Excel tells the date system in no other way to an add-in. */
const countsFrom1904 = (): Promise<boolean> =>
  Excel.run(async (context) => {
    const day = context.workbook.functions.date(...SECOND_OF_1904).load("value,error");
    await context.sync();
    return !day.error && day.value === 1;
  });
