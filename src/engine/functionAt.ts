/**
 * The name of the function around a place in a formula, without what stands before its opening bracket: the name that
 * the place is in or right behind, else the innermost one whose brackets are open there. Null where there is none.
 */
export function functionAt(formula: string, place: number): string | null {
  if (!formula.startsWith("=")) return null;
  const isInText = (formula.slice(0, place).split('"').length - 1) % 2 === 1;
  const [after = ""] = isInText ? [] : (/^[\w.]*/.exec(formula.slice(place)) ?? []);
  const [here = ""] = isInText ? [] : (/[A-Za-z][\w.]*$/.exec(formula.slice(0, place)) ?? []);
  const behind = formula[place + after.length];
  if (here && behind !== "!" && !/^[A-Z]{1,3}\d+$/i.test(here + after)) {
    // A name that is still being typed, or one with its bracket.
    if (behind === "(" || here.includes(".")) return here + after;
  }
  const open: string[] = [];
  // Texts, sheet names and headings may hold brackets of their own.
  for (const [part] of formula.slice(0, place).matchAll(/"(?:[^"]|"")*"?|'(?:[^']|'')*'?|[A-Za-z][\w.]*\(|[()]/g)) {
    if (part === ")") open.pop();
    else if (part.endsWith("(")) open.push(part.slice(0, -1));
  }
  return open.filter((name) => name !== "").at(-1) ?? null;
}
