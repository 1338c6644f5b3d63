/** What is wrong with a formula's references to tables. */

import {
  type FormulaPlace,
  isInRows,
  outsideTexts,
  PART,
  type PlacedTable,
  tableAround,
  tableNamed,
  unescaped,
} from "./references";

/** `Pours[Fill]`, `[@Fill]`, `Pours[[#All],[Fill]:[Wax]]`: what stands in the outermost brackets. */
const REFERENCE = /([\p{L}_\\][\p{L}\p{N}_.]*)?\[((?:'.|[^[\]']|\[(?:'.|[^[\]'])*\])*)\]/gu;

/** What to fix in a formula that came to this error; empty where its references to tables are not at fault. */
export function tableFault(
  formula: string,
  error: string,
  place: FormulaPlace,
  tables: readonly PlacedTable[],
): string {
  const faults: string[] = [];
  outsideTexts(formula, (text) => {
    for (const [, name, body = ""] of text.matchAll(REFERENCE)) {
      const table = name ? tableNamed(name, tables) : tableAround(place, tables);
      if (!table) continue;
      const fault = faultOf(error, body, place, table);
      if (fault) faults.push(fault);
    }
    return text;
  });
  return faults[0] ?? "";
}

function faultOf(error: string, body: string, place: FormulaPlace, table: PlacedTable): string | undefined {
  if (error === "#NAME?") return lostColumn(body, table);
  if (error === "#REF!" && /#Totals/i.test(body) && !table.hasTotals) return `${table.name} has no row of totals`;
  if (error === "#VALUE!" && /^@|#This Row/i.test(body) && !isInRows(place, table)) {
    return `@ means the formula's own row, and this is no row of ${table.name}; move the formula into one`;
  }
  return undefined;
}

function lostColumn(body: string, { name, headings, known = headings }: PlacedTable): string | undefined {
  const inBrackets = [...body.matchAll(PART)].map(([, part = ""]) => part);
  const said = (inBrackets.length > 0 ? inBrackets : [body.replace(/^@/, "")])
    .filter((part) => part !== "" && !part.startsWith("#"))
    .map(unescaped);
  const lost = said.find((one) => ![...headings, ...known].some((heading) => same(heading, one)));
  if (lost === undefined) return undefined;
  const near = headings.filter((heading) => isNear(heading, lost));
  return `${name} has no column "${lost}"${near.length === 1 ? `; write "${near[0]}", if you mean that` : ""}`;
}

/** Whether one is the other with letters left out, from the same first letter on: Qty and Quantity. */
function isNear(a: string, b: string): boolean {
  const [short = "", long = ""] = [a, b].map((one) => one.toLowerCase()).sort((x, y) => x.length - y.length);
  let place = 0;
  for (const letter of long) if (letter === short[place]) place++;
  return short[0] === long[0] && place === short.length;
}

const same = (a: string, b: string) => a.toLowerCase() === b.toLowerCase();
