import { tidy } from "../../core/tidy";
import { gramsIn } from "../../core/units/weight";
import { CHOICES, FIRST_SETTINGS, FIRST_WEIGHTS, type Settings, type WeightUnit } from "../../runsheet/settings";
import { usualPaper } from "../../sheet/paper";
import { type NumberKind, parseNumber } from "../parseNumber";

/** The number fields of the settings: what kind each is. */
export const NUMBERS = {
  division: "weight",
  potCapacity: "weight",
  loss: "rate",
  waxFactor: "factor",
  load: "rate",
  labourMinutes: "amount",
  labourRate: "amount",
} as const satisfies Partial<Record<keyof Settings, NumberKind>>;
export type NumberName = keyof typeof NUMBERS;

/** What is kept in the workbook: the settings as typed, and the columns chosen by hand for each kind and table. */
export interface Kept {
  readonly typed: Readonly<Record<NumberName, string>>;
  readonly choices: Pick<Settings, keyof typeof CHOICES>;
  /** The scale divisions that were typed in other units: each unit has a scale of its own. */
  readonly divisions: Readonly<Partial<Record<WeightUnit, string>>>;
  /** For each role the heading of its column, or null for none: a heading stays when columns are moved. */
  readonly columns: Readonly<Record<string, Readonly<Record<string, string | null>>>>;
  /** The last lot of each day that was given, so that none is given twice when its sheet is gone. */
  readonly lots: readonly string[];
  /** Of runs that are written and not logged, by lot: whether what they take counts as planned, as the maker said. */
  readonly counts: Readonly<Record<string, boolean>>;
  /** For each kind and table the headings of columns that stay unread and are not asked about. */
  readonly leftOut: Readonly<Record<string, readonly string[]>>;
}

const percent = (value: number) => `${tidy(value * 100)}%`;

/** What a workbook begins with. */
export function firstKept(): Kept {
  const { unit, basis, live, costs, stockPrice } = FIRST_SETTINGS;
  const paper = usualPaper(navigator.language);
  return {
    typed: {
      division: String(FIRST_SETTINGS.division),
      potCapacity: String(FIRST_SETTINGS.potCapacity),
      loss: percent(FIRST_SETTINGS.loss),
      waxFactor: String(FIRST_SETTINGS.waxFactor),
      load: percent(FIRST_SETTINGS.load),
      labourMinutes: String(FIRST_SETTINGS.labourMinutes),
      labourRate: String(FIRST_SETTINGS.labourRate),
    },
    choices: {
      unit,
      basis,
      paper,
      live,
      stockPrice,
      costs,
      // Where the paper is Letter, labels declare ounces too.
      label: paper === "letter" ? "us" : "metric",
    },
    divisions: {},
    columns: {},
    lots: [],
    counts: {},
    leftOut: {},
  };
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null;

/** What a workbook keeps may be older than this code, or of another program: take only what fits. */
export function mergeKept(kept: unknown): Kept {
  const first = firstKept();
  const part = (name: keyof Kept) => (isRecord(kept) && isRecord(kept[name]) ? Object.entries(kept[name]) : []);
  const only = (entries: [string, unknown][], fits: (key: string, value: unknown) => boolean) =>
    Object.fromEntries(entries.filter(([key, value]) => fits(key, value)));
  const isHeading = (_: string, value: unknown) => typeof value === "string" || value === null;
  return {
    typed: {
      ...first.typed,
      ...only(part("typed"), (key, value) => Object.hasOwn(first.typed, key) && typeof value === "string"),
    },
    choices: {
      ...first.choices,
      ...only(
        part("choices"),
        (key, value) =>
          Object.hasOwn(CHOICES, key) &&
          (CHOICES as Readonly<Record<string, readonly unknown[]>>)[key]?.includes(value) === true,
      ),
    },
    divisions: only(part("divisions"), (key, value) => Object.hasOwn(FIRST_WEIGHTS, key) && typeof value === "string"),
    columns: Object.fromEntries(
      part("columns").map(([key, value]) => [key, isRecord(value) ? only(Object.entries(value), isHeading) : {}]),
    ),
    lots: part("lots").flatMap(([, value]) => (typeof value === "string" ? [value] : [])),
    counts: only(part("counts"), (_, value) => typeof value === "boolean"),
    leftOut: only(part("leftOut"), (_, value) => Array.isArray(value) && value.every((one) => typeof one === "string")),
  } as Kept;
}

/** Says of a run whether what it takes counts as planned. What was said of runs whose sheets are gone goes. */
export function withCount(kept: Kept, lot: string, counts: boolean, sheets: readonly { readonly lot: string }[]): Kept {
  const isThere = (lot: string) => sheets.some((sheet) => sheet.lot === lot);
  const others = Object.entries(kept.counts).filter(([lot]) => isThere(lot));
  return { ...kept, counts: { ...Object.fromEntries(others), [lot]: counts } };
}

/**
 * The weights that are typed, in another unit. The scale is another one: its division is the one that was typed in that
 * unit before, or the usual one. The pot is the same: it is converted, unless it holds the first value that nobody typed.
 */
export function inUnit(kept: Kept, unit: WeightUnit): Kept {
  const { typed, choices, divisions } = kept;
  const [from, to] = [FIRST_WEIGHTS[choices.unit], FIRST_WEIGHTS[unit]];
  const pot = parseNumber("weight", typed.potCapacity);
  const converted = ({ value }: { value: number }) =>
    String(Number(((value * gramsIn("unit", choices.unit)) / gramsIn("unit", unit)).toPrecision(6)));
  const isFirst = "wrong" in pot || pot.value === from.potCapacity;
  return {
    ...kept,
    typed: {
      ...typed,
      division: divisions[unit] ?? String(to.division),
      potCapacity: isFirst ? String(to.potCapacity) : converted(pot),
    },
    choices: { ...choices, unit },
    divisions: { ...divisions, [choices.unit]: typed.division },
  };
}

/** The settings as they are typed, and what is wrong with those that cannot be taken. */
export function parsed(kept: Kept | undefined): {
  wrong: Partial<Record<NumberName, string>>;
  settings: Settings | undefined;
} {
  const wrong: Partial<Record<NumberName, string>> = {};
  const numbers: Partial<Record<NumberName, number>> = {};
  if (!kept) return { wrong, settings: undefined };
  for (const [name, kind] of Object.entries(NUMBERS) as [NumberName, NumberKind][]) {
    const number = parseNumber(kind, kept.typed[name]);
    if ("wrong" in number) wrong[name] = number.wrong;
    else numbers[name] = number.value;
  }
  const isWhole = Object.keys(wrong).length === 0;
  return { wrong, settings: isWhole ? ({ ...kept.choices, ...numbers } as unknown as Settings) : undefined };
}
