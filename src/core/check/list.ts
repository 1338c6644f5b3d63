/** Words as a list of choices: `mm, cm or in`. */
export function list(words: readonly string[]): string {
  return words.length > 1 ? `${words.slice(0, -1).join(", ")} or ${words.at(-1)}` : words.join();
}
