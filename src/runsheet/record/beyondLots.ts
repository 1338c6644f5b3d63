import { amountWords } from "../amountWords";
import { sameName } from "../sameName";
import type { Ledger } from "../stock/ledger";
import { lotsOf } from "../stock/lots";
import { fromMillionths, toMillionths } from "../stock/millionths";
import { moveErrors } from "./moveErrors";
import type { PouredRun } from "./poured";
import type { UsedLot } from "./pourMoves";

/**
 * Lots beside which more is written than they hold. Something else went into the pot then, and a recall of that other
 * lot would not find it.
 */
export function beyondLots(written: readonly UsedLot[], ledger: Ledger, { unit }: PouredRun): string[] {
  const { moves, items } = ledger;
  return written.flatMap(({ item, lot, use, quantity, written }) => {
    const known = items.get(sameName(item))?.lots.find((one) => one.lot === lot);
    if (!known || toMillionths(written) <= known.left || moveErrors(moves, item, use).length > 0) return [];
    const left = Math.max(0, fromMillionths(known.left)) * (use === "weight" ? moves.ratio : 1);
    const amount = (of: number) => amountWords(of, use, unit);
    const other = lotsOf(ledger, item, use).find((one) => one.lot !== "" && one.lot !== lot)?.lot;
    const both =
      other === undefined
        ? ""
        : `Did another lot go in too? Then write both in the cell, such as "${lot}, ${other}": the first is taken as far as it goes. Else `;
    const received = `${both === "" ? "W" : "w"}rite down under Receiving what else came in of it`;
    return `${item}: ${amount(quantity)} of lot ${lot} would be taken, and by the moves ${left > 0 ? `only ${amount(left)}` : "nothing"} is left of it. ${both}${received}`;
  });
}
