/** A formula that keeps, of the rows of a column with the same name, the first one: 1 there, else 0. */
export const isFirstOf = (names: string, column: string): string =>
  `(XMATCH(${names},${names})=ROW(${column})-MIN(ROW(${column}))+1)`;
