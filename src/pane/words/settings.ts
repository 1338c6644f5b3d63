/** The words of the settings. */

import type { UsualSetting } from "../../runsheet/settings";
import type { Kept } from "../state/kept";

const DEFAULTS: Readonly<Record<UsualSetting, string>> = { waxFactor: "wax factor", load: "load", basis: "basis" };

export const SETTINGS = {
  heading: "Settings",
  /** All in a line, with the defaults that rows of the run rest on. */
  line: ({ typed, choices }: Kept, date: string, usual: ReadonlySet<UsualSetting> = new Set()) =>
    [
      date,
      `scale ${typed.division} ${choices.unit}`,
      `pot ${typed.potCapacity} ${choices.unit}`,
      `loss ${typed.loss}`,
      ...(usual.has("waxFactor") ? [`default wax factor ${typed.waxFactor}`] : []),
      ...(usual.has("load") ? [`default load ${typed.load}`] : []),
      ...(usual.has("basis") ? [`default basis ${choices.basis}`] : []),
    ].join(", "),
  date: "Date",
  chooseDay: "choose a day",
  unit: "Weights in",
  division: (unit: string) => `Scale reads to (${unit})`,
  potCapacity: (unit: string) => `Pot holds (${unit})`,
  loss: "Extra to melt (loss)",
  paper: "Paper",
  label: "Net weight label",
  live: "Weights on the sheet",
  costsOnSheet: "Cost on the sheet",
  defaults: "Defaults for rows without their own values",
  waxFactor: "Default wax factor",
  load: "Default load",
  basis: "Default basis of a load",
  costs: "Cost",
  stockPrice: "Unit price by the lots in stock",
  labourMinutes: "Minutes of work on a candle",
  labourRate: "Labour for one hour",
  used: (defaults: ReadonlySet<UsualSetting>) =>
    defaults.size > 0
      ? `Used by rows of this run: ${[...defaults].map((name) => DEFAULTS[name]).join(", ")}.`
      : "No row of this run needs them.",
} as const;

/** What choices are called; others are called what they are. */
export const CHOICE_NAMES: Readonly<Record<string, string>> = {
  letter: "Letter",
  a4: "A4",
  us: "oz and g",
  metric: "g",
  true: "live formulas",
  false: "plain numbers",
};

/** Beside a field that holds no number that it may hold. */
export const TYPED = {
  blank: "write a number",
  noNumber: (text: string) => `"${text}" is not a number`,
  either: (one: string, other: string) => `write ${one} or ${other}`,
} as const;
