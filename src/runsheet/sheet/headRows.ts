import { CAUTIONS } from "../cautions";
import type { Settings } from "../settings";
import { DAY } from "./formats";
import { HEAD_REMARK } from "./inputChecks";
import { DATE, divisionLabel, keyed, LIVE_MARK, LIVE_NOTE, PLAIN_MARK, PLAIN_NOTE, titleOf } from "./layout";
import type { Page } from "./page";

/** What a run sheet says beside its plan. */
export interface RunHead {
  readonly lot: string;
  /** Spreadsheet serial of the day. */
  readonly date: number;
  readonly settings: Settings;
}

/** The head of a run sheet: lot, date, the figures that its formulas use, and the cautions. */
export function headRows(page: Page, { lot, date, settings }: RunHead): void {
  const { unit, live } = settings;
  const input = live ? "input" : "body";
  page.row(
    [
      { text: titleOf(lot), look: "title", across: 6 },
      // It stands on each page, for the title does; words, for black and white shows no colours.
      { text: live ? LIVE_MARK : PLAIN_MARK, look: live ? "mark" : "label", align: "center", across: 4 },
    ],
    undefined,
    keyed("*", "mark"),
  );
  page.row([
    { text: DATE, look: "label" },
    { number: date, format: DAY, align: "left", look: input, across: 2 },
    { text: "Made by", look: "label", align: "right" },
    { look: "blank", across: 2 },
    { text: "Checked by", look: "label", align: "right" },
    { look: "blank", across: 3 },
  ]);
  page.row([
    { text: divisionLabel(unit), look: "label" },
    { number: settings.division, look: input, across: 2 },
    { text: `Pot holds (${unit})`, look: "label", align: "right", across: 2 },
    { number: settings.potCapacity, look: input },
    { text: "Extra to melt (loss)", look: "label", align: "right", across: 3 },
    { number: settings.loss, format: "0.0##%", look: input, align: "left" },
  ]);
  if (live) page.row([{ formula: HEAD_REMARK, look: "alert", across: page.width }], undefined, keyed("*", "head"));
  page.line(live ? LIVE_NOTE : PLAIN_NOTE, "note");
  for (const caution of CAUTIONS) page.line(caution, "caution");
}
