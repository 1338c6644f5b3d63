import { plain } from "../../core/check/plain";
import { isoOfDay } from "../../core/label/isoDay";
import { addAll } from "../../core/longLists";
import { sum } from "../../core/statistics/sum";
import { tidy } from "../../core/tidy";
import { amountWords } from "../amountWords";
import { asWarning, type Problem } from "../problem";
import type { WeightUnit } from "../settings";
import { lotName, type Supplies, type Supply } from "../stock/supplies";
import type { FittingTables } from "../tables/fittings";
import type { Beside, Use } from "./beside";
import { type Bought, buying, type Delivery } from "./buying";
import { isItItem } from "./nearItem";
import {
  type OpenRunBeside,
  openRunProblems,
  openRunsBeside,
  sharedLines,
  takenOf,
  takenWords,
  usesWords,
} from "./openRuns";
import type { RunPlan } from "./runPlan";
import { keyOf, knownUses, usesOf } from "./uses";

/** What the shelf lacks of an item, and the packs that cover it at the least cost (none where no pack is known). */
export interface Lack extends Use, Bought {
  /** Without what run sheets that are not logged yet will take of it. */
  readonly onHand: number;
  readonly reserved: number;
  readonly missing: number;
}

/** An item of which less will be left than there should be. */
export interface Low {
  readonly item: string;
  /** Undefined where nothing says whether it is weighed or counted. */
  readonly by: "weight" | "count" | undefined;
  readonly left: number;
  readonly reorderBelow: number;
}

/** What the shelf lacks for a run, and the items that were not checked: nobody knows what is on hand. */
export interface Shelf {
  readonly lacks: readonly Lack[];
  readonly unchecked: readonly string[];
  /** What the orders for what is missing cost on top. */
  readonly deliveries: readonly Delivery[];
  readonly low: readonly Low[];
  /** The runs that are written and not logged, and in words what those that count take of what this one uses. */
  readonly openRuns: readonly OpenRunBeside[];
  readonly alsoPlanned: readonly string[];
}

/** What the shelf lacks for a run. Items that could not be checked are named to look at. */
export function shortages(
  plan: RunPlan,
  supplies: Supplies,
  tables: FittingTables,
  unit: WeightUnit,
  beside: Beside = {},
): { shelf: Shelf; problems: Problem[] } {
  const all = usesOf(plan, tables);
  const uses = knownUses(all);
  const unchecked: string[] = [...all.unknown];
  const shared: SharedUse[] = [];
  const [absent, unwritten]: [Use[], string[]] = [[], []];
  const problems: Problem[] = [];
  const lacking: { readonly lack: Omit<Lack, keyof Bought>; readonly supply: Supply }[] = [];
  const openRuns = openRunsBeside(plan, tables, beside);
  for (const use of uses) {
    const known = supplies.supply(use.item, use.isCounted ? "count" : "weight");
    if (!known) absent.push(use);
    else addAll(problems, known.wrong.map(asWarning), known.looks, pastLots(known));
    if (known && known.wrong.length === 0 && known.onHand === undefined) unwritten.push(use.item);
    if (!known || known.wrong.length > 0 || known.onHand === undefined) {
      unchecked.push(use.item);
      continue;
    }
    const promised = takenOf(openRuns, use);
    const taken = sum(promised.map(({ amount }) => amount));
    // What those lack was said with them.
    const onHand = Math.max(Math.min(0, known.onHand), tidy(known.onHand - taken));
    const missing = tidy(use.amount - onHand);
    if (missing <= 0) continue;
    lacking.push({ lack: { ...use, onHand, reserved: taken, missing }, supply: known });
    if (taken > 0) shared.push({ ...use, promised });
  }
  addAll(problems, alsoPlannedWords(shared, unit));
  const near = absent.map((use) => ({ use, ask: isItItem(use, all.uses, supplies) }));
  const plainly = near.flatMap(({ use, ask }) => (ask === "" ? [use.item] : []));
  addAll(
    problems,
    near.flatMap(({ use, ask }) => (ask === "" ? [] : notChecked([use.item], ABSENT, ask))),
    notChecked(plainly, ABSENT),
    notChecked(unwritten, "nothing is written in On hand"),
  );
  const {
    bought,
    deliveries,
    problems: ofBuying,
  } = buying(lacking.map(({ lack, supply: { offers } }) => ({ item: lack.item, missing: lack.missing, offers })));
  const low = lowItems(supplies, uses, openRuns);
  addAll(problems, ofBuying, deliveries.map(deliveryWords), lowWords(low, unit), openRunProblems(openRuns, beside));
  const lacks = lacking.map(({ lack }, i) => ({ ...lack, ...(bought[i] as Bought) }));
  const alsoPlanned = sharedLines(openRuns, uses, unit);
  return { shelf: { lacks, unchecked, deliveries, low, openRuns, alsoPlanned }, problems };
}

/** Something that is missing, and what runs that are not logged will take of it. */
interface SharedUse extends Use {
  readonly promised: ReturnType<typeof takenOf>;
}

/** What of the missing is missing as other runs take of it: one sentence, by run where it is of several items. */
function alsoPlannedWords(shared: readonly SharedUse[], unit: WeightUnit): Problem[] {
  const [first, ...others] = shared;
  if (first === undefined) return [];
  if (others.length === 0) {
    return [warning(`${first.item}: also planned: ${takenWords(first.promised, first.isCounted, unit)}`)];
  }
  const lots = [...new Set(shared.flatMap(({ promised }) => promised.map(({ lot }) => lot)))];
  const each = lots.map((lot) => {
    const uses = shared.flatMap(({ promised, ...use }) =>
      promised.filter((one) => one.lot === lot).map(({ amount }) => ({ ...use, amount })),
    );
    return `run ${lot}, ${usesWords({ uses, unknown: [] }, unit)}`;
  });
  return [warning(`${shared.map(({ item }) => item).join(", ")}: also planned: ${each.join("; ")}`)];
}

const warning = (text: string): Problem => ({ text, severity: "warning" });

/** What is there and does not count: it is named, for the maker may know that it is still good. */
const pastLots = ({ item, past }: Supply): Problem[] =>
  past.map(({ lot, quantity, bestBefore }) =>
    warning(
      `${item}: ${plain(quantity)} of ${lotName(lot)} is past its best before, ${isoOfDay(bestBefore ?? 0)}, and does not count. If it is still good, add a row of 0 to Moves with its new best before`,
    ),
  );

const ABSENT = "in no table of items";

function notChecked(items: readonly string[], why: string, ask = ""): Problem[] {
  if (items.length === 0) return [];
  return [
    warning(`${items.join(", ")}: ${why}, so ${items.length === 1 ? "its" : "their"} stock is not checked${ask}`),
  ];
}

/** All items of which this run and those before it leave less than there should be. */
function lowItems(supplies: Supplies, uses: readonly Use[], openRuns: readonly OpenRunBeside[]): Low[] {
  return supplies.all.flatMap(({ item, use: said }): Low[] => {
    const used = uses.filter((one) => keyOf(one) === keyOf({ ...one, item }));
    const [first] = used;
    const by = first ? (first.isCounted ? "count" : "weight") : said;
    const isCounted = by === "count";
    const known = supplies.supply(item, by ?? "weight");
    if (known?.onHand === undefined || known.wrong.length > 0 || known.reorderBelow === undefined) return [];
    const taken = sum([...used, ...takenOf(openRuns, { item, isCounted })].map(({ amount }) => amount));
    const left = Math.max(0, tidy(known.onHand - taken));
    return left < known.reorderBelow ? [{ item, by, left, reorderBelow: known.reorderBelow }] : [];
  });
}

function lowWords(low: readonly Low[], unit: WeightUnit): Problem[] {
  if (low.length === 0) return [];
  const each = low.map(({ item, by, left, reorderBelow }) => {
    const [rest, least] = [left, reorderBelow].map((one) => amountWords(one, by ?? "count", unit));
    return `${item} (${rest} left, below ${least})`;
  });
  return [warning(`Time to reorder: ${each.join(", ")}`)];
}

const deliveryWords = ({ supplier, items, cost }: Delivery): Problem =>
  warning(`Delivery of ${items.join(", ")}${supplier && ` from ${supplier}`} costs ${cost.toFixed(2)} on top`);
