import { aboveZero } from "../../core/check/aboveZero";
import { fillWeight } from "../../core/fill/fillWeight";
import { sameName } from "../sameName";
import type { BatchRow } from "../tables/batch";
import type { Vessel, Vessels } from "../tables/vessels";
import { isItWords } from "./nearName";
import type { BatchNotes, Completing } from "./pourRows";

/** The fill of a row: its own fill weight; else its water and factor; else those of its vessel, by name. */
export function rowFill(
  cells: BatchRow,
  name: string,
  notes: BatchNotes,
  { batch, known: { vessels }, settings, usual }: Completing,
): number | undefined {
  if (!cells.fill.isBlank) {
    const fill = notes.take(cells.fill);
    return fill === undefined ? undefined : notes.check("fill", () => aboveZero("fill", fill));
  }
  const vessel = vessels?.get(sameName(name));
  const hasWater = !cells.water.isBlank;
  const water = hasWater ? notes.take(cells.water) : waterOf(name, notes, vessels, vessel);
  const own = notes.take(cells.factor);
  if (own === undefined && vessel && vessel.wrong.length > 0) {
    // Another factor than the one that was meant must not be poured by.
    notes.problems.push(...vessel.wrong);
    return undefined;
  }
  const factor = own ?? vessel?.factor;
  if (factor === undefined) usual.add("waxFactor");
  if (water === undefined || notes.check("water", () => aboveZero("water", water)) === undefined) return undefined;
  const fill = notes.check("factor", () => fillWeight(water, factor ?? settings.waxFactor));
  const blank = batch.weightColumn === "water" && hasWater ? undefined : batch.weightColumn;
  if (blank && fill !== undefined) notes.problems.push(notes.warning(blank, hasWater ? FROM_WATER : FROM_VESSELS));
  return fill;
}

/** The same words for each such row: the pane says them once for all. */
const FROM_VESSELS = "no weight stands here: the fill is worked out from the table of vessels";
const FROM_WATER = "no fill weight stands here: the fill is worked out from the water weight of the row";

export const notInVessels = (name: string, vessels: Vessels): string =>
  `${name} is not in the table of vessels; fix the name, or add it there${isItWords(
    name,
    [...vessels.values()].map(({ vessel }) => vessel),
  )}`;

/** The water of a row's vessel; why there is none is noted. */
function waterOf(
  name: string,
  notes: BatchNotes,
  vessels: Vessels | undefined,
  vessel: Vessel | undefined,
): number | undefined {
  if (!vessels) {
    notes.error("fill", "neither a fill weight nor a water weight is given; weigh the water the vessel holds");
  } else if (!vessel) {
    if (name !== "") notes.error("vessel", notInVessels(name, vessels));
  } else if (vessel.water === undefined && vessel.wrong.length === 0) {
    notes.error("fill", `the table of vessels gives no water weight for ${name}; weigh the water it holds`);
  }
  return vessel?.water;
}
