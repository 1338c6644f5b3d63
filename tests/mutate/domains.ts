import { readdirSync } from "node:fs";
import { root } from "./tool";

/** Which files are changed one thing at a time, and by which tests that is to be noticed. */
export interface Domain {
  readonly name: string;
  readonly files: string;
  readonly tests: readonly string[];
}

const foldersOf = (folder: string): string[] =>
  readdirSync(`${root}src/${folder}`, { withFileTypes: true })
    .filter((one) => one.isDirectory())
    .map(({ name }) => `${folder}/${name}`);

/** Of packing, of choosing packs and of any cells at all only their own folders ask: that takes long. */
const CORE = ["tests/core/*.test.ts", "tests/core/!(batch|buying)/*.test.ts", "tests/functions/!(batch|rules).test.ts"];

/** Tests that work sheets out by a formula engine: they take long, and serve their own room. */
const WORKED_OUT = "afterPour|benchPaper|describeRun|formulas|inputChecks|seenSheet|twoSeries";
/** What a room does is asked by those after it too. */
const RUN_SHEET = `tests/runsheet/**/!(${WORKED_OUT}).test.ts`;

/** A folder with what lies in it; of `core` and `runsheet` what lies beside their folders. */
function domainOf(name: string, ...shared: readonly string[]): Domain {
  const within = name === "core" || name === "runsheet" ? "*" : "**/*";
  return { name, files: `src/${name}/${within}.ts`, tests: [`tests/${name}/${within}.test.ts`, ...shared] };
}

const domains: readonly Domain[] = [
  ...["core", ...foldersOf("core")].map((name) => domainOf(name, ...CORE)),
  domainOf("functions"),
  ...["runsheet", ...foldersOf("runsheet")].map((name) => domainOf(name, RUN_SHEET)),
];

/** The domains of these names, all of them when none is given: `runsheet` is all of its rooms too, `fill` is `core/fill`. */
export function domainsOf(names: readonly string[]): readonly Domain[] {
  const isCalled = (domain: Domain, name: string) => `/${domain.name}/`.includes(`/${name}/`);
  const unknown = names.find((name) => !domains.some((domain) => isCalled(domain, name)));
  if (unknown) throw new Error(`There is no ${unknown}. There are: ${domains.map(({ name }) => name).join(", ")}.`);
  return names.length === 0 ? domains : domains.filter((domain) => names.some((name) => isCalled(domain, name)));
}
