/**
 * What to know of burning tests, each with its source, and marked where none is known or where it was not yet compared
 * with the standard. All of it defers to local rules, suppliers and burn-test laboratories.
 */
export const BURN_CAUTIONS = {
  place:
    "Stay with it. On a plate that cannot burn, 30 cm (12 in) from all that can, no draughts, no children or pets (fire-safety guidance).",
  glass: "Sudden heat or cold cracks glass: use none chipped, cold or wet (common practice, no source).",
  lead: "No wick with a lead core: over 0.06 % lead in a metal core is banned in the US (16 CFR 1500.12).",
  soot: "Soot by EN 15426: the mean of three candles of one wick, over 25 g, up to 100 mm wide; at most 1.0 an hour (from memory).",
  wicks:
    "Several wicks: read the highest flame; the glass gets hotter (common practice, no source). EN 15426 is for one wick.",
  deciding: "A few candles prove little: a burn-test laboratory and the local rules have the last word.",
} as const;

/** What ends a test at once. */
export const stopAt = (isTeaLight: boolean): string =>
  `Put it out and end the test when: the flame is over ${isTeaLight ? "30 mm (tea light, EN 15493)" : "75 mm (EN 15493)"}; a second flame burns; the vessel cracks or is too hot to hold; smoke goes on; anything but the wick burns (common practice, no source). Write down which.`;
