import type { Print } from "./sheet";

/** Where offices use Letter; all others use A4. Source: Unicode CLDR, supplemental measurementData, paperSize. */
const LETTER = ["BZ", "CA", "CL", "CO", "CR", "GT", "MX", "NI", "PA", "PH", "PR", "SV", "US", "VE"];

/** The paper usual where a language tag such as `en-US` is spoken; without a region in the tag, A4. */
export function usualPaper(language: string): Print["paper"] {
  const region = /^[a-z]+(?:-[a-z]{4})?-([a-z]{2})\b/i.exec(language)?.[1] ?? "";
  return LETTER.includes(region.toUpperCase()) ? "letter" : "a4";
}

/** Width and height of a paper upright, in millimetres. */
export const PAPER_SIZES = { letter: [215.9, 279.4], a4: [210, 297] } as const;

/** Millimetres, that every printer leaves; the foot of the page stands in the lower one. */
export const MARGINS = { side: 7, top: 10, bottom: 14 } as const;
