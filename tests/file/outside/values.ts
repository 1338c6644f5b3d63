import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { attributesOf, cellsOf, partsOf, type WrittenCell } from "../../samples/zipped";
import { partWith, textOf } from "../write/parts";
import { isUnknown } from "./libreOffice";

/** What LibreOffice found: how many formulas it worked out again, and which cells hold something else then. */
export interface Compared {
  readonly formulas: number;
  readonly different: readonly string[];
}

/** Compares the values of all formulas that LibreOffice knows, and all numbers. */
export function differentValues(ours: Uint8Array, theirs: Uint8Array): Compared {
  const others = sheetsIn(theirs);
  const different: string[] = [];
  let formulas = 0;
  for (const [name, cells] of sheetsIn(ours)) {
    for (const [address, cell] of cells) {
      const isFormula = cell.formula !== undefined && !isUnknown(cell.formula);
      if (isFormula) formulas++;
      else if (typeof cell.holds !== "number") continue;
      const other = others.get(name)?.get(address)?.holds;
      if (!isSame(cell.holds, other)) different.push(`${name}!${address} ${cell.holds}, LibreOffice ${other}`);
    }
  }
  return { formulas, different };
}

/** The file with another value saved for the first formula that has a number: who works it out again notices. */
export function withWrongValue(bytes: Uint8Array): Uint8Array {
  const parts = unzipSync(bytes);
  for (const [path, content] of Object.entries(parts)) {
    const xml = strFromU8(content);
    const wrong = xml.replace(/(<c (?:(?!t=)[^>])*><f>(?:(?!_xl)[^<])*<\/f><v>)([\d.]+)/, "$1123456789");
    if (/<worksheet\b/.test(xml) && wrong !== xml) return zipSync({ ...parts, [path]: strToU8(wrong) });
  }
  throw new Error("No formula with a number was found.");
}

/** Two programs may add in another order. What gives an empty text may be written as nothing. */
const isSame = (a: number | string, b: number | string = ""): boolean =>
  typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= 1e-12 * Math.max(1, Math.abs(a), Math.abs(b))
    : a === b;

interface Cell {
  readonly formula?: string | undefined;
  readonly holds: number | string;
}

/** The cells of each sheet by their addresses, wherever the parts of the file stand. */
function sheetsIn(bytes: Uint8Array): Map<string, Map<string, Cell>> {
  const parts = partsOf(bytes);
  const texts = [...partWith(parts, "sst").matchAll(/<si>(.*?)<\/si>|<si\/>/gs)].map(([si]) => textOf(si));
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
      const read = (cell: WrittenCell): Cell => ({ formula: cell.formula, holds: holdsOf(cell, texts) });
      return [name, new Map(cells.map((cell) => [cell.address, read(cell)]))];
    }),
  );
}

/** A number, or a text, an error or a truth as the file says it. */
function holdsOf({ attributes: { t = "n" }, value = "" }: WrittenCell, texts: readonly string[]): number | string {
  if (t === "s") return texts[Number(value)] ?? "";
  return t === "n" && value !== "" ? Number(value) : value;
}
