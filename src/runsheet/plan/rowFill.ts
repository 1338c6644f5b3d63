import { aboveZero } from "../../core/check/aboveZero";
import { fillWeight } from "../../core/fill/fillWeight";
import type { Settings } from "../settings";
import { type KnownVessel, type KnownVessels, waterIn } from "../tables/readVessels";
import { type RowReader, sameName } from "../tables/tableReader";
import type { UsualSetting } from "./readRows";

/** The fill of a row: its own fill weight; else its water and factor; else those of its vessel, by name. */
export function rowFill(
  reader: RowReader<"pour">,
  vessels: KnownVessels | undefined,
  settings: Settings,
  usual: Set<UsualSetting>,
): number | undefined {
  if (!reader.isBlank("fill")) {
    const fill = reader.number("fill");
    return fill === undefined ? undefined : reader.check(() => aboveZero("fill", fill));
  }
  const vessel = vessels?.get(sameName(reader.text("vessel")));
  const hasWater = !reader.isBlank("water");
  const water = hasWater ? reader.number("water") : waterOf(reader, vessels, vessel, settings);
  const own = reader.number("factor");
  if (own === undefined && vessel && vessel.wrong.length > 0) {
    // Another factor than the one that was meant must not be poured by.
    reader.wrong.push(...vessel.wrong);
    return undefined;
  }
  const known = own ?? vessel?.factor;
  if (known === undefined) usual.add("waxFactor");
  if (water === undefined) return undefined;
  const blank = reader.has("fill") ? "fill" : reader.has("water") && !hasWater ? "water" : undefined;
  const fill = reader.check(() => fillWeight(aboveZero("water", water), known ?? settings.waxFactor));
  if (blank && fill !== undefined) reader.wrong.push(reader.look(blank, hasWater ? FROM_WATER : FROM_VESSELS));
  return fill;
}

/** The same words for each such row: the pane says them once for all. */
const FROM_VESSELS = "no weight stands here: the fill is worked out from the table of vessels";
const FROM_WATER = "no fill weight stands here: the fill is worked out from the water weight of the row";

function waterOf(
  reader: RowReader<"pour">,
  vessels: KnownVessels | undefined,
  vessel: KnownVessel | undefined,
  { unit }: Settings,
): number | undefined {
  const name = reader.text("vessel");
  if (!vessels) {
    reader.stop("fill", "neither a fill weight nor a water weight is given; weigh the water the vessel holds");
  } else if (!vessel) {
    if (name !== "") reader.stop("vessel", `${name} is not in the table of vessels; fix the name, or add it there`);
  } else if (vessel.water === undefined && vessel.wrong.length === 0) {
    reader.stop("fill", `the table of vessels gives no water weight for ${name}; weigh the water it holds`);
  }
  return waterIn(vessel, unit);
}
