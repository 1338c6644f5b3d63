import type { Basis } from "../../core/scent/basis";
import { linesOf, roomIn } from "../../sheet/textLines";
import { percent } from "../percent";
import { type LoadLimit, shareOf } from "../plan/checks/limits";
import { shortName } from "../plan/oils";
import { nameOf, type PlannedPot, type ScentRun } from "../plan/runPlan";
import type { Ingredient } from "../tables/recipes";
import { AT, cellAt, keyOf, rangeAt } from "./layout";
import type { Page, PageCell } from "./page";
import type { Rows } from "./potFormulas";

/** Where a pot stands on its sheet, and how it is written. */
interface Place {
  readonly scentNumber: number;
  /** Of its ingredients. */
  readonly rows: Rows;
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
const REMARK = { column: AT.loadRemark, across: 4 };
/** The columns that what is said for safety covers, from the first one on: beside the pane the last ones are out of sight. */
const SAFETY_ACROSS = 5;

/** More text than this is put into several rows: no program shows a row of any height. */
const MOST = 400;

type PageRow = Parameters<Page["row"]>;

/** A load of a pot: of all its scent, or of what a limit of its own holds. */
interface Line {
  /** The oil whose load it is; empty for all scent. */
  readonly of: string;
  readonly basis: Basis;
  /** The places of the ingredients that count. */
  readonly ingredients: readonly number[];
  readonly limits: readonly LoadLimit[];
}

/**
 * The rows of the load: after rounding and as weighed, each with a remark where it is over a limit; the same for each
 * oil of a blend with a limit of its own; then, across the page, what else there is to say for safety. None for a
 * pot without scent.
 */
export function loadRows(run: ScentRun, pot: PlannedPot, place: Place): PageRow[] {
  const { ingredients } = run;
  const all = ingredients.flatMap(({ isScent }, i) => (isScent ? [i] : []));
  // A share that a recipe leaves at 0 may be written on a live sheet, and is held to its limits then.
  if (!all.some((i) => place.live || (ingredients[i] as Ingredient).share > 0)) return [];
  const lines = loadLines(run, all);
  const loads = new Loads(ingredients, place);
  const remarks = run.remarks.flatMap(({ text }) => piecesOf(`${nameOf(run)}: ${text}`));
  return [
    ...lines.map((line) => loads.planned(line, pot)),
    ...lines.map((line) => loads.weighed(line)),
    ...remarks.map((text): PageRow => [[{ text, look: "alert", across: SAFETY_ACROSS }]]),
  ];
}

function loadLines({ basis, limits }: ScentRun, all: readonly number[]): Line[] {
  return [
    { of: "", basis, ingredients: all, limits: limits.filter((one) => isOfAll(one, all)) },
    ...limits
      .filter((one) => !isOfAll(one, all))
      .map((limit) => ({ ...limit, of: shortName(limit.of), limits: [limit] })),
  ];
}

/** Writes loads as rows. */
class Loads {
  constructor(
    private readonly ingredients: readonly Ingredient[],
    private readonly place: Place,
  ) {}

  /** The load after rounding. */
  planned(line: Line, { weights }: PlannedPot): PageRow {
    const { live, scentNumber } = this.place;
    const { of, basis, limits } = line;
    const load = this.formula("planned", line);
    const passed = limits.filter((limit) => shareOf(limit, weights, this.ingredients) > limit.most + SLACK);
    const remark =
      live && limits.length > 0
        ? this.remark(limits, { formula: `=IF(ISNUMBER(${load}),${this.overLimits("planned", limits)},"")` })
        : this.remark(passed.length > 0 ? limits : [], { text: passed.map(overWords).join("") });
    return [
      [
        { text: of === "" ? "Load after rounding" : `${of}: load after rounding` },
        {
          ...(live ? { formula: `=${load}` } : { number: shareOf(line, weights, this.ingredients) }),
          format: "0.00%",
        },
        { text: basis },
        remark,
      ],
      "note",
      keyOf(scentNumber, "load"),
    ];
  }

  /** The load as weighed, once all is. */
  weighed(line: Line): PageRow {
    const { scentNumber, isWeighed } = this.place;
    const { of, basis, limits } = line;
    const ifWeighed = (formula: string) => `=IF(${isWeighed},${formula},"")`;
    return [
      [
        { text: of === "" ? "Load as weighed" : `${of}: load as weighed` },
        { formula: ifWeighed(this.formula("actual", line)), format: "0.00%" },
        { text: basis },
        limits.length > 0
          ? this.remark(limits, { formula: ifWeighed(this.overLimits("actual", limits)) })
          : { across: REMARK.across },
      ],
      "note",
      keyOf(scentNumber, "weighed"),
    ];
  }

  /** A load by the weights of a column. */
  private formula(column: "planned" | "actual", { basis, ingredients }: Pick<Line, "basis" | "ingredients">): string {
    const { first, last } = this.place.rows;
    const add = (places: readonly number[]) => places.map((i) => cellAt(column, first + i)).join("+");
    const wax = this.ingredients.flatMap((one, i) => (one.basis === "part" ? [i] : []));
    return `(${add(ingredients)})/${basis === "of wax" ? `(${add(wax)})` : `SUM(${rangeAt(column, first, last)})`}`;
  }

  /** What to say of the limits that the weights of a column are over. */
  private overLimits(column: "planned" | "actual", limits: readonly LoadLimit[]): string {
    return limits
      .map((limit) => `IF(${this.formula(column, limit)}>${limit.most}+${SLACK},${quoted(overWords(limit))},"")`)
      .join("&");
  }

  private remark(limits: readonly LoadLimit[], content: PageCell): PageCell {
    const room = roomIn({ row: 0, ...REMARK }, this.place.widths, 0) * FILLED;
    // What the formula comes to say at most.
    const lines = linesOf(limits.map(overWords).join(""), room);
    return { ...content, look: "alert", across: REMARK.across, lines };
  }
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
