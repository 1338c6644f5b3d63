/** A heading as its words are read: brackets of one sort, and spaces for the signs that stand between words. */
export const tidyHeading = (heading: string): string =>
  heading.replace(/\[/g, "(").replace(/\]/g, ")").replace(/[_*:]/g, " ").replace(/\s+/g, " ").trim();
