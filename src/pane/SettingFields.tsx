import { CHOICES, type Settings, type UsualSetting } from "../runsheet/settings";
import { ChoiceField, TextField } from "./fields";
import { serialOf } from "./today";
import { inUnit, type Kept, type NUMBERS } from "./useSettings";

const WORDS: Readonly<Record<string, string>> = {
  letter: "Letter",
  a4: "A4",
  us: "oz and g",
  metric: "g",
  true: "live formulas",
  false: "plain numbers",
};

const DEFAULTS: Readonly<Record<UsualSetting, string>> = { waxFactor: "wax factor", load: "load", basis: "basis" };

/** What the maker sets once for all run sheets of a workbook. */
export function SettingFields(props: {
  kept: Kept;
  keep: (change: (kept: Kept) => Kept) => void;
  wrong: Readonly<Partial<Record<keyof typeof NUMBERS, string>>>;
  /** The usual settings that served any row; undefined while there is no run. */
  usual: ReadonlySet<UsualSetting> | undefined;
  date: string;
  onDate: (date: string) => void;
}) {
  const { kept, keep, wrong, usual, date, onDate } = props;
  const { unit } = kept.choices;
  const number = (name: keyof typeof NUMBERS, label: string) => (
    <TextField
      label={label}
      value={kept.typed[name]}
      wrong={wrong[name]}
      onChange={(value) => keep((before) => ({ ...before, typed: { ...before.typed, [name]: value } }))}
    />
  );
  const choice = <K extends keyof typeof CHOICES>(name: K, label: string) => (
    <ChoiceField
      label={label}
      value={String(kept.choices[name])}
      choices={CHOICES[name].map((value) => ({ value: String(value), text: WORDS[String(value)] ?? String(value) }))}
      onChange={(text) => {
        const value = CHOICES[name].find((one) => String(one) === text) as Settings[K];
        keep((before) =>
          name === "unit"
            ? inUnit(before, value as Settings["unit"])
            : { ...before, choices: { ...before.choices, [name]: value } },
        );
      }}
    />
  );
  return (
    <>
      <div className="pairs">
        <TextField
          label="Date"
          type="date"
          value={date}
          wrong={serialOf(date) === undefined ? "choose a day" : undefined}
          onChange={onDate}
        />
        {choice("unit", "Weights in")}
        {number("division", `Scale reads to (${unit})`)}
        {number("potCapacity", `Pot holds (${unit})`)}
        {number("loss", "Extra to melt (loss)")}
        {choice("paper", "Paper")}
        {choice("label", "Net weight label")}
        {choice("live", "Weights on the sheet")}
      </div>
      <h3>Defaults for rows without their own values</h3>
      <div className="pairs">
        {number("waxFactor", "Default wax factor")}
        {number("load", "Default load")}
        {choice("basis", "Default basis of a load")}
      </div>
      {usual && (
        <p className="hint">
          {usual.size > 0
            ? `Used by rows of this run: ${[...usual].map((name) => DEFAULTS[name]).join(", ")}.`
            : "No row of this run needs them."}
        </p>
      )}
    </>
  );
}
