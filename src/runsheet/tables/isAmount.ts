import { unitKindOf } from "../../core/units/spellings";

/** Whether a text is a weight or a volume with its unit, and no name: `188 g`, `1 lb 4 oz`, `about 6.6 oz each`. */
export function isAmount(text: string): boolean {
  if (text.length > LONGEST) return false;
  const tidy = text
    .normalize("NFKC")
    .replace(/^(about|approx\.?|ca\.?|c\.)\s|^[~≈]/i, "")
    .replace(/\s*\b(of wax|wax|of scent|scent|in total|total|each|ea|per [a-z]+|\/ ?[a-z]+)\.?$/i, "")
    .trim();
  const parts = [...tidy.matchAll(/(\d[\d.,]*)\s*([^\d]+)/g)];
  const isWhole = parts.map(([whole]) => whole).join("") === tidy;
  const kinds = parts.map(([, , unit = ""]) => unitKindOf(unit.replace(/(,|\band\b|\+)\s*$/, "").trim()));
  return parts.length > 0 && isWhole && kinds.every((kind) => kind === "weight" || kind === "volume");
}

/** What is longer is no amount, and would take long to look through. */
const LONGEST = 60;
