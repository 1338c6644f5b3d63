import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { unitRatio } from "../units/unitRatio";

/**
 * Price of one unit of what a pack holds.
 * Source: division, with the units' own definitions.
 * @param price of the pack, 0 or more, any money
 * @param size of the pack, above 0, in `sizeUnit`
 * @param perUnit unit to price, a weight, a volume or a length as `sizeUnit` is
 * @param delivery money for the pack, 0 or more, added to its price
 */
export function unitPrice(price: number, size: number, sizeUnit: string, perUnit: string, delivery = 0): number {
  const units = aboveZero("size", size) * unitRatio("sizeUnit", sizeUnit, "perUnit", perUnit);
  return (atLeastZero("price", price) + atLeastZero("delivery", delivery)) / units;
}
