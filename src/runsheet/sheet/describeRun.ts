import type { Sheet } from "../../sheet/sheet";
import type { Run } from "../plan/makeRun";
import { costRows, cureRows, shelfRows, signOffRows } from "./afterRows";
import { decimalsFormat, openEnded } from "./formats";
import { headRows, type RunHead } from "./headRows";
import { sheetNameOf, WIDTHS } from "./layout";
import { Page } from "./page";
import { potBlock, type Writing } from "./potBlock";
import { totalRows } from "./totalRows";

/**
 * The run sheet as a described sheet, in the order of the work: head, cautions, for each scent and pot what to weigh
 * and what to pour, totals and yield, what to buy, cost, sign-off. Live: the weights are formulas on this sheet's own
 * counts, fills, shares and head; else they are plain numbers. What is written on the sheet after the pour (actual
 * weights, good candles) is followed by formulas in both.
 */
export function describeRun({ plan, shelf, costs }: Run, head: RunHead): Sheet {
  const page = new Page(WIDTHS);
  const { settings } = head;
  const weight = decimalsFormat(settings.division);
  const writing: Writing = { settings, weight, scale: settings.live ? openEnded(weight) : weight };
  headRows(page, head);
  for (const [s, scent] of plan.scents.entries()) {
    for (const [p, pot] of scent.pots.entries()) {
      page.skip();
      potBlock(page, [scent, s + 1], [pot, p + 1], writing);
    }
  }
  totalRows(page, plan, writing);
  cureRows(page, plan, head);
  shelfRows(page, shelf, writing);
  costRows(page, costs, settings);
  signOffRows(page);
  return {
    name: sheetNameOf(head.lot),
    // The column of keys is hidden.
    widths: [...WIDTHS, 0],
    cells: page.cells,
    print: { paper: settings.paper, repeatRows: [0, 0] },
  };
}
