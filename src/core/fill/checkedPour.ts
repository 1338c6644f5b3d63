import { aboveZero } from "../check/aboveZero";
import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import type { Pour } from "./pours";

/** What waxes weigh for one of water, with room to spare: common practice, no source. */
export const ANY_WAX = { least: 0.6, most: 1.1 } as const;

/** The test pour where some wax may have made it, else a fault: swapped, in two units, or weighed with the vessel. */
export function checkedPour({ water, poured }: Pour): Pour {
  const factor = aboveZero("poured", poured) / aboveZero("water", water);
  if (factor >= ANY_WAX.least && factor <= ANY_WAX.most) return { water, poured };
  const shown = `${plain(poured)} of wax beside ${plain(water)} of water is a factor ${factor > 100 ? "over 100" : `of ${plain(Number(factor.toPrecision(4)))}`}`;
  throw wrong(
    "poured",
    `${shown}, and waxes lie between ${ANY_WAX.least} and ${ANY_WAX.most}; give the water first, then the wax, both in one unit and without the vessel`,
  );
}
