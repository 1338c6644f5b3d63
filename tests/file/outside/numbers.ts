import { partsOf, sheetsOf } from "../../samples/zipped";

/** Cells that hold another number in one file than in the other, of all that hold one in the first. */
export function differentNumbers(ours: Uint8Array, theirs: Uint8Array): { compared: number; different: string[] } {
  const others = new Map(
    sheetsOf(partsOf(theirs)).map(({ name, cells }) => [name, new Map(cells.map((cell) => [cell.address, cell]))]),
  );
  const different: string[] = [];
  let compared = 0;
  for (const { name, cells } of sheetsOf(partsOf(ours))) {
    for (const { address, value, attributes } of cells) {
      if (value === undefined || value === "" || ![undefined, "n", "b"].includes(attributes.t)) continue;
      compared++;
      const other = others.get(name)?.get(address)?.value;
      if (other === undefined || !isClose(Number(value), Number(other)))
        different.push(`${name}!${address} ${value}, LibreOffice ${other ?? "nothing"}`);
    }
  }
  return { compared, different };
}

/** Two programs may add in another order. */
const isClose = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-12 * Math.max(1, Math.abs(a), Math.abs(b));
