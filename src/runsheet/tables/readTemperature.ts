import { celsius } from "../../core/units/celsius";
import { bareHeading, bracketed } from "./headings/tidyHeading";

/** In degrees Celsius; infinite where a cell gives only the other end, as `> 93` does. */
interface Degrees {
  readonly least: number;
  readonly most: number;
}

/** A temperature as a cell gives it: one number, a range, or only one end of it. */
export interface Temperature extends Degrees {
  /** As it was typed, with the unit of the heading where the cell names none. */
  readonly words: string;
  /** What it is if it is in C, and if it is in F, where nothing says which. */
  readonly either?: readonly Degrees[];
  /** Why it cannot be compared; the two numbers mean nothing then. */
  readonly doubt?: "no number" | "no unit C or F" | "more than a temperature";
}

const ABOVE = new Set([">", "≥", ">=", "+", "over", "above", "more", "exceeds", "least"]);
const BELOW = new Set(["<", "≤", "<=", "below", "under", "less", "up", "most", "max", "maximum"]);
/** Words and signs that change no number: about, ranges, and how a flash point is measured. */
const FILLERS = new Set(
  [
    "~ ≈ - – — / & , ; . ( ) [ ] about around approx approximately ca circa at from to and between or than",
    "closed open cup cc coc tcc pmcc",
  ]
    .join(" ")
    .split(" "),
);

/** Letters for the units however they are written. */
const tidyUnits = (text: string): string =>
  text
    .toLowerCase()
    .replace(/℃/g, " c ")
    .replace(/℉/g, " f ")
    .replace(/[°º˚]|\bdeg(ree)?s?\b\.?|\bdeg(ree)?s?(?=[cf]\b)/g, " ")
    .replace(/celsius|centigrade/g, "c")
    .replace(/fahrenheit/g, "f");

/**
 * Reads a cell such as `65`, `65-70`, `about 149F`, `> 93 C` or `149 F (65 C)`. The unit in the cell beats the
 * heading's. What is not understood is kept with the reason: it must never pass as compared.
 * @returns undefined for a blank cell
 */
export function readTemperature(text: string, heading: string): Temperature | undefined {
  if (text === "") return undefined;
  const doubtful = (doubt: NonNullable<Temperature["doubt"]>, words = text): Temperature => {
    return { words, least: Number.NaN, most: Number.NaN, doubt };
  };
  const tidy = tidyUnits(text)
    .replace(/−/g, "-")
    .replace(/(\d),(\d)/g, "$1.$2");
  const tokens = tidy.match(/\d+(?:\.\d+)?|[<>]=|\p{L}+|\S/gu) ?? [];
  const found: { value: number; unit: string }[] = [];
  const ends = new Set<"above" | "below">();
  let isOdd = false;
  for (const [i, token] of tokens.entries()) {
    const last = found.at(-1);
    if (/^\d/.test(token)) {
      const isNegative = tokens[i - 1] === "-" && !last;
      found.push({ value: Number(token) * (isNegative ? -1 : 1), unit: "" });
    } else if ((token === "c" || token === "f") && last && last.unit === "") last.unit = token;
    // The short word for circa.
    else if (token === "c" && !last) continue;
    else if (ABOVE.has(token)) ends.add("above");
    else if (BELOW.has(token)) ends.add("below");
    else if (!FILLERS.has(token)) isOdd = true;
  }
  if (found.length === 0) return doubtful("no number");
  const own = found.find(({ unit }) => unit !== "")?.unit;
  const unit = own ?? unitIn(heading);
  const words = own === undefined && unit !== "" ? `${text} ${unit.toUpperCase()}` : text;
  if (isOdd || found.length > 2 || ends.size > 1) return doubtful("more than a temperature", words);
  const degreesIn = (other: string): Degrees => {
    const degrees = found.map((one) => celsius(one.value, "temperature", (one.unit || other).toUpperCase()));
    return {
      least: ends.has("below") ? Number.NEGATIVE_INFINITY : Math.min(...degrees),
      most: ends.has("above") ? Number.POSITIVE_INFINITY : Math.max(...degrees),
    };
  };
  if (unit === "") return { ...doubtful("no unit C or F", words), either: ["c", "f"].map(degreesIn) };
  return { words, ...degreesIn(unit) };
}

/** The unit of a heading, in brackets or as its last word; empty when it names none, or both. */
function unitIn(heading: string): string {
  const lastWord = tidyUnits(bareHeading(heading)).trim().split(/\s+/).at(-1) ?? "";
  const units = new Set([...tidyUnits(bracketed(heading).join(" ")).split(/[^\p{L}]+/u), lastWord]);
  const [isC, isF] = [units.has("c"), units.has("f")];
  if (isC === isF) return "";
  return isC ? "c" : "f";
}
