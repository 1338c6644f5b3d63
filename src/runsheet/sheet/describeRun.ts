import { plain } from "../../core/check/plain";
import type { Sheet } from "../../sheet/sheet";
import { CAUTIONS } from "../cautions";
import type { Run } from "../plan/makeRun";
import { nameOf, othersOf, totalsOf } from "../plan/runPlan";
import type { Lack } from "../plan/shortages";
import { sheetNameOf } from "../record/nextLot";
import type { Settings } from "../settings";
import { cureFormula, cureRemark, FIX, HEAD_REMARK } from "./inputChecks";
import { DATE, divisionLabel, FROZEN_NOTE, keyOf, LIVE_NOTE, type RowKind, titleOf } from "./layout";
import { Page, type PageCell } from "./page";
import { decimalsFormat, potBlock, type Writing } from "./potBlock";

/** What a run sheet says beside its plan. */
export interface RunHead {
  readonly lot: string;
  /** Spreadsheet serial of the day. */
  readonly date: number;
  readonly settings: Settings;
}

const WIDTHS = [30, 13, 14, 14, 14, 15, 27];
const DAY = "yyyy-mm-dd";
const MONEY = "#,##0.00";

/**
 * The run sheet as a described sheet, in the order of the work: head, cautions, for each scent and pot what to weigh
 * and what to pour, totals and yield, what to buy, cost, sign-off. Parts without data are left out. Live: the weights
 * are formulas on this sheet's own counts, fills, shares and head; else they are plain numbers. What is written on the sheet
 * after the pour (actual weights, good candles) is followed by formulas in both.
 */
export function describeRun(run: Run, head: RunHead): Sheet {
  const page = new Page(WIDTHS);
  const { settings } = head;
  const weight = decimalsFormat(settings.division);
  const writing: Writing = { settings, weight, scale: settings.live ? openEnded(weight) : weight };
  headOf(page, head);
  for (const [s, scent] of run.plan.scents.entries()) {
    for (const [p, pot] of scent.pots.entries()) {
      page.skip();
      potBlock(page, [scent, s + 1], [pot, p + 1], writing);
    }
  }
  totals(page, run, writing);
  curing(page, run, head);
  shelf(page, run, writing);
  cost(page, run, settings);
  signOff(page);
  return {
    name: sheetNameOf(head.lot),
    // The column of keys is hidden.
    widths: [...WIDTHS, 0],
    cells: page.cells,
    print: { paper: settings.paper, repeatRows: [0, 0] },
  };
}

/** A format that also shows what a finer division would weigh, should it be changed on a live sheet. */
const openEnded = (format: string): string => (format === "0" ? "General" : `${format}####`);

function headOf(page: Page, { lot, date, settings }: RunHead): void {
  const { unit, live } = settings;
  const input = live ? "input" : "body";
  page.line(titleOf(lot), "title");
  page.row([
    { text: DATE, look: "label" },
    { number: date, format: DAY, align: "left", look: input },
    { text: "Made by", look: "label", align: "right" },
    { look: "blank" },
    { text: "Checked by", look: "label", align: "right" },
    { look: "blank", across: 2 },
  ]);
  page.row([
    { text: divisionLabel(unit), look: "label" },
    { number: settings.division, look: input },
    { text: `Pot holds (${unit})`, look: "label", align: "right" },
    { number: settings.potCapacity, look: input },
    { text: "Extra to melt (loss)", look: "label", align: "right", across: 2 },
    { number: settings.loss, format: "0.0##%", look: input, align: "left" },
  ]);
  if (live) page.row([{ formula: HEAD_REMARK, look: "alert", across: page.width }], undefined, keyOf("*", "head"));
  page.line(live ? LIVE_NOTE : FROZEN_NOTE, "note");
  for (const caution of CAUTIONS) page.line(caution, "caution");
}

function totals(page: Page, { plan }: Run, { settings, scale }: Writing): void {
  const { unit, live } = settings;
  const keys = `$${page.keys}$1:$${page.keys}$${page.next - 1}`;
  const down = (letter: string) => `${letter}$1:${letter}$${page.next - 1}`;
  const columns = { B: down("B"), D: down("D"), E: down("E"), G: down("G") };
  const sumIf = (letter: "B" | "D" | "E", key: string) => `SUMIF(${keys},"${key}",${columns[letter]})`;
  page.skip();
  page.headings(["Totals", "Candles", "Pots", `Wax (${unit})`, `Scent (${unit})`, `Melted (${unit})`, "Yield"]);
  const first = page.next;
  const rows = [...plan.scents.entries()].map(([i, scent]) => {
    // What a pot does not know no total leaves out: where the fills or all that is melted show no number, nor does it.
    const sumOf = (letter: "B" | "D", what: RowKind, value: number): PageCell => {
      const whole = sumIf("D", keyOf(i + 1, what === "vessel" ? "vessel" : "melted"));
      return live
        ? { formula: `=IF(ISNUMBER(${whole}),${sumIf(letter, keyOf(i + 1, what))},NA())` }
        : { number: value };
    };
    return { scent, sums: totalsOf([scent]), sumOf, key: keyOf(i + 1, "vessel") };
  });
  // Good candles of those that were counted, as written on the sheet: empty until any is written.
  const yieldOf = (key: string): PageCell => {
    const good = sumIf("E", key);
    const counted = `SUMIFS(${columns.B},${keys},"${key}",${columns.E},">=0")`;
    const toFix = `COUNTIFS(${keys},"${key}",${columns.G},"${FIX}*")`;
    const known = `IF(${counted}>0,${good}&" good of "&${counted}&", "&TEXT(${good}/${counted},"0%"),"")`;
    return {
      formula: `=IF(AND(${toFix}=0,ISNUMBER(F${page.next})),${known},"${FIX} the pots above")`,
      align: "right",
    };
  };
  for (const { scent, sums, sumOf, key } of rows) {
    page.row(
      [
        { text: nameOf(scent) },
        { ...sumOf("B", "vessel", sums.candles), format: "0" },
        { number: scent.pots.length, format: "0" },
        { ...sumOf("D", "wax", sums.wax), format: scale },
        { ...sumOf("D", "scent", sums.scent), format: scale },
        { ...sumOf("D", "melted", sums.melted), format: scale },
        yieldOf(key),
      ],
      undefined,
      keyOf("*", "totals"),
    );
  }
  const all = plan.totals;
  const sumAll = (letter: string, value: number): PageCell =>
    live ? { formula: `=SUM(${letter}${first}:${letter}${page.next - 1})` } : { number: value };
  page.row(
    [
      { text: "Total" },
      { ...sumAll("B", all.candles), format: "0" },
      { ...sumAll("C", all.pots), format: "0" },
      { ...sumAll("D", all.wax), format: scale },
      { ...sumAll("E", all.scent), format: scale },
      { ...sumAll("F", all.melted), format: scale },
      yieldOf(keyOf("*", "vessel")),
    ],
    "total",
    keyOf("*", "totals"),
  );
  if (plan.scents.every(({ ingredients }) => ingredients.every((one) => one.basis === "part" || one.isScent))) return;
  const at = page.next - 1;
  page.row(
    [
      { text: "of which dye and additives", across: 5 },
      { ...(live ? { formula: `=F${at}-D${at}-E${at}` } : { number: othersOf(all) }), format: scale },
      {},
    ],
    "note",
    keyOf("*", "others"),
  );
}

function curing(page: Page, { plan }: Run, { date, settings: { live } }: RunHead): void {
  const cured = plan.scents.flatMap((scent, s) =>
    scent.notes?.cureDays === undefined ? [] : [{ scent, days: scent.notes.cureDays, key: keyOf(s + 1, "cure") }],
  );
  if (cured.length === 0) return;
  page.skip();
  page.headings(["Cure", "Days", "Until"]);
  for (const { scent, days, key } of cured) {
    const at = page.next;
    page.row(
      [
        { text: nameOf(scent) },
        { number: days, format: "General", look: live ? "input" : "body" },
        { ...(live ? { formula: cureFormula(at) } : { number: date + days }), format: DAY, align: "left" },
        live ? { formula: cureRemark(at), look: "alert", across: 4 } : {},
      ],
      undefined,
      key,
    );
  }
}

function shelf(page: Page, { shelf }: Run, { settings, weight }: Writing): void {
  if (shelf === undefined) return;
  const { lacks, unchecked } = shelf;
  page.skip();
  if (lacks.length > 0) lacking(page, lacks, settings, weight);
  else if (unchecked.length === 0) page.line(asPlanned("The shelf holds all that this run takes", settings), "note");
  if (unchecked.length > 0) page.line(`Not checked against the shelf: ${unchecked.join(", ")}`, "note");
}

function lacking(page: Page, lacks: readonly Lack[], settings: Settings, weight: string): void {
  page.headings([asPlanned("Missing from the shelf", settings), "Needed", "On hand", "Missing", "Cost", "Buy"]);
  for (const { item, amount, isVessel, onHand, missing, buy, cost } of lacks) {
    const format = isVessel ? "0" : weight;
    // A pack of a pound is 453.59237 g: nobody shops by that.
    const pack = (size: number) => (isVessel ? plain(size) : `${plain(Number(size.toPrecision(6)))} ${settings.unit}`);
    page.row([
      { text: isVessel ? item : `${item} (${settings.unit})` },
      { number: amount, format },
      { number: onHand, format },
      { number: missing, format, look: "label" },
      cost === undefined ? {} : { number: cost, format: MONEY },
      {
        text: buy.map(({ count, size }) => `${count} x ${pack(size)}`).join(" + ") || "no pack known",
        across: 2,
      },
    ]);
  }
}

function cost(page: Page, { costs }: Run, settings: Settings): void {
  if (costs === undefined) return;
  page.skip();
  page.headings([asPlanned("Cost of materials", settings), "Candles", "Each", "Total"]);
  for (const { scent, vessel, count, each } of costs.kinds) {
    page.row([
      { text: `${vessel}, ${scent}` },
      { number: count, format: "0" },
      { number: each, format: MONEY },
      { number: each * count, format: MONEY },
    ]);
  }
  page.row([{ text: "The run" }, {}, {}, { number: costs.run, format: MONEY }], "total");
}

/** The shelf and the cost come from other tables: also on a live sheet they are what they were when it was written. */
function asPlanned(text: string, { live }: Settings): string {
  return live ? `${text}, as planned` : text;
}

function signOff(page: Page): void {
  page.skip();
  page.row([
    { text: "Notes: anything unusual", look: "label" },
    { look: "blank", across: page.width - 1 },
  ]);
  page.row([{}, { look: "blank", across: page.width - 1 }]);
  page.row([
    { text: "Poured: name, date", look: "label" },
    { look: "blank", across: 2 },
    { text: "Checked: name, date", look: "label", align: "right", across: 2 },
    { look: "blank", across: 2 },
  ]);
}
