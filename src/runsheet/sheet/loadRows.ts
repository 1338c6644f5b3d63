import type { Basis } from "../../core/scent/basis";
import { percent } from "../percent";
import { type LoadLimit, shareOf } from "../plan/checks/limits";
import { shortName } from "../plan/oils";
import type { PlannedPot, ScentRun } from "../plan/runPlan";
import type { Ingredient } from "../tables/recipes";
import { AT, cellAt, keyed, type Rows, rangeAt } from "./layout";
import type { HiddenCells, Page, PageCell } from "./page";

/** Where a pot stands on its sheet, and how it is written. */
interface Place {
  readonly scentNumber: number;
  /** Of its ingredients. */
  readonly rows: Rows;
  /** As formulas ask: whether each ingredient of use is weighed. */
  readonly isWeighed: string;
  readonly live: boolean;
}

/** What a limit forgives: the noise of the arithmetic. */
const SLACK = 1e-9;

/** A load of a pot: of all its scent, or of what a limit of its own holds. */
interface Line {
  /** The oil whose load it is; empty for all scent. */
  readonly of: string;
  readonly basis: Basis;
  /** The places of the ingredients that count. */
  readonly ingredients: readonly number[];
  readonly limits: readonly LoadLimit[];
}

/** The cells of a row that stand left of its steps, and those that are hidden. */
export interface LeftRow {
  readonly cells: readonly PageCell[];
  readonly look?: Parameters<Page["row"]>[1];
  readonly hidden: HiddenCells;
}

/**
 * The rows of the load, after rounding and as weighed, and the same for each oil of a blend with a limit of its own. In
 * hidden columns stands what is to say where one is over a limit. None for a pot without scent.
 */
export function loadRows(run: ScentRun, pot: PlannedPot, place: Place): LeftRow[] {
  const loads = new Loads(run.ingredients, place);
  return loadLines(run, place.live).map((line) => loads.row(line, pot));
}

/** The limits that are looked at in a pot: all that may be said of them. */
export const limitWords = ({ limits }: Pick<ScentRun, "limits">): string => limits.map(overWords).join("");

function loadLines({ basis, limits, ingredients }: ScentRun, live: boolean): Line[] {
  const all = ingredients.flatMap(({ isScent }, i) => (isScent ? [i] : []));
  // A share that a recipe leaves at 0 may be written on a live sheet, and is held to its limits then.
  if (!all.some((i) => live || (ingredients[i] as Ingredient).share > 0)) return [];
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

  row(line: Line, { weights }: PlannedPot): LeftRow {
    const { live, scentNumber, isWeighed } = this.place;
    const { of, basis, limits } = line;
    const load = this.formula("planned", line);
    const over = limits.filter((limit) => shareOf(limit, weights, this.ingredients) > limit.most + SLACK);
    const ifWeighed = (formula: string) => `=IF(${isWeighed},${formula},"")`;
    return {
      cells: [
        // On the bench the load as weighed is worked out by hand or typed later: it stands below the actual weights.
        { text: of === "" ? "Load after rounding" : `Load of ${of}`, look: "name" },
        {
          ...(live ? { formula: `=${load}` } : { number: shareOf(line, weights, this.ingredients) }),
          format: "0.00%",
        },
        { text: `${basis}; weighed:`, look: "body", across: 2 },
        { formula: ifWeighed(this.formula("actual", line)), format: "0.00%" },
        {},
      ],
      look: "note",
      hidden: {
        [AT.plannedRemark]: live
          ? { formula: `=IF(ISNUMBER(${load}),${this.overLimits("planned", limits)},"")` }
          : { text: over.map(overWords).join("") },
        [AT.loadRemark]: { formula: ifWeighed(this.overLimits("actual", limits)) },
        ...keyed(scentNumber, "loads"),
      },
    };
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
    if (limits.length === 0) return '""';
    return limits
      .map((limit) => `IF(${this.formula(column, limit)}>${limit.most}+${SLACK},${quoted(overWords(limit))},"")`)
      .join("&");
  }
}

/** Whether a limit is for all the scent in the pot. */
const isOfAll = ({ ingredients }: LoadLimit, all: readonly number[]): boolean => ingredients.length === all.length;

/** What stands in a pot that is over a limit: short, for it has room for all of its limits together. */
function overWords({ name, of, basis, most }: LoadLimit): string {
  const limit = of !== "" && name === "product limit" ? "limit" : name;
  return `Over the ${limit} of ${of === "" ? "" : `${shortName(of)}: `}${percent(most)} % ${basis}. `;
}

/** A text as a formula holds it. */
const quoted = (text: string): string => `"${text.replace(/"/g, '""')}"`;
