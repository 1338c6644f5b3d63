/** Whether a text would still be that text if the user typed it. */
export function isPlainText(text: string): boolean {
  return /^[\p{L}(<]/u.test(text) && !/^(true|false)$/i.test(text);
}
