import type { Sheet } from "../../sheet/sheet";
import type { Settings } from "../settings";
import type { BurnTest } from "../tables/burnTests";
import { candleRows } from "./seenCandleRows";
import { type SeenTables, seenColumns, seenKeys } from "./seenColumns";
import { headRows } from "./seenHead";
import { ACROSS, blocksFor, SheetCells, WIDTHS } from "./seenPlaces";
import { rangesOf, wickRows } from "./seenWickRows";

/** A series to be put on a sheet. */
export interface SeriesToShow {
  /** What its candles have in common, in words. */
  readonly name: string;
  readonly tests: readonly BurnTest[];
  /** How many wicks it tries. */
  readonly wicks: number;
  /** Wax and scent of a candle, in the unit of the settings, where it is known. */
  readonly fill: number | undefined;
}

export interface SeenSettings extends Pick<Settings, "paper" | "unit"> {
  readonly today: number;
}

/**
 * What a series shows, on a sheet that follows its readings: by wick and by candle, all of it formulas over the tables
 * of burn tests and readings.
 */
export function seenSheet(series: SeriesToShow, tables: SeenTables, settings: SeenSettings): Sheet {
  const columns = seenColumns(tables, settings.unit);
  const keys = seenKeys(series.tests, tables);
  const blocks = blocksFor(series.tests.length, series.wicks);
  const at = new SheetCells();
  headRows(at, series, { tables, columns, keys }, blocks, rangesOf(blocks), settings);
  wickRows(at, blocks, settings.unit);
  candleRows(at, blocks, columns, settings.unit);
  const last = Math.max(...at.cells.map(({ column }) => column));
  return {
    name: `Series ${series.tests[0]?.vessel ?? ""}`,
    // Behind those that show stand, hidden, columns that formulas need and nobody reads.
    widths: [...WIDTHS, ...Array<number>(last + 1 - ACROSS).fill(0)],
    cells: at.cells,
    print: { paper: settings.paper, landscape: true, newPages: [blocks.candles.heading] },
  };
}
