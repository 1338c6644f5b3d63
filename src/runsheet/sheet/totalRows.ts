import { nameOf, othersOf, type RunPlan, type ScentRun, totalsOf } from "../plan/runPlan";
import { DAY } from "./formats";
import type { RunHead } from "./headRows";
import { cureFormula, cureRemark, FIX } from "./inputChecks";
import {
  AT,
  cellAt,
  fixedAt,
  keyed,
  keyOf,
  type RowKind,
  type Rows,
  rangeAt,
  type SheetColumn,
  totalsName,
} from "./layout";
import type { Page, PageCell } from "./page";
import type { Writing } from "./potBlock";

/**
 * The totals of each scent and of all, with their yield and the day on which they are cured.
 * @param pots the rows that the pots stand in
 */
export function totalRows(page: Page, { scents, totals }: RunPlan, writing: Writing, head: RunHead, pots: Rows): void {
  const { settings, scale } = writing;
  const { unit, live } = settings;
  const sums = new KeyedSums(pots);
  const isCured = scents.some(({ notes }) => notes?.cureDays !== undefined);
  page.skip();
  page.headings([
    ...["Totals", "Count", "Pots", `Wax (${unit})`, `Scent (${unit})`, `Melted (${unit})`].map((text) => ({ text })),
    { text: "Yield", across: 2 },
    ...(isCured ? ["Until", "Cure days"] : []).map((text) => ({ text })),
  ]);
  const first = page.next;
  for (const [i, scent] of scents.entries()) scentRow(page, [scent, i + 1], writing, head, sums);
  const sumAll = (column: SheetColumn, value: number): PageCell =>
    live ? { formula: `=SUM(${rangeAt(column, first, page.next - 1)})` } : { number: value };
  page.row(
    [
      { text: "Total" },
      { ...sumAll("candles", totals.candles), format: "0" },
      { ...sumAll("pots", totals.pots), format: "0" },
      { ...sumAll("wax", totals.wax), format: scale },
      { ...sumAll("scent", totals.scent), format: scale },
      { ...sumAll("melted", totals.melted), format: scale },
      sums.yield(keyOf("*", "vessel"), page.next),
      {},
      {},
    ],
    "total",
    keyed("*", "totals"),
  );
  const hasOthers = scents.some(({ ingredients }) => ingredients.some((one) => one.basis !== "part" && !one.isScent));
  if (hasOthers) othersRow(page, othersOf(totals), live, scale);
}

function scentRow(
  page: Page,
  [scent, number]: readonly [scent: ScentRun, number: number],
  { settings: { live }, scale }: Writing,
  { date }: RunHead,
  sums: KeyedSums,
): void {
  const totals = totalsOf([scent]);
  const days = scent.notes?.cureDays;
  const at = page.next;
  // What a pot does not know no total leaves out: where the fills or all that is melted show no number, nor does it.
  const sumOf = (column: SheetColumn, what: RowKind, value: number): PageCell => {
    const whole = sums.sum("planned", keyOf(number, what === "vessel" ? "vessel" : "melted"));
    const formula = `=IF(ISNUMBER(${whole}),${sums.sum(column, keyOf(number, what))},NA())`;
    return live ? { formula } : { number: value };
  };
  const cure: PageCell[] =
    days === undefined
      ? [{}, {}]
      : [
          { ...(live ? { formula: cureFormula(at) } : { number: date + days }), format: DAY, align: "center" },
          { number: days, format: "General", look: live ? "input" : "body" },
        ];
  page.row(
    [
      { text: totalsName(nameOf(scent), scent.wax), look: "name" },
      { ...sumOf("count", "vessel", totals.candles), format: "0" },
      { number: scent.pots.length, format: "0" },
      { ...sumOf("planned", "wax", totals.wax), format: scale },
      { ...sumOf("planned", "scent", totals.scent), format: scale },
      { ...sumOf("planned", "melted", totals.melted), format: scale },
      sums.yield(keyOf(number, "vessel"), at),
      ...cure,
    ],
    undefined,
    {
      ...(live && days !== undefined ? { [AT.remark]: { formula: cureRemark(at) } } : {}),
      ...keyed(number, "scents"),
    },
  );
}

/** What of all that is melted, in the row above, is neither wax nor scent. */
function othersRow(page: Page, others: number, live: boolean, format: string): void {
  const at = page.next - 1;
  const formula = `=${cellAt("melted", at)}-${cellAt("wax", at)}-${cellAt("scent", at)}`;
  page.row(
    [{ text: "of which dye and additives", across: 5 }, { ...(live ? { formula } : { number: others }), format }, {}],
    "note",
    keyed("*", "others"),
  );
}

/** Sums over the rows of the pots, by their keys. */
class KeyedSums {
  constructor(private readonly pots: Rows) {}

  sum(column: SheetColumn, key: string): string {
    return `SUMIF(${this.down("key")},"${key}",${this.down(column)})`;
  }

  /** Good candles of those that were counted, as written on the sheet: empty until any is written. */
  yield(key: string, row: number): PageCell {
    const good = this.sum("good", key);
    const counted = `SUMIFS(${this.down("count")},${this.down("key")},"${key}",${this.down("good")},">=0")`;
    const toFix = `COUNTIFS(${this.down("key")},"${key}",${this.down("label")},"${FIX}*")`;
    const known = `IF(${counted}>0,${good}&" good of "&${counted}&", "&TEXT(${good}/${counted},"0%"),"")`;
    return {
      formula: `=IF(AND(${toFix}=0,ISNUMBER(${cellAt("melted", row)})),${known},"${FIX} the pots below")`,
      align: "right",
      across: 2,
    };
  }

  private down(column: SheetColumn): string {
    return fixedAt(column, this.pots);
  }
}
