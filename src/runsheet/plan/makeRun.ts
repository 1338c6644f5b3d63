import { addAll } from "../../core/longLists";
import { isError, type Problem } from "../problem";
import type { Settings, UsualSetting } from "../settings";
import { Supplies } from "../stock/supplies";
import type { ReadTables } from "../tables/readTables";
import type { Beside } from "./beside";
import { askAbout } from "./checks/askAbout";
import { componentProblems } from "./checks/components";
import { unlikelyFills, unlikelySizes } from "./checks/fillSizes";
import { defaultLoads, otherBases } from "./checks/loads";
import { highLoss } from "./checks/loss";
import { untestedCandles } from "./checks/untested";
import { scentProblems, vesselProblems } from "./checks/usedRows";
import { waxProblems } from "./checks/waxes";
import { wickProblems } from "./checks/wicks";
import { type Costs, costs } from "./costs";
import { fetchList, type Thing } from "./fetchList";
import { planRun } from "./planRun";
import { pourRows } from "./pourRows";
import type { RunPlan } from "./runPlan";
import { type Shelf, shortages } from "./shortages";

/** What comes of the tables as they are now: a plan of the rows that are right, and everything there is to say. */
export interface Run {
  readonly plan: RunPlan;
  /** All that it takes, to fetch and prepare. */
  readonly things: readonly Thing[];
  /** The approved wick of each vessel by its name; none for one without. */
  readonly wicks: ReadonlyMap<string, string>;
  /** Undefined where no table says what is on hand. */
  readonly shelf: Shelf | undefined;
  /** Undefined where no table says what anything costs, or where a price is lacking. */
  readonly costs: Costs | undefined;
  /** The defaults that served any row. */
  readonly usual: ReadonlySet<UsualSetting>;
  /** How many rows name a vessel and no quantity: they are not poured. */
  readonly leftOut: number;
  /** Safety first, then errors, then warnings, each in the order of the rows. */
  readonly problems: readonly Problem[];
}

/** From rows to a plan. Where the batch cannot be read, the plan is empty and the problems say why. */
export function makeRun(
  { rows: read, problems: barring, doubts, asked }: ReadTables,
  settings: Settings,
  beside: Beside = {},
): Run {
  const { scents = new Map(), recipes = new Map(), vessels = new Map(), components = new Map() } = read;
  const poured = pourRows(read.pour, { scents, recipes, vessels: read.vessels }, settings);
  const { rows, usual, leftOut } = poured;
  const { plan, problems: planned } = planRun(rows, { scents, recipes }, settings);
  const supplies = new Supplies(read, settings.stockPrice, beside.today);
  const problems: Problem[] = [
    ...barring,
    ...unlikelyFills(rows, vessels, settings),
    ...unlikelySizes(rows, settings.unit),
    ...poured.problems,
    ...planned,
    ...asked.flatMap((column) => askAbout(column, usual)),
    ...otherBases(rows),
    ...defaultLoads(rows, { scents: read.scents, recipes }),
    ...highLoss(settings),
    ...doubts,
    ...waxProblems(
      rows,
      recipes,
      supplies.all.map(({ item }) => item),
    ),
    ...scentProblems(poured, { scents: read.scents, recipes }),
  ];
  addAll(problems, vesselProblems(rows, vessels, problems));
  if (plan.totals.candles === 0 && !problems.some(isError)) {
    const text = "Quantity: no row has one; write how many candles to pour";
    problems.push({ field: "quantity", severity: "error", text });
  }
  const fittings = { vessels, components };
  const stocked = supplies.hasStock ? shortages(plan, supplies, fittings, settings.unit, beside) : undefined;
  const priced = supplies.hasPrices ? costs(plan, supplies, fittings, settings, beside) : undefined;
  addAll(
    problems,
    componentProblems(plan, { vessels, components }),
    wickProblems(plan, read),
    untestedCandles(plan, vessels, read, settings),
    stocked?.problems ?? [],
    priced?.problems ?? [],
  );
  return {
    plan,
    things: fetchList(plan, fittings),
    wicks: new Map([...vessels].flatMap(([key, { wick }]) => (wick === "" ? [] : [[key, wick]]))),
    shelf: stocked?.shelf,
    costs: priced?.costs,
    usual,
    leftOut,
    problems: inOrder(problems),
  };
}

/** Each problem once, for a heading that is wrong is wrong for each item below it; the worst first. */
function inOrder(problems: readonly Problem[]): Problem[] {
  const once = [...new Map(problems.map((problem) => [JSON.stringify(problem), problem])).values()];
  return once.sort((a, b) => rankOf(a) - rankOf(b) || (a.row ?? -1) - (b.row ?? -1));
}

/** Safety stands above all else, and of it what is to be fixed. */
const rankOf = (problem: Problem): number => (problem.safety ? 0 : 2) + (isError(problem) ? 0 : 1);
