import fc from "fast-check";
import { recordIn } from "../../src/pane/actions/onRecord";
import { type LogPlan, planLog } from "../../src/pane/actions/planLog";
import { givenTables, logOn } from "../../src/pane/givenTables";
import type { ReadTables } from "../../src/pane/state/useTables";
import { makeRun, type Run } from "../../src/runsheet/plan/makeRun";
import { isError } from "../../src/runsheet/problem";
import { compareRuns } from "../../src/runsheet/record/compareRuns";
import { newFactors } from "../../src/runsheet/record/newFactors";
import { newLoss } from "../../src/runsheet/record/newLoss";
import { openRun } from "../../src/runsheet/record/openRun";
import { isPoured, type PouredRun } from "../../src/runsheet/record/poured";
import { massReport } from "../../src/runsheet/record/pourWarnings";
import { readBack } from "../../src/runsheet/record/readBack";
import { rejectShare } from "../../src/runsheet/record/rejectShare";
import { runCandles } from "../../src/runsheet/record/runCandles";
import { readSeries, seriesOf } from "../../src/runsheet/series/readSeries";
import type { Settings } from "../../src/runsheet/settings";
import { describeRun } from "../../src/runsheet/sheet/describeRun";
import { type ReadTables as Rows, readTables } from "../../src/runsheet/tables/readTables";
import { TablesAlone } from "../pane/tablesAlone";
import { badIn } from "./badIn";
import type { Part } from "./part";
import { anySettings, anyTables } from "./tables";
import type { Watch } from "./watched";
import { anyWriting, valuesOf, writtenOn } from "./written";

const BY_HAND = { columns: {}, leftOut: {} };
const LOT = "2026-330-01";
const DATE = 46_352;

/** Of rows what is said of them: a temperature with one end has another one without end, until it is compared. */
const saidOf = ({ problems, doubts, asked }: Rows): unknown => [problems, doubts, asked];
const shownOf = ({ plan, ...rest }: Run): unknown => [rest, plan.totals, plan.scents.map(({ pots }) => pots)];

/** How far the cases came: one that stops early proves little. */
export const reached = { tables: 0, planned: 0, described: 0, read: 0, logged: 0, corrected: 0 };

/** What the pane does with the tables of a workbook, from reading them to logging what was poured, each step under watch. */
class Way {
  constructor(
    private readonly watch: Watch,
    private readonly given: unknown,
  ) {}

  /** A step, and that nothing of what is shown of it is no number or no words. */
  step<T>(name: string, work: () => T, shown: (result: T) => unknown = (result) => result): T {
    const result = this.watch.run(name, work, () => JSON.stringify(this.given));
    const bad = badIn(shown(result));
    if (bad) throw new Error(`${name}: ${bad}`);
    return result;
  }

  /** A step that may refuse with a sentence for the maker: then nothing comes of it. */
  refusing<T>(name: string, work: () => T): T | undefined {
    try {
      return this.step(name, work);
    } catch (thrown) {
      const isSentence = thrown instanceof Error && thrown.constructor === Error && !thrown.message.startsWith(name);
      if (!isSentence || badIn(thrown.message)) throw thrown;
      return undefined;
    }
  }

  planned(read: ReadTables, settings: Settings): { rows: Rows; run: Run } | undefined {
    const given = this.step("matching the columns", () => givenTables(read, BY_HAND, new Map()));
    if (!given) return undefined;
    reached.tables += Object.keys(read).length;
    const rows = this.step("reading the tables", () => readTables(given.tables, settings.unit), saidOf);
    const { burnTests, readings } = rows.rows;
    if (burnTests && readings) {
      this.step("reading the burn tests", () => seriesOf(burnTests).map((tests) => readSeries(tests, readings)));
    }
    return { rows, run: this.step("planning", () => makeRun(rows, settings, { today: DATE }), shownOf) };
  }

  /** Logs what stands on the sheet and says what is to be added. */
  logged(book: TablesAlone, poured: PouredRun): LogPlan | undefined {
    if (poured.wrong.length > 0 || !poured.pots.some(isPoured)) return undefined;
    this.step("what became of the wax", () => massReport(poured));
    const plan = this.refusing("logging", () =>
      planLog(poured, recordIn(book.read, BY_HAND, poured.unit), { sheet: "Run", copies: [], beginsMoves: true }),
    );
    if (plan) book.add(plan.additions);
    return plan;
  }

  /** What the log comes to say once it has more rows. */
  learnt(book: TablesAlone, { rows, run }: { rows: Rows; run: Run }, poured: PouredRun, settings: Settings): void {
    const log = this.step(
      "reading the log",
      () => logOn(book.read, BY_HAND),
      () => "",
    );
    this.step("wax factors of the log", () => newFactors(log, rows.rows.vessels ?? new Map(), settings));
    this.step("losses of the log", () => newLoss(log, settings.loss));
    const open = this.step("what is not logged", () => openRun(poured, log, settings.unit));
    const rejects = this.step("rejects of the log", () => rejectShare(runCandles(log)));
    if (poured.unplanned.length === 0) this.step("comparing", () => compareRuns(poured, run.plan));
    const beside = { today: DATE, rejects, openRuns: open ? [open] : [] };
    this.step("planning beside another run", () => makeRun(rows, settings, beside), shownOf);
  }
}

const anyCase = fc.record({ tables: anyTables, settings: anySettings, first: anyWriting, second: anyWriting });
type Case = typeof anyCase extends fc.Arbitrary<infer C> ? C : never;

/** The whole way for any tables, settings, and what is written on the sheet. */
export function runSheets(watch: Watch): Part<Case> {
  return {
    name: "RUNSHEETS",
    cases: anyCase,
    async holds({ tables, settings, first, second }) {
      const way = new Way(watch, { settings, tables });
      const made = way.planned(tables, settings);
      if (!made || made.run.plan.totals.candles === 0) return;
      reached.planned++;
      // Where something is to be fixed first the pane writes no sheet.
      if (made.run.problems.some(isError)) return;
      const head = { lot: LOT, date: DATE, settings };
      way.step("describing the live sheet", () =>
        describeRun(made.run, { ...head, settings: { ...settings, live: true } }),
      );
      const sheet = way.step("describing the sheet", () =>
        describeRun(made.run, { ...head, settings: { ...settings, live: false } }),
      );
      reached.described++;
      const book = new TablesAlone(tables);
      for (const [turn, writing] of [first, second].entries()) {
        const cells = writtenOn(valuesOf(sheet), writing);
        const poured = way.step("reading the sheet back", () => readBack(cells));
        if (!poured) return;
        reached.read++;
        const plan = way.logged(book, poured);
        if (plan && turn === 0) reached.logged++;
        if (plan && turn === 1) reached.corrected++;
        way.learnt(book, made, poured, settings);
      }
    },
  };
}
