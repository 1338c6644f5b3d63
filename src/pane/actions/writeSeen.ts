import type { Host } from "../../host/host";
import { seenSheet } from "../../runsheet/series/seenSheet";
import type { Sheet } from "../../sheet/sheet";
import { seenBeside } from "../burning/seenBeside";
import { standingTables } from "../burning/seriesBeside";
import type { Task } from "../state/useTask";
import { serialOf, today } from "../today";
import { LOGGING } from "../words/logging";
import { SEEN } from "../words/seen";
import { WRITING } from "../words/writing";
import type { Book } from "./book";

/** Writes a series on a new sheet that follows its readings, by the tables as they are now; gives the words. */
export async function writeSeen({ host, kept, settings, refresh }: Book, name: string, task: Task): Promise<string> {
  if (!kept) throw new Error(LOGGING.settingsUnread);
  if (!settings) throw new Error(WRITING.fixSettings);
  const read = await refresh();
  const series = seenBeside(read, kept, settings).series.find((one) => one.name === name);
  const { burnTests, readings } = standingTables(read, kept);
  if (!series || !burnTests || !readings) throw new Error(SEEN.gone);
  const sheet = seenSheet(
    { ...series, wicks: series.wicks.length },
    { burnTests, readings },
    { unit: settings.unit, paper: settings.paper, today: serialOf(today()) as number },
  );
  refuseTooMuch(sheet, host);
  return SEEN.written(await host.addSheet(sheet, task));
}

function refuseTooMuch({ cells }: Sheet, { mostFormulas = Infinity }: Host): void {
  const formulas = cells.filter(({ content }) => content && "formula" in content).length;
  if (formulas > mostFormulas) throw new Error(SEEN.tooMuch(formulas, mostFormulas));
}
