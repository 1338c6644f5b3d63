/** A small change of a source, and what became of it. */
export interface Found {
  readonly domain: string;
  readonly file: string;
  readonly location: { readonly start: { readonly line: number; readonly column: number } };
  readonly status: string;
  /** The line as it is, and what stood in place of a part of it. */
  readonly before: string;
  readonly replacement?: string;
}

/** Of a hundred changes so many are to be noticed by a test. */
const GOAL = 85;

const isNoticed = ({ status }: Found): boolean => status === "Killed" || status === "Timeout";
const isMissed = ({ status }: Found): boolean => status === "Survived" || status === "NoCoverage";
const scoreOf = (found: readonly Found[]): number => {
  const noticed = found.filter(isNoticed).length;
  return (100 * noticed) / Math.max(1, noticed + found.filter(isMissed).length);
};

/** What a domain scores, in a line. */
export function scoreLine(domain: string, found: readonly Found[]): string {
  const missed = found.filter(isMissed).length;
  return `  ${domain.padEnd(12)} ${scoreOf(found).toFixed(1).padStart(5)} %  of ${found.length}, ${missed} missed`;
}

/** Prints what no test noticed, then the scores; whether the whole reaches the goal. */
export function print(found: readonly Found[]): boolean {
  for (const { file, location, status, before, replacement } of found.filter(isMissed)) {
    const { line, column } = location.start;
    const put = replacement?.replace(/\s+/g, " ").slice(0, 120);
    console.log(`${file}:${line}:${column} ${status === "Survived" ? "not noticed" : "not reached"}: ${put}`);
    console.log(`    ${before.trim()}`);
  }
  console.log("\nOf so many small changes so many are noticed by a test:");
  for (const domain of new Set(found.map((one) => one.domain))) {
    console.log(
      scoreLine(
        domain,
        found.filter((one) => one.domain === domain),
      ),
    );
  }
  const score = scoreOf(found);
  const holds = score >= GOAL;
  console.log(`Score ${score.toFixed(1)} %, goal at least ${GOAL} %: ${holds ? "holds" : "falls short"}.`);
  return holds;
}
