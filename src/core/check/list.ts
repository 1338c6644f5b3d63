/** Words as a list: `mm, cm or in`. */
export function list(words: readonly string[], last: "or" | "and" = "or"): string {
  return words.length > 1 ? `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}` : words.join();
}
