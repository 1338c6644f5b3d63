import { useCallback, useEffect, useState } from "react";
import type { Host } from "../host/host";
import { FIRST_SETTINGS, type Settings } from "../runsheet/settings";
import { usualPaper } from "../sheet/paper";
import { type NumberKind, parseNumber } from "./parseNumber";

/** The number fields of the settings: what kind each is, and how its first value is written. */
export const NUMBERS = {
  division: "weight",
  potCapacity: "weight",
  loss: "rate",
  waxFactor: "factor",
  load: "rate",
} as const satisfies Partial<Record<keyof Settings, NumberKind>>;
type NumberName = keyof typeof NUMBERS;

/** What is kept in the workbook: the settings as typed, and the columns chosen by hand for each kind and table. */
interface Kept {
  readonly typed: Readonly<Record<NumberName, string>>;
  readonly choices: Pick<Settings, "unit" | "basis" | "paper" | "label" | "live">;
  readonly columns: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

const percent = (value: number) => `${Number((value * 100).toPrecision(12))}%`;

function firstKept(): Kept {
  const { unit, basis, live } = FIRST_SETTINGS;
  const paper = usualPaper(navigator.language);
  return {
    typed: {
      division: String(FIRST_SETTINGS.division),
      potCapacity: String(FIRST_SETTINGS.potCapacity),
      loss: percent(FIRST_SETTINGS.loss),
      waxFactor: String(FIRST_SETTINGS.waxFactor),
      load: percent(FIRST_SETTINGS.load),
    },
    choices: {
      unit,
      basis,
      paper,
      live, // Where the paper is Letter, labels declare ounces too.
      label: paper === "letter" ? "us" : "metric",
    },
    columns: {},
  };
}

const CHOICES: Readonly<Record<string, readonly unknown[]>> = {
  unit: ["g", "kg", "oz", "lb"],
  basis: ["of wax", "of total"],
  paper: ["letter", "a4"],
  label: ["us", "metric"],
  live: [true, false],
};

/** What a workbook keeps may be older than this code, or of another program: take only what fits. */
function mergeKept(kept: unknown): Kept {
  const first = firstKept();
  if (typeof kept !== "object" || kept === null) return first;
  const part = <K extends keyof Kept>(name: K): Kept[K] => {
    const value = (kept as Partial<Kept>)[name];
    if (typeof value !== "object" || value === null) return first[name];
    if (name === "columns") return value as Kept[K];
    const fitting = Object.entries(value).filter(([key, one]) =>
      name === "choices" ? CHOICES[key]?.includes(one) : key in first.typed && typeof one === "string",
    );
    return { ...first[name], ...Object.fromEntries(fitting) };
  };
  return { typed: part("typed"), choices: part("choices"), columns: part("columns") };
}

/** The settings, kept in the workbook; `settings` is undefined while a field is wrong. */
export function useSettings(host: Host, onError: (error: unknown) => void) {
  const [kept, setKept] = useState<Kept>(firstKept);

  useEffect(() => {
    host.settings().then((found) => setKept(mergeKept(found)), onError);
  }, [host, onError]);

  const keep = useCallback(
    (change: (kept: Kept) => Kept) => {
      setKept((before) => {
        const after = change(before);
        host.keepSettings(after).catch(onError);
        return after;
      });
    },
    [host, onError],
  );

  const wrong: Partial<Record<NumberName, string>> = {};
  const numbers: Partial<Record<NumberName, number>> = {};
  for (const [name, kind] of Object.entries(NUMBERS) as [NumberName, NumberKind][]) {
    const parsed = parseNumber(kind, kept.typed[name]);
    if ("wrong" in parsed) wrong[name] = parsed.wrong;
    else numbers[name] = parsed.value;
  }
  const settings =
    Object.keys(wrong).length === 0 ? ({ ...kept.choices, ...numbers } as unknown as Settings) : undefined;
  return { kept, keep, wrong, settings };
}
