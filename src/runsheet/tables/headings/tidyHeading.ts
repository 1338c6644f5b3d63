/** A heading as its words are read: brackets of one sort, closed, and spaces for the signs that stand between words. */
export const tidyHeading = (heading: string): string =>
  heading
    .normalize("NFKC") // ℃, ㎏, H₂O and spaces of any sort as they are typed otherwise
    .replace(/[[{]/g, "(")
    .replace(/[\]}]/g, ")")
    .replace(/\([^()]*$/, "$&)")
    .replace(/[_*:|]/g, " ")
    .replace(/\s+/g, " ")
    .trim();

/** The words of a heading without what stands in brackets. */
export const bareHeading = (heading: string): string => tidyHeading(tidyHeading(heading).replace(/\(.*?\)/g, " "));

/** What stands in each pair of brackets. */
export const bracketed = (heading: string): string[] =>
  [...tidyHeading(heading).matchAll(/\((.*?)\)/g)].map(([, words]) => (words as string).trim());
