import type { Sheet } from "../../sheet/sheet";
import type { Run } from "../plan/makeRun";
import { costRows, notesRows } from "./afterRows";
import { fetchRows } from "./fetchRows";
import { decimalsFormat, openEnded } from "./formats";
import { headRows, type RunHead } from "./headRows";
import { lackRows } from "./lackRows";
import { HIDDEN, type Rows, sheetNameOf, WIDTHS } from "./layout";
import { Page } from "./page";
import { potBlock, type Writing } from "./potBlock";
import { totalRows } from "./totalRows";

/**
 * The run sheet as a described sheet, in the order of the work: head, cautions, what to fetch and prepare, the totals;
 * then the pots, each a block of rows, what to weigh and what to pour; notes. Live: the weights are formulas on this
 * sheet's own counts, fills, shares and head; else they are plain numbers. What is written on the sheet after the pour
 * (actual weights, good candles) is followed by formulas in both.
 */
export function describeRun(run: Run, head: RunHead): Sheet {
  const { settings } = head;
  const weight = decimalsFormat(settings.division);
  const writing: Writing = {
    settings,
    weight,
    scale: settings.live ? openEnded(weight) : weight,
    wicks: run.wicks,
  };
  // How many rows stand above the pots does not depend on where the pots end.
  const { next } = above(run, head, writing, { first: 1, last: 1 });
  const pots = new Page(WIDTHS, next - 1);
  for (const [s, scent] of run.plan.scents.entries()) {
    for (const [p, pot] of scent.pots.entries()) {
      pots.skip();
      potBlock(pots, [scent, s + 1], [pot, p + 1], writing);
    }
  }
  const top = above(run, head, writing, { first: next, last: Math.max(next, pots.next - 1) });
  costRows(pots, run.costs, settings);
  notesRows(pots);
  return {
    name: sheetNameOf(head.lot),
    widths: [...WIDTHS, ...Array<number>(HIDDEN).fill(0)],
    ...top.with(pots),
    print: {
      paper: settings.paper,
      repeatRows: [0, 0],
      wholeBlocks: true,
      // The list can be carried to the shelves; the pot of a short run follows it.
      ...(run.plan.totals.pots > 1 && { newPages: [next] }),
    },
  };
}

/** What stands above the pots. */
function above(run: Run, head: RunHead, writing: Writing, pots: Rows): Page {
  const page = new Page(WIDTHS);
  headRows(page, head);
  fetchRows(page, run, writing, pots);
  lackRows(page, run, writing, pots);
  totalRows(page, run.plan, writing, head, pots);
  return page;
}
