import type { Run } from "../plan/makeRun";
import { packWords } from "../plan/packWords";
import type { Lack } from "../plan/shortages";
import { sameName } from "../sameName";
import type { Settings } from "../settings";
import { asPlanned, isCounted, neededOf } from "./fetchRows";
import { MONEY } from "./formats";
import { cellAt, keyed, type Rows } from "./layout";
import type { Page, PageCell } from "./page";
import type { Writing } from "./potBlock";

/** What of the things to fetch is missing, and the packs to buy; and what was not compared with what is on hand. */
export function lackRows(page: Page, { things, shelf }: Run, writing: Writing, pots: Rows): void {
  if (shelf === undefined) return;
  const { settings, weight } = writing;
  const { lacks, unchecked, alsoPlanned } = shelf;
  page.skip();
  if (lacks.length > 0) {
    page.headings([
      ...["Missing", "Ready", "On hand", `Missing`].map((text) => ({ text })),
      { text: asPlanned("Buy", settings), across: 6 },
    ]);
  } else if (unchecked.length === 0) page.line(asPlanned("All that this run takes is on hand", settings), "note");
  for (const lack of lacks) {
    const needed = neededOfAll(things, lack, pots);
    const format = lack.isCounted ? "0" : weight;
    const missing: PageCell =
      settings.live && needed !== ""
        ? { formula: `=MAX(0,${needed}-${cellAt("onHand", page.next)})` }
        : { number: lack.missing };
    page.row(
      [
        { text: lack.isCounted ? lack.item : `${lack.item} (${settings.unit})`, look: "name" },
        { look: "blank", isTick: true },
        { number: lack.onHand, format },
        { ...missing, format, look: "label" },
        ...buyCells(lack, settings),
      ],
      undefined,
      keyed("*", "lack"),
    );
  }
  for (const line of alsoPlanned) page.line(line, "note");
  if (unchecked.length > 0) page.line(`Not compared with what is on hand: ${unchecked.join(", ")}`, "note");
}

/**
 * What the rows of the pots hold of an item; empty where nothing of it is fetched. What is a vessel and a component of
 * another one is fetched as two things, and is one item on the shelf.
 */
function neededOfAll(things: Run["things"], lack: Lack, pots: Rows): string {
  const own = things.filter((one) => sameName(one.name) === sameName(lack.item) && isCounted(one) === lack.isCounted);
  const [first] = own;
  if (first === undefined) return "";
  if (!lack.isCounted) return own.map((thing) => neededOf(thing, pots)).join("+");
  // Together, as half a box for this one and half for that one is one box.
  const counted = own.find(({ kind }) => kind !== "vessel") ?? first;
  return neededOf({ ...counted, of: own.flatMap(({ of }) => of) }, pots);
}

function buyCells(lack: Lack, settings: Settings): PageCell[] {
  const { cost } = lack;
  const isPriced = settings.costs === "shown" && cost !== undefined;
  return [
    { text: packWords(lack, settings.unit), look: "name", across: isPriced ? 5 : 6 },
    ...(isPriced ? [{ number: cost, format: MONEY }] : []),
  ];
}
