/** A column's letters: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  const before = Math.floor(column / 26);
  return (before > 0 ? columnLetters(before - 1) : "") + String.fromCharCode(65 + (column % 26));
}
