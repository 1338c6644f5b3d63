import type { NewFactor } from "../../runsheet/record/newFactors";
import { sameName } from "../../runsheet/sameName";
import { tableOf, vesselsOf } from "../givenTables";
import { FACTORS } from "../words/written";
import type { Book } from "./book";
import { writeGiven } from "./writeGiven";

/** Changes a factor in the vessel table: found anew by its name, for the rows may have been sorted. Says so. */
export async function changeFactor({ host, kept, refresh }: Book, { vessel, old, factor }: NewFactor): Promise<string> {
  const read = await refresh();
  const known = vesselsOf(read, kept, kept?.choices.unit).get(sameName(vessel));
  const column = kept && tableOf("vessels", read, kept)?.columns.factor;
  const table = read.vessels;
  if (!table || !known || column === undefined) throw new Error(FACTORS.noRow(vessel));
  if (known.factor !== old) throw new Error(FACTORS.another(vessel));
  const value = Number(factor.toFixed(4));
  const { place, name } = table;
  await writeGiven(host, place.sheet, {
    ...{ row: place.row + 1 + known.row, column: place.column + column },
    content: { number: value },
  });
  await refresh();
  return FACTORS.changed(vessel, value, name);
}
