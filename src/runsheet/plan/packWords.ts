import { plain } from "../../core/check/plain";
import type { WeightUnit } from "../settings";
import type { Lack } from "./shortages";

/** The packs to buy and where they are sold: `2 x 1000 g from North`. */
export function packWords({ buy, isCounted }: Pick<Lack, "buy" | "isCounted">, unit: WeightUnit): string {
  if (buy.length === 0) return "no pack known";
  // A pack of a pound is 453.59237 g: nobody shops by that.
  const sizeOf = (size: number) => (isCounted ? plain(size) : `${plain(Number(size.toPrecision(6)))} ${unit}`);
  const suppliers = [...new Set(buy.map(({ supplier }) => supplier))];
  const from = suppliers.map((supplier) => {
    const own = buy.filter((one) => one.supplier === supplier);
    const packs = own.map(({ count, size }) => `${count} x ${sizeOf(size)}`).join(" + ");
    return supplier === "" ? packs : `${packs} from ${supplier}`;
  });
  return from.join(", ");
}
