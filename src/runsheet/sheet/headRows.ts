import { CAUTIONS } from "../cautions";
import type { Settings } from "../settings";
import { DAY } from "./formats";
import { HEAD_REMARK } from "./inputChecks";
import { DATE, divisionLabel, keyOf, LIVE_NOTE, PLAIN_NOTE, titleOf } from "./layout";
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
  page.line(titleOf(lot), "title");
  page.row([
    { text: DATE, look: "label" },
    { number: date, format: DAY, align: "left", look: input },
    { text: "Made by", look: "label", align: "right" },
    { look: "blank" },
    { text: "Checked by", look: "label", align: "right" },
    { look: "blank", across: 2 },
  ]);
  page.row([
    { text: divisionLabel(unit), look: "label" },
    { number: settings.division, look: input },
    { text: `Pot holds (${unit})`, look: "label", align: "right" },
    { number: settings.potCapacity, look: input },
    { text: "Extra to melt (loss)", look: "label", align: "right", across: 2 },
    { number: settings.loss, format: "0.0##%", look: input, align: "left" },
  ]);
  if (live) page.row([{ formula: HEAD_REMARK, look: "alert", across: page.width }], undefined, keyOf("*", "head"));
  page.line(live ? LIVE_NOTE : PLAIN_NOTE, "note");
  for (const caution of CAUTIONS) page.line(caution, "caution");
}
