import type { Basis } from "../../core/scent/basis";
import { linesOf, roomIn } from "../../sheet/textLines";
import { percent } from "../percent";
import { type LoadLimit, shareOf } from "../plan/checks/limits";
import { shortName } from "../plan/oils";
import { nameOf, type PlannedPot, type ScentRun } from "../plan/runPlan";
import type { Ingredient } from "../tables/recipes";
import { keyOf } from "./layout";
import type { Page, PageCell } from "./page";

/** Where a pot stands on its sheet: the rows of its first and last ingredient. */
interface Place {
  readonly top: number;
  readonly bottom: number;
  /** As formulas ask: whether each ingredient of use is weighed. */
  readonly isWeighed: string;
  readonly live: boolean;
  readonly widths: readonly number[];
}

/** What a limit forgives: the noise of the arithmetic. */
const SLACK = 1e-9;

/** Of the characters that fit by the widths: bold letters take more room, and lines break between words. */
const FILLED = 0.75;

/** The column that remarks begin in, and the columns they cover. */
const REMARK = { column: 3, across: 4 };
/** The columns that what is said for safety covers, from the first one on: beside the pane the last ones are out of sight. */
const SAFETY_ACROSS = 5;

/** More text than this is put into several rows: no program shows a row of any height. */
const MOST = 400;

type PageRow = Parameters<Page["row"]>;

/**
 * The rows of the load: after rounding and as weighed, each with a remark where it is over a limit; the same for each
 * oil of a blend with a limit of its own; then, across the page, what else there is to say for safety. None for a
 * pot without scent.
 */
export function loadRows(run: ScentRun, scentNumber: number, pot: PlannedPot, place: Place): PageRow[] {
  const { top, bottom, isWeighed, live, widths } = place;
  const { ingredients } = run;
  const all = ingredients.flatMap(({ isScent }, i) => (isScent ? [i] : []));
  // A share that a recipe leaves at 0 may be written on a live sheet, and is held to its limits then.
  if (!all.some((i) => live || (ingredients[i] as Ingredient).share > 0)) return [];

  const add = (letter: string, places: readonly number[]) => places.map((i) => `${letter}${top + i}`).join("+");
  const wax = ingredients.flatMap(({ basis }, i) => (basis === "part" ? [i] : []));
  const loadOf = (letter: string, basis: Basis, places: readonly number[]) =>
    `(${add(letter, places)})/${basis === "of wax" ? `(${add(letter, wax)})` : `SUM(${letter}${top}:${letter}${bottom})`}`;
  const ifWeighed = (formula: string) => `=IF(${isWeighed},${formula},"")`;

  const overLimit = (letter: string, limits: readonly LoadLimit[]) =>
    limits
      .map(
        (limit) =>
          `IF(${loadOf(letter, limit.basis, limit.ingredients)}>${limit.most}+${SLACK},${quoted(overWords(limit))},"")`,
      )
      .join("&");
  const room = roomIn({ row: 0, ...REMARK }, widths, 0) * FILLED;
  const said = (limits: readonly LoadLimit[], content: PageCell): PageCell => ({
    ...content,
    look: "alert",
    across: REMARK.across,
    // What the formula comes to say at most.
    lines: linesOf(limits.map(overWords).join(""), room),
  });
  const passed = (limits: readonly LoadLimit[]) =>
    limits.filter((limit) => shareOf(limit, pot.weights, ingredients) > limit.most + SLACK).map(overWords);

  const lines = [
    { of: "", basis: run.basis, places: all, limits: run.limits.filter((one) => isOfAll(one, all)) },
    ...run.limits
      .filter((one) => !isOfAll(one, all))
      .map((limit) => ({ of: shortName(limit.of), basis: limit.basis, places: limit.ingredients, limits: [limit] })),
  ];
  const planned = lines.map(({ of, basis, places, limits }): PageRow => {
    const load = { basis, ingredients: places };
    return [
      [
        { text: of === "" ? "Load after rounding" : `${of}: load after rounding` },
        {
          ...(live
            ? { formula: `=${loadOf("D", basis, places)}` }
            : { number: shareOf(load, pot.weights, ingredients) }),
          format: "0.00%",
        },
        { text: basis },
        live && limits.length > 0
          ? said(limits, { formula: `=IF(ISNUMBER(${loadOf("D", basis, places)}),${overLimit("D", limits)},"")` })
          : said(passed(limits).length > 0 ? limits : [], { text: passed(limits).join("") }),
      ],
      "note",
      keyOf(scentNumber, "load"),
    ];
  });
  const weighed = lines.map(
    ({ of, basis, places, limits }): PageRow => [
      [
        { text: of === "" ? "Load as weighed" : `${of}: load as weighed` },
        { formula: ifWeighed(loadOf("E", basis, places)), format: "0.00%" },
        { text: basis },
        limits.length > 0 ? said(limits, { formula: ifWeighed(overLimit("E", limits)) }) : { across: REMARK.across },
      ],
      "note",
      keyOf(scentNumber, "weighed"),
    ],
  );
  const remarks = run.remarks.flatMap(({ text }) => piecesOf(`${nameOf(run)}: ${text}`));
  return [
    ...planned,
    ...weighed,
    ...remarks.map((text): PageRow => [[{ text, look: "alert", across: SAFETY_ACROSS }]]),
  ];
}

/** Whether a limit is for all the scent in the pot. */
const isOfAll = ({ ingredients }: LoadLimit, all: readonly number[]): boolean => ingredients.length === all.length;

/** What stands beside a load that is over a limit. */
const overWords = ({ name, of, basis, most }: LoadLimit): string =>
  `Over the ${name} of ${of === "" ? "" : `${shortName(of)}: `}${percent(most)} % ${basis}. `;

/** A text as a formula holds it. */
const quoted = (text: string): string => `"${text.replace(/"/g, '""')}"`;

/** A text in pieces short enough for a row, broken between words. */
function piecesOf(text: string): string[] {
  const pieces = [""];
  for (const word of text.split(" ")) {
    const joined = `${pieces.at(-1)} ${word}`.trim();
    if (joined.length > MOST) pieces.push(word);
    else pieces[pieces.length - 1] = joined;
  }
  return pieces;
}
