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

/** How many are noticed of those that count, and the share, in percent. */
function scoreOf(found: readonly Found[]) {
  const noticed = found.filter(isNoticed).length;
  const all = noticed + found.filter(isMissed).length;
  return { all, share: all === 0 ? 0 : noticed / all };
}

/** The normal distribution's bound of 95 %. */
const WITHIN = 1.959964;

/** Where the share of all changes may lie by those that were drawn: the interval of Wilson (1927), from memory. */
function interval(share: number, all: number): readonly [number, number] {
  const square = WITHIN ** 2 / all;
  const middle = (share + square / 2) / (1 + square);
  const half = (WITHIN * Math.sqrt((share * (1 - share)) / all + square / 4 / all)) / (1 + square);
  return [middle - half, middle + half];
}

const percent = (share: number): string => (100 * share).toFixed(1);

/** A score in words; of a part that was drawn with what the whole may be. */
function score(found: readonly Found[], every: number): string {
  const { all, share } = scoreOf(found);
  const [low, high] = interval(share, all);
  const drawn = every === 1 || all === 0 ? "" : ` (95 %: ${percent(low)} to ${percent(high)})`;
  return `${percent(share)} %${drawn} of ${all}`;
}

/** What a domain scores, in a line. */
function scoreLine(domain: string, found: readonly Found[], every: number): string {
  const late = found.filter(({ status }) => status === "Timeout").length;
  const missed = `${found.filter(isMissed).length} missed`;
  return `  ${domain.padEnd(16)} ${score(found, every)}, ${missed}${late > 0 ? `, ${late} by not ending` : ""}`;
}

/** Prints what no test noticed. */
export function printMissed(found: readonly Found[]): void {
  for (const { file, location, status, before, replacement } of found.filter(isMissed)) {
    const { line, column } = location.start;
    const put = replacement?.replace(/\s+/g, " ").slice(0, 120);
    console.log(`${file}:${line}:${column} ${status === "Survived" ? "not noticed" : "not reached"}: ${put}`);
    console.log(`    ${before.trim()}`);
  }
}

/** Prints the scores; whether the whole reaches the goal. */
export function printScores(found: readonly Found[], every: number): boolean {
  console.log("\nOf so many small changes so many are noticed by a test:");
  for (const domain of new Set(found.map((one) => one.domain))) {
    const its = found.filter((one) => one.domain === domain);
    console.log(scoreLine(domain, its, every));
  }
  const holds = 100 * scoreOf(found).share >= GOAL;
  console.log(`Score ${score(found, every)}, goal at least ${GOAL} %: ${holds ? "holds" : "falls short"}.`);
  return holds;
}
