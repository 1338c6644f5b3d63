import Papa from "papaparse";

const ROWS = 20;
const CANDIDATES = [",", "\t", ";", "|"];

/** Some programs name the separator in a line of its own. */
const NAMED = /^sep=([^\r\n])\r?\n/i;

/** What stands between the cells of a list, and the list without the line that may say so. */
export function findDelimiter(text: string): { readonly delimiter: string; readonly list: string } {
  const [line, named] = NAMED.exec(text) ?? [];
  if (line !== undefined && named !== undefined) return { delimiter: named, list: text.slice(line.length) };
  if (isEven(text, "\t")) return { delimiter: "\t", list: text };
  // Where commas are decimal, there are as many of them in each row as semicolons, or more.
  if (isEven(text, ";") && !/(?<!\d),|,(?!\d)/.test(text.slice(0, 100_000))) return { delimiter: ";", list: text };
  const { delimiter } = Papa.parse(text, { preview: ROWS, delimitersToGuess: CANDIDATES }).meta;
  return { delimiter, list: text };
}

/** Whether this separator makes rows of the same length, of two cells at least. */
function isEven(text: string, delimiter: string): boolean {
  const { data } = Papa.parse<string[]>(text, { delimiter, preview: ROWS, skipEmptyLines: true });
  const [{ length } = []] = data;
  return length > 1 && data.every((row) => row.length === length);
}
