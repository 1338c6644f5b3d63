/** The order in which functions are shown wherever they are listed. */

/** The parts, in the order of the work: the file names of src/functions. */
export const PARTS_IN_ORDER = ["fill", "scent", "weighing", "batch", "buying", "cost", "burn", "wicks", "label"];

/** What a pour day needs, first: the list that a spreadsheet opens at `=POUR.` shows no more than ten. */
const MAIN = [
  "FILLWEIGHT",
  "SCENTSPLIT",
  "WAXPART",
  "SCENTPART",
  "WEIGHOUT",
  "POTPLAN",
  "POTCOUNT",
  "LOADCHECK",
  "CANDLECOST",
  "ASKPRICE",
];

interface Listed {
  readonly id: string;
  readonly part: string;
}

/** Those of the main job first, then part by part as they are declared; a new part comes last. */
export function inOrder<F extends Listed>(functions: readonly F[]): F[] {
  const main = new Map(MAIN.map((id, i) => [id, i]));
  const parts = new Map(PARTS_IN_ORDER.map((part, i) => [part, i]));
  const rank = ({ id, part }: F): number => main.get(id) ?? MAIN.length + (parts.get(part) ?? parts.size);
  return [...functions].sort((a, b) => rank(a) - rank(b));
}
