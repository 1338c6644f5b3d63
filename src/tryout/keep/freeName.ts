/** The name itself, or with a number behind it where others have it already; capitals do not tell names apart. */
export function freeName(wished: string, taken: readonly string[]): string {
  const used = new Set(taken.map((name) => name.toLowerCase()));
  if (!used.has(wished.toLowerCase())) return wished;
  // `Costs 2` is followed by `Costs 3`, but `Spring 2026` by `Spring 2026 2`.
  const stem = wished.replace(/ \d{1,2}$/, "");
  for (let number = 2; ; number++) {
    const name = `${stem} ${number}`;
    if (!used.has(name.toLowerCase())) return name;
  }
}
