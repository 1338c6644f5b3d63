import { useEffect, useState } from "react";
import { CHOICES, type Settings, type UsualSetting } from "../runsheet/settings";
import { ChoiceField, TextField } from "./fields";
import { inUnit, type NumberName } from "./state/kept";
import type { PaneState } from "./state/usePane";
import { serialOf } from "./today";
import { CHOICE_NAMES, SETTINGS } from "./words/settings";

/** What the maker sets once for all run sheets of a workbook. */
export function SettingFields(props: {
  fields: PaneState["fields"];
  /** The usual settings that served any row; undefined while there is no run. */
  usual: ReadonlySet<UsualSetting> | undefined;
  /** Whether they are looked at before anything else: a workbook is begun. */
  isFirst: boolean;
}) {
  const { usual, isFirst } = props;
  const { kept, keep, wrong, date, setDate, isWrong } = props.fields;
  const [isOpened, setOpened] = useState<boolean>();
  // What is wrong is never folded away, nor a field under the hands of whoever puts it right.
  useEffect(() => {
    if (isWrong) setOpened(true);
  }, [isWrong]);
  if (!kept) return null;
  const isOpen = isWrong || (isOpened ?? isFirst);
  const { unit } = kept.choices;
  const number = (name: NumberName, label: string) => (
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
      choices={CHOICES[name].map((value) => ({
        value: String(value),
        text: CHOICE_NAMES[String(value)] ?? String(value),
      }))}
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
    <details
      className="settings"
      open={isOpen}
      onToggle={({ currentTarget: { open } }) => {
        if (open !== isOpen) setOpened(open);
      }}
    >
      <summary>
        <h2>{SETTINGS.heading}</h2> {SETTINGS.line(kept, date, usual)}
      </summary>
      <div className="pairs">
        <TextField
          label={SETTINGS.date}
          type="date"
          value={date}
          wrong={serialOf(date) === undefined ? SETTINGS.chooseDay : undefined}
          onChange={setDate}
        />
        {choice("unit", SETTINGS.unit)}
        {number("division", SETTINGS.division(unit))}
        {number("potCapacity", SETTINGS.potCapacity(unit))}
        {number("loss", SETTINGS.loss)}
        {choice("paper", SETTINGS.paper)}
        {choice("label", SETTINGS.label)}
        {choice("live", SETTINGS.live)}
        {choice("costs", SETTINGS.costsOnSheet)}
      </div>
      <h3>{SETTINGS.defaults}</h3>
      <div className="pairs">
        {number("waxFactor", SETTINGS.waxFactor)}
        {number("load", SETTINGS.load)}
        {choice("basis", SETTINGS.basis)}
      </div>
      {usual && <p className="hint">{SETTINGS.used(usual)}</p>}
      <h3>{SETTINGS.costs}</h3>
      <div className="pairs">
        {choice("stockPrice", SETTINGS.stockPrice)}
        {number("labourMinutes", SETTINGS.labourMinutes)}
        {number("labourRate", SETTINGS.labourRate)}
      </div>
    </details>
  );
}
