/** A wick as makers write it: `LX-21`, `2 x LX-21`, `LX-21 x 2`, `LX-21 (2)`. */
export function wickOf(text: string): { readonly name: string; readonly each: number } {
  const [, before, name = ""] = /^(\d{1,2})\s*[x×*]\s*(\S.*)$/i.exec(text) ?? [];
  if (before) return { name, each: Number(before) };
  const [, first = "", behind, inBrackets] =
    /^(.*\S)\s*(?:\s[x×*]\s*(\d{1,2})|\((\d{1,2})\s*(?:x|pcs?)?\))$/i.exec(text) ?? [];
  if (first !== "") return { name: first, each: Number(behind ?? inBrackets) };
  return { name: text, each: 1 };
}
