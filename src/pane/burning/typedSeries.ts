import type { Product } from "../../core/burn/product";
import type { Fault } from "../../core/fault";
import { tidy } from "../../core/tidy";
import { millimetresIn } from "../../core/units/length";
import { sameName } from "../../runsheet/sameName";
import { type SeriesOrder, seriesFaults } from "../../runsheet/series/planSeries";
import { isNoScent } from "../../runsheet/tables/isNoScent";
import { wickOf } from "../../runsheet/tables/wick";
import { type NumberKind, parseNumber } from "../parseNumber";
import { serialOf, today } from "../today";
import { SERIES } from "../words/series";
import type { Names } from "./namesBeside";
import type { SeriesBeside } from "./seriesBeside";

export const LENGTHS = ["mm", "cm", "in"] as const;

/** A series as it is typed. */
export interface TypedSeries {
  readonly vessel: string;
  readonly width: string;
  readonly widthUnit: (typeof LENGTHS)[number];
  readonly wax: string;
  readonly scent: string;
  readonly load: string;
  /** Parted by lines, commas or semicolons. */
  readonly wicks: string;
  readonly candles: string;
  readonly poured: string;
  readonly cure: string;
  readonly cycles: string;
  readonly atOnce: string;
  readonly product: Product;
  readonly code: string;
}
export type SeriesField = keyof TypedSeries;
export type SaidOfFields = Readonly<Partial<Record<SeriesField, string>>>;

/** What is typed, and where nothing was what the tables know, or a series usually has. */
export function withUsual(given: Partial<TypedSeries>, beside: SeriesBeside | undefined): TypedSeries {
  const { vessel = "", scent = "" } = given;
  const isInches = beside && ["oz", "lb"].includes(beside.settings.unit);
  const widthUnit = given.widthUnit ?? (isInches ? "in" : "mm");
  const [width, load] = [beside?.widthOf(vessel), beside?.loadOf(scent)];
  return {
    ...{ vessel, scent, wax: "", wicks: "", candles: "3", cycles: "6", atOnce: "4", product: "container" },
    ...{ poured: today(), code: beside?.nextCode ?? "", cure: String(beside?.cureOf(scent) ?? "") },
    load: load === undefined ? "" : `${Number((load * 100).toPrecision(8))}%`,
    width: width === undefined ? "" : String(Number((width / millimetresIn("unit", widthUnit)).toPrecision(6))),
    ...given,
    widthUnit,
  };
}

/** A series as it is ordered, names spelt as in the tables. */
export interface ParsedSeries {
  readonly order: SeriesOrder;
  readonly wax: string;
  readonly scent: string;
  /** On the usual basis; undefined as the scent has it. */
  readonly load: number | undefined;
  /** In mm. */
  readonly width: number | undefined;
  readonly product: string;
}

/** What is wrong with what is typed, by field; what is still blank and needed is told apart. */
export function parseSeries(
  typed: TypedSeries,
  { names, tests, nextCode }: Pick<SeriesBeside, "names" | "tests" | "nextCode">,
): { readonly series: ParsedSeries | undefined; readonly wrong: SaidOfFields; readonly blank: SaidOfFields } {
  const wrong: Partial<Record<SeriesField, string>> = {};
  const blank: Partial<Record<SeriesField, string>> = {};
  const say = (field: SeriesField, text: string) => {
    const to = typed[field].trim() === "" ? blank : wrong;
    to[field] ??= text;
  };
  const number = (field: SeriesField, kind: NumberKind): number => {
    const parsed = parseNumber(kind, typed[field]);
    if ("value" in parsed) return parsed.value;
    say(field, parsed.wrong);
    return Number.NaN;
  };
  const optional = (field: SeriesField, kind: NumberKind) =>
    typed[field].trim() === "" ? undefined : number(field, kind);
  const order: SeriesOrder = {
    ...{ code: spaced(typed.code), vessel: asKnown(typed.vessel, names.vessel) },
    wicks: wicksIn(typed.wicks).map((wick) => wickAsKnown(wick, names.wick)),
    ...{ candles: number("candles", "amount"), cycles: number("cycles", "amount"), atOnce: number("atOnce", "amount") },
    ...{ cureDays: number("cure", "amount"), pouredOn: serialOf(typed.poured) ?? Number.NaN },
  };
  const [wax, named] = [asKnown(typed.wax, names.wax), asKnown(typed.scent, names.scent)];
  const scent = isNoScent(named) ? "" : named;
  const [load, width] = [optional("load", "rate"), optional("width", "weight")];
  if (Number.isNaN(order.pouredOn)) wrong.poured = SERIES.noDay;
  if (scent === "" && load) say("load", SERIES.bareLoad);
  for (const fault of seriesFaults(order)) say(fieldOf(fault), fault.sentence);
  const used = usedBy(order.code, tests);
  if (used !== undefined) say("code", SERIES.usedCode(used, nextCode));
  const isWhole = Object.keys({ ...wrong, ...blank }).length === 0;
  const inMillimetres = width === undefined ? undefined : tidy(width * millimetresIn("unit", typed.widthUnit));
  const series = { order, wax, scent, load, width: inMillimetres, product: typed.product };
  return { series: isWhole ? series : undefined, wrong, blank };
}

const spaced = (text: string): string => text.trim().replace(/\s+/g, " ");
const asKnown = (typed: string, names: Names): string => names.get(sameName(typed)) ?? spaced(typed);

export const wicksIn = (typed: string): string[] =>
  typed
    .split(/[\n,;]+/)
    .map(spaced)
    .filter((wick) => wick !== "");

/** As it is spelt where the tables name it, with how many of it there are. */
function wickAsKnown(wick: string, names: Names): string {
  const whole = names.get(sameName(wick));
  if (whole !== undefined) return whole;
  const { name, each } = wickOf(wick);
  const known = names.get(sameName(name));
  return known === undefined || each === 1 ? wick : `${each} x ${known}`;
}

const fieldOf = ({ argument }: Fault): SeriesField => (argument === "cureDays" ? "cure" : (argument as SeriesField));

/** A test that a series of this code would be mistaken for; undefined where there is none. */
function usedBy(code: string, tests: readonly string[]): string | undefined {
  const key = sameName(code);
  if (key === "") return undefined;
  return tests.find((test) => sameName(test) === key || sameName(test).startsWith(`${key}-`));
}
