import { attributesOf, cellsOf, partsOf, type WrittenCell } from "../../samples/zipped";

/** Cells that hold another number in one file than in the other, of all that hold one in the first. */
export function differentNumbers(ours: Uint8Array, theirs: Uint8Array): { compared: number; different: string[] } {
  const others = sheetsIn(theirs);
  const different: string[] = [];
  let compared = 0;
  for (const [name, cells] of sheetsIn(ours)) {
    for (const [address, { value, attributes }] of cells) {
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

/** The cells of each sheet by their addresses, wherever the parts of the file stand. */
function sheetsIn(bytes: Uint8Array): Map<string, Map<string, WrittenCell>> {
  const parts = partsOf(bytes);
  const [path = "", workbook = ""] = Object.entries(parts).find(([, xml]) => /<workbook\b/.test(xml)) ?? [];
  const folder = path.replace(/[^/]*$/, "");
  const relations = parts[path.replace(/([^/]*)$/, "_rels/$1.rels")] ?? "";
  const targets = new Map(
    [...relations.matchAll(/<Relationship [^>]*>/g)].map(([tag]) => {
      const { Id, Target = "" } = attributesOf(tag);
      return [Id, Target.startsWith("/") ? Target.slice(1) : folder + Target];
    }),
  );
  return new Map(
    [...workbook.matchAll(/<sheet [^>]*>/g)].map(([tag]) => {
      const { name = "", "r:id": id } = attributesOf(tag);
      const cells = cellsOf(parts[targets.get(id) ?? ""] ?? "");
      return [name, new Map(cells.map((cell) => [cell.address, cell]))];
    }),
  );
}
