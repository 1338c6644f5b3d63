import { nameOf, othersOf, type RunPlan, totalsOf } from "../plan/runPlan";
import { FIX } from "./inputChecks";
import { cellAt, downTo, keyOf, keysTo, type RowKind, rangeAt, type SheetColumn } from "./layout";
import type { Page, PageCell } from "./page";
import type { Writing } from "./potBlock";

/** The totals of each scent and of all, with their yield. */
export function totalRows(page: Page, { scents, totals }: RunPlan, { settings: { unit, live }, scale }: Writing): void {
  // Rows above this one.
  const above = new KeyedSums(page.next - 1);
  page.skip();
  page.headings(["Totals", "Candles", "Pots", `Wax (${unit})`, `Scent (${unit})`, `Melted (${unit})`, "Yield"]);
  const first = page.next;
  for (const [i, scent] of scents.entries()) {
    const sums = totalsOf([scent]);
    // What a pot does not know no total leaves out: where the fills or all that is melted show no number, nor does it.
    const sumOf = (column: SheetColumn, what: RowKind, value: number): PageCell => {
      const whole = above.sum("planned", keyOf(i + 1, what === "vessel" ? "vessel" : "melted"));
      const formula = `=IF(ISNUMBER(${whole}),${above.sum(column, keyOf(i + 1, what))},NA())`;
      return live ? { formula } : { number: value };
    };
    page.row(
      [
        { text: nameOf(scent) },
        { ...sumOf("count", "vessel", sums.candles), format: "0" },
        { number: scent.pots.length, format: "0" },
        { ...sumOf("planned", "wax", sums.wax), format: scale },
        { ...sumOf("planned", "scent", sums.scent), format: scale },
        { ...sumOf("planned", "melted", sums.melted), format: scale },
        above.yield(keyOf(i + 1, "vessel"), page.next),
      ],
      undefined,
      keyOf("*", "totals"),
    );
  }
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
      above.yield(keyOf("*", "vessel"), page.next),
    ],
    "total",
    keyOf("*", "totals"),
  );
  const hasOthers = scents.some(({ ingredients }) => ingredients.some((one) => one.basis !== "part" && !one.isScent));
  if (hasOthers) othersRow(page, othersOf(totals), live, scale);
}

/** What of all that is melted, in the row above, is neither wax nor scent. */
function othersRow(page: Page, others: number, live: boolean, format: string): void {
  const at = page.next - 1;
  const formula = `=${cellAt("melted", at)}-${cellAt("wax", at)}-${cellAt("scent", at)}`;
  page.row(
    [{ text: "of which dye and additives", across: 5 }, { ...(live ? { formula } : { number: others }), format }, {}],
    "note",
    keyOf("*", "others"),
  );
}

/** Sums over the rows of the pots, by their keys. */
class KeyedSums {
  /** @param last the last row that may hold a pot */
  constructor(private readonly last: number) {}

  sum(column: SheetColumn, key: string): string {
    return `SUMIF(${this.keys},"${key}",${this.down(column)})`;
  }

  /** Good candles of those that were counted, as written on the sheet: empty until any is written. */
  yield(key: string, row: number): PageCell {
    const good = this.sum("good", key);
    const counted = `SUMIFS(${this.down("count")},${this.keys},"${key}",${this.down("good")},">=0")`;
    const toFix = `COUNTIFS(${this.keys},"${key}",${this.down("label")},"${FIX}*")`;
    const known = `IF(${counted}>0,${good}&" good of "&${counted}&", "&TEXT(${good}/${counted},"0%"),"")`;
    return {
      formula: `=IF(AND(${toFix}=0,ISNUMBER(${cellAt("melted", row)})),${known},"${FIX} the pots above")`,
      align: "right",
    };
  }

  private get keys(): string {
    return keysTo(this.last);
  }

  private down(column: SheetColumn): string {
    return downTo(column, this.last);
  }
}
