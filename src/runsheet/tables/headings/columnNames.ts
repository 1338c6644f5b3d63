/** What each column is called: its heading, with its place where it has none or one that stands there before. */
export const columnNames = (headings: readonly string[]): string[] =>
  headings.map((heading, i) => {
    if (heading === "") return `column ${i + 1}`;
    return headings.indexOf(heading) < i ? `${heading}, column ${i + 1}` : heading;
  });
