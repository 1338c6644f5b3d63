/** A heading as its words are read: brackets of one sort, and spaces for the signs that stand between words. */
export const tidyHeading = (heading: string): string =>
  heading.replace(/\[/g, "(").replace(/\]/g, ")").replace(/[_*:]/g, " ").replace(/\s+/g, " ").trim();

/** The words of a heading without what stands in brackets. */
export const bareHeading = (heading: string): string => tidyHeading(tidyHeading(heading).replace(/\(.*?\)/g, " "));
