import { list } from "../../../core/check/list";
import { plain } from "../../../core/check/plain";
import type { Basis } from "../../../core/scent/basis";
import { overLimit } from "../../../core/scent/overLimit";
import { recipeSplit } from "../../../core/scent/recipeSplit";
import { sum } from "../../../core/statistics/sum";
import { percent } from "../../percent";
import { isError, type Problem, type Severity } from "../../problem";
import { sameName } from "../../sameName";
import type { Settings } from "../../settings";
import type { Ingredient } from "../../tables/recipes";
import type { ScentNotes, Scents } from "../../tables/scents";
import { type Oil, shortName } from "../oils";

/** The most that some of a pot's ingredients may come to together. */
export interface LoadLimit {
  readonly name: "wax maximum" | "product limit";
  /** The oil whose limit it is; empty for the scent of the run itself. */
  readonly of: string;
  readonly basis: Basis;
  readonly most: number;
  /** The places of the ingredients whose weights count. */
  readonly ingredients: readonly number[];
}

/** A sentence for the pane and the sheet, with the cell it is about. */
export type Remark = Pick<Problem, "table" | "row" | "field" | "text">;

/**
 * All limits that hold for a pot. The wax maximum is for all scent together: of the scent's own and those of its oils
 * the lowest counts. The product limit of the scent is for all of it; each oil of a blend has its own besides.
 */
export function limitsOf(own: ScentNotes | undefined, oils: readonly Oil[]): LoadLimit[] {
  const all = oils.flatMap(({ at }) => at);
  if (all.length === 0) return [];
  const rows = [{ of: "", notes: own, at: all }, ...others(own, oils).map((oil) => ({ ...oil, of: oil.name }))];
  const limits = (name: LoadLimit["name"], basis: Basis, key: "waxMaximum" | "productLimit"): LoadLimit[] =>
    rows.flatMap(({ of, notes, at }) => {
      const most = notes?.[key];
      return most === undefined ? [] : [{ name, of, basis, most, ingredients: key === "waxMaximum" ? all : at }];
    });
  const lowest = limits("wax maximum", "of wax", "waxMaximum")
    .sort((a, b) => a.most - b.most)
    .slice(0, 1);
  return [...lowest, ...limits("product limit", "of total", "productLimit")];
}

/** The oils with a row of their own in the table of scents, beside the row of the scent of the run. */
const others = (own: ScentNotes | undefined, oils: readonly Oil[]): Oil[] =>
  oils.filter(({ notes }) => notes !== undefined && notes !== own);

/** What of the limits is not known, in words. A limit whose cell is wrong is spoken of there. */
export function unknownLimits(own: ScentNotes | undefined, oils: readonly Oil[]): Remark[] {
  if (oils.length === 0) return [];
  const rows = [own, ...oils.map(({ notes }) => notes)];
  const isGiven = (notes: ScentNotes | undefined, key: "waxMaximum" | "productLimit") =>
    notes !== undefined && (notes[key] !== undefined || notes.misread.has(key));
  const isMaximumGiven = rows.some((notes) => isGiven(notes, "waxMaximum"));
  const remark = (what: string, field: "waxMaximum" | "productLimit", notes = own): Remark => ({
    ...(notes ? { table: "scents", row: notes.row, field } : { field: "scent" }),
    text: `${what} not known: not checked`,
  });
  if (oils.length === 1) {
    const isLimitGiven = rows.some((notes) => isGiven(notes, "productLimit"));
    const what = [!isMaximumGiven && "wax maximum", !isLimitGiven && "product limit"].filter((one) => one !== false);
    return what.length === 0 ? [] : [remark(what.join(" and "), isMaximumGiven ? "productLimit" : "waxMaximum")];
  }
  const bare = oils.filter(({ notes }) => !isGiven(notes, "productLimit"));
  const names = list(
    bare.map(({ name }) => shortName(name)),
    "and",
  );
  return [
    ...(isMaximumGiven ? [] : [remark("wax maximum", "waxMaximum")]),
    ...(bare.length === 0 ? [] : [remark(`product limit of ${names}`, "productLimit", bare[0]?.notes ?? own)]),
  ];
}

/** More scent than this no candle wax holds, with room to spare; most hold up to an eighth. Common practice, no source. */
const MOST_OF_WAX = 0.2;

/** What is found of a scent, wherever its row is. */
type Found = Omit<Problem, "row">;

/** A load that may be a slip of its point, where no wax maximum holds it: 0.6 for 6 %. */
export function highLoad(ofWax: number, limits: readonly LoadLimit[]): Found[] {
  if (ofWax <= MOST_OF_WAX || limits.some(({ name }) => name === "wax maximum")) return [];
  const text = `a load of ${percent(ofWax)} % of wax is more than waxes hold as a rule; check it`;
  return [{ field: "load", severity: "warning", text }];
}

/** What is a scent by the table of scents and does not count as one in the recipe: no limit would hold it. */
export function uncounted(ingredients: readonly Ingredient[], scents: Scents): Found[] {
  return ingredients.flatMap(({ name, share, basis, isScent }): Found[] => {
    if (isScent || share === 0 || !scents.has(sameName(name))) return [];
    const begin = `${shortName(name)} is in the table of scents and`;
    const inParts = `${begin} stands in the recipe as parts of the wax; give it a load, of wax or of total`;
    return basis === "part"
      ? [{ field: "scent", severity: "error", text: inParts }]
      : [
          {
            field: "scent",
            severity: "warning",
            text: `${begin} its kind in the recipe is another: no limit counts it`,
          },
        ];
  });
}

/** What the ingredients of a limit come to by these weights, on the basis of the limit. */
export function shareOf(
  limit: Pick<LoadLimit, "basis" | "ingredients">,
  weights: readonly number[],
  all: readonly Ingredient[],
): number {
  const scent = sum(limit.ingredients.map((i) => weights[i] as number));
  const base = limit.basis === "of wax" ? weights.filter((_, i) => all[i]?.basis === "part") : weights;
  return scent === 0 ? 0 : scent / sum(base);
}

/** How far a share is over a limit, in words; empty within it. */
function overText({ name, of, most }: LoadLimit, share: number): string {
  const text = overLimit(name === "wax maximum" ? "waxMaximum" : "productLimit", share, most);
  if (text === "" || of === "") return text;
  return name === "wax maximum" ? `${text} (the maximum of ${shortName(of)})` : `${shortName(of)}, ${text}`;
}

interface Weighed {
  readonly limits: readonly LoadLimit[];
  readonly ingredients: readonly Ingredient[];
  readonly pots: readonly { readonly weights: readonly number[] }[];
}

/**
 * Loads over their limits: as planned, and as weighed out. A product limit is for safety, an error in both; a wax
 * maximum is for the wax to hold, and when only rounding leads over it, it is to be looked at.
 */
export function overLimits({ limits, ingredients, pots }: Weighed, settings: Settings): Found[] {
  const problem = (severity: Severity, text: string): Found => ({ field: "load", severity, text });
  const passed = (weights: readonly number[]) =>
    limits.flatMap((limit) => {
      const text = overText(limit, shareOf(limit, weights, ingredients));
      return text === "" ? [] : [{ text, severity: limit.name === "product limit" ? "error" : "warning" } as const];
    });
  const all = ingredients.flatMap(({ isScent }, i) => (isScent ? [i] : []));
  const split = recipeSplit(1, ingredients);
  const ofWax = shareOf({ basis: "of wax", ingredients: all }, split, ingredients);
  if (ofWax >= 1) return [problem("error", `its scent comes to ${percent(ofWax)} % of wax; keep it below 100 %`)];
  const planned = passed(split);
  if (planned.length > 0) return [problem("error", planned.map(({ text }) => text).join("; "))];
  // Many pots may hold the same: one sentence speaks of all.
  const found = new Map<string, { numbers: number[]; severity: Severity }>();
  for (const [i, { weights }] of pots.entries()) {
    const over = passed(weights);
    if (over.length === 0) continue;
    const text = over.map((one) => one.text).join("; ");
    const numbers = [...(found.get(text)?.numbers ?? []), i + 1];
    found.set(text, { numbers, severity: over.some(isError) ? "error" : "warning" });
  }
  const scale = `weighed out in steps of ${plain(settings.division)} ${settings.unit}`;
  return [...found].map(([text, { numbers, severity }]) => {
    const which = numbers.length === 1 ? `pot ${numbers[0]}` : `pot ${numbers[0]} and ${numbers.length - 1} more`;
    return problem(severity, `${which}, ${scale}: ${text}. Lower the load a little, or weigh on a finer scale`);
  });
}
