/** Validations of a file as the plugin keeps them, and back. */

import type { IRange } from "@univerjs/core";
import type { Validation } from "../../../file/book";
import { areaOf, type Extent, rangesOf } from "./areas";
import { ARROW } from "./codes";

export interface ValidationJson {
  readonly uid: string;
  readonly type: string;
  readonly ranges: readonly IRange[];
  readonly operator?: string;
  readonly formula1?: string;
  readonly formula2?: string;
  readonly allowBlank?: boolean;
  readonly showDropDown?: boolean;
  readonly renderMode?: number;
  readonly errorStyle?: number;
  readonly showErrorMessage?: boolean;
  readonly error?: string;
  readonly errorTitle?: string;
  readonly showInputMessage?: boolean;
  readonly prompt?: string;
  readonly promptTitle?: string;
}

export type ValidationsJson = Readonly<Record<string, readonly ValidationJson[]>>;

const ON_WRONG = { information: 0, stop: 1, warning: 2 } as const;

const KINDS = new Set<string>(["any", "list", "whole", "decimal", "date", "time", "textLength", "custom"]);

/** Files give these an operator too, by which Univer would compare texts as numbers and refuse them. */
const WITHOUT_OPERATOR = new Set<string>(["any", "list", "custom"]);

/** Those that only reach cells which the sheet does not have here are left out. */
export const validationsJson = (validations: readonly Validation[], extent: Extent): ValidationJson[] =>
  validations.map((one, i) => validationJson(one, i, extent)).filter(({ ranges }) => ranges.length > 0);

function validationJson(validation: Validation, number: number, extent: Extent): ValidationJson {
  const { areas, kind, operator, formulas, allowsBlank, showsList, onWrong, prompt, error } = validation;
  const [formula1, formula2] = formulas.map((formula) => (kind === "list" ? listJson(formula) : valueJson(formula)));
  return {
    uid: `v${number}`,
    type: kind,
    ranges: rangesOf(areas, extent),
    ...(!WITHOUT_OPERATOR.has(kind) && { operator }),
    ...(formula1 !== undefined && { formula1 }),
    ...(formula2 !== undefined && { formula2 }),
    allowBlank: allowsBlank,
    showDropDown: showsList,
    ...(kind === "list" && { renderMode: ARROW }),
    errorStyle: ON_WRONG[onWrong === "none" ? "information" : onWrong],
    showErrorMessage: onWrong !== "none",
    ...(error && { error: error.text, errorTitle: error.title }),
    ...(prompt && { showInputMessage: true, prompt: prompt.text, promptTitle: prompt.title }),
  };
}

/** A list written out goes without its quotes, all else with its `=`. */
function listJson(formula: string): string {
  const written = /^=?"([\s\S]*)"$/.exec(formula)?.[1];
  return written === undefined ? formula : written.replaceAll('""', '"');
}

/** A number goes without its `=`. */
const valueJson = (formula: string): string => (/^=-?[\d.]+$/.test(formula) ? formula.slice(1) : formula);

/** Null for a kind that files do not have. */
export function validationOf(json: ValidationJson, extent: Extent): Validation | null {
  const { type, ranges, operator, formula1, formula2, allowBlank, showDropDown, errorStyle, showErrorMessage } = json;
  if (type === "checkbox") {
    const list = validationOf(asList(json), extent);
    return list && { ...list, tickBox: true };
  }
  const kind = type === "listMultiple" ? "list" : type;
  if (!KINDS.has(kind)) return null;
  const formulas = [formula1, formula2].flatMap((one) => {
    if (one === undefined || one === null || one === "") return [];
    if (kind === "list") return [listFormula(String(one))];
    return [valueFormula(kind === "date" ? serialOf(String(one)) : String(one))];
  });
  const shown = Object.entries(ON_WRONG).find(([, code]) => code === (errorStyle ?? ON_WRONG.warning))?.[0];
  return {
    areas: ranges.map((range) => areaOf(range, extent)),
    kind: kind as Validation["kind"],
    operator: (operator ?? "between") as Validation["operator"],
    formulas: kind === "list" ? formulas.slice(0, 1) : formulas,
    allowsBlank: allowBlank ?? true,
    showsList: showDropDown ?? true,
    onWrong: showErrorMessage === false ? "none" : (shown as Validation["onWrong"]),
    ...(json.prompt && { prompt: { title: json.promptTitle ?? "", text: json.prompt } }),
    ...(json.error && { error: { title: json.errorTitle ?? "", text: json.error } }),
  };
}

/** Files know no box to tick: what it may hold stays the same. */
const asList = ({ formula1, formula2, ...json }: ValidationJson): ValidationJson => ({
  ...json,
  type: "list",
  formula1: `${formula1 || 1},${formula2 || 0}`,
});

const DAY = /^(\d{4})[-/](\d{1,2})[-/](\d{1,2})(?:[ T](\d{1,2}):(\d{2})(?::(\d{2}))?)?$/;

/** A day as typed into a rule as the number that files write; what is none is left as it is. */
function serialOf(said: string): string {
  const [year, month, day, hours = 0, minutes = 0, seconds = 0] = (DAY.exec(said.trim()) ?? [])
    .slice(1)
    .map((part) => Number(part ?? 0));
  if (year === undefined || month === undefined || day === undefined) return said;
  const time = Date.UTC(year, month - 1, day, hours, minutes, seconds);
  return String(time / 86_400_000 + 25_569);
}

const listFormula = (said: string) => (said.startsWith("=") ? said : `="${written(said).replaceAll('"', '""')}"`);

/** The plugin may also keep a list as JSON. */
function written(said: string): string {
  try {
    const options: unknown = JSON.parse(said);
    return Array.isArray(options) ? options.join(",") : said;
  } catch {
    return said;
  }
}

const valueFormula = (said: string) => (said.startsWith("=") ? said : `=${said}`);
