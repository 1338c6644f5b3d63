import { fillWeight } from "../../core/fill/fillWeight";
import { sameName } from "../../runsheet/sameName";
import type { Settings } from "../../runsheet/settings";
import type { Vessels } from "../../runsheet/tables/vessels";

/** Wax and scent of one candle in a vessel, in the unit of the settings; undefined where no table tells it. */
export function fillOf(
  vessel: string,
  vessels: Vessels | undefined,
  { waxFactor }: Pick<Settings, "waxFactor">,
): number | undefined {
  const known = vessels?.get(sameName(vessel));
  if (!known?.water || known.wrong.length > 0) return undefined;
  return fillWeight(known.water, known.factor ?? waxFactor);
}
