import type { Beside } from "./plan/beside";
import { makeRun, type Run } from "./plan/makeRun";
import type { Settings } from "./settings";
import { readTables } from "./tables/readTables";
import type { Tables } from "./tables/tableRows";

/** From tables to a run: they are read into rows, and the rows are planned. */
export const buildRun = (tables: Tables, settings: Settings, beside?: Beside): Run =>
  makeRun(readTables(tables, settings.unit), settings, beside);
