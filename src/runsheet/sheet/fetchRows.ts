import { plain } from "../../core/check/plain";
import type { Thing } from "../plan/fetchList";
import type { Run } from "../plan/makeRun";
import type { Settings } from "../settings";
import { inRoom } from "./formats";
import { AT, fixedAt, keyed, type Rows } from "./layout";
import type { Page, PageCell } from "./page";
import type { Writing } from "./potBlock";

/**
 * The one list of what to fetch and prepare before the first pot, each thing with a box to tick and one for its lot:
 * what is weighed, the vessels with their wicks and components, the pots. A lot that is written here holds for all pots
 * that name none. The list runs down the left half of the page and on down the right one.
 * @param pots the rows that the pots stand in, which the totals of a live sheet add up
 */
export function fetchRows(page: Page, { things, plan }: Run, writing: Writing, pots: Rows): void {
  if (things.length === 0) return;
  const halves = [...things.map((thing) => thingCells(thing, writing, pots)), potCells(plan.totals.pots)];
  const half = Math.ceil(halves.length / 2);
  page.skip();
  page.headings([
    ...["Fetch and prepare", "Needed", "Ready", "Lot used"].map((text) => ({ text })),
    { text: "", across: AT.neededRight - AT.nameRight },
    ...["Needed", "Ready"].map((text) => ({ text })),
    { text: "Lot used", across: page.width - AT.lotRight },
  ]);
  for (const [i, left] of halves.slice(0, half).entries()) {
    const right = halves[half + i];
    page.row([...left.cells, ...(right ? onTheRight(right, page.width) : [])], undefined, {
      [AT.thing]: left.id,
      [AT.thingRight]: right?.id,
      ...keyed("*", "thing"),
    });
  }
}

/** What stands in half a row. The id tells whose lot is written there. */
interface Half {
  readonly cells: readonly [name: PageCell, needed: PageCell, box: PageCell, lot: PageCell];
  readonly id?: PageCell;
}

function onTheRight({ cells: [name, needed, box, lot] }: Half, width: number): PageCell[] {
  return [{ ...name, across: AT.neededRight - AT.nameRight }, needed, box, { ...lot, across: width - AT.lotRight }];
}

export const isCounted = ({ kind }: Thing): boolean => kind === "vessel" || kind === "wick" || kind === "component";

const KINDS: Readonly<Partial<Record<Thing["kind"], string>>> = {
  wax: "Wax",
  dye: "Dye",
  scent: "Scent",
  wick: "Wick",
};

/** A thing's name with what it is, where the name does not say so itself. */
function thingName({ kind, name }: Thing): string {
  const word = KINDS[kind];
  return word === undefined || name.toLowerCase().includes(word.toLowerCase()) ? name : `${word}: ${name}`;
}

function thingCells(thing: Thing, { settings, weight, scale }: Writing, pots: Rows): Half {
  const { live, unit } = settings;
  const format = isCounted(thing) ? "0" : inRoom(live ? scale : weight, unit);
  const amount: PageCell =
    thing.amount === undefined
      ? { text: "count" }
      : { ...(live ? { formula: `=${neededOf(thing, pots)}` } : { number: thing.amount }), format };
  return {
    cells: [
      { text: thingName(thing), look: "name" },
      { ...amount, look: "label", align: "right" },
      { look: "blank", isTick: true },
      { look: "blank", format: "@" },
    ],
    id: { text: thing.id },
  };
}

/** What the rows of the pots hold of a thing: by weight, or by the count of the vessels that take it. */
export function neededOf({ id, of, kind }: Thing, pots: Rows): string {
  const sumOf = (thing: string, column: "planned" | "count") =>
    `SUMIF(${fixedAt("thing", pots)},"${criterion(thing)}",${fixedAt(column, pots)})`;
  if (of.length === 0) return sumOf(id, "planned");
  const terms = of.map(({ vessel, each = 0 }) => `${each === 1 ? "" : `${plain(each)}*`}${sumOf(vessel, "count")}`);
  // Half a box is a box.
  return kind === "vessel" ? terms.join("+") : `ROUNDUP(ROUND(${terms.join("+")},9),0)`;
}

/** A text as the criterion of a sum, in which no sign means anything else. */
const criterion = (text: string): string => text.replace(/[~*?]/g, "~$&").replace(/"/g, '""');

/** What a pot holds stands in the head. */
function potCells(pots: number): Half {
  return {
    cells: [
      { text: "Pots to fill", look: "name" },
      { number: pots, format: "0", look: "label", align: "right" },
      { look: "blank", isTick: true },
      {},
    ],
  };
}

/** What comes from other tables: also on a live sheet it is what it was when the sheet was written. */
export const asPlanned = (text: string, { live }: Settings): string => (live ? `${text}, as planned` : text);
