import { createRequire } from "node:module";
import { configDefaults, defineConfig } from "vitest/config";

const { devDependencies } = createRequire(import.meta.url)("../package.json") as {
  devDependencies: Record<string, string>;
};

const own = Object.keys(devDependencies).filter((name) => name.startsWith("@univerjs/"));
const texts = own.filter((name) => name.includes("/preset-")).map((name) => `${name}/locales/en-US`);

/** What tests take from the packages that the presets are made of. */
const behind = ["conditional-formatting", "data-validation", "filter", "hyper-link", "note"].map(
  (name) => `@univerjs/sheets-${name}`,
);

/**
 * Makes Univer's packages scripts that Node reads itself, once for all workers: taken apart by the test runner as our
 * own files are, they would take each worker several seconds.
 */
const univerPackages = {
  enabled: true,
  include: [
    // Of two ways in the optimizer takes the modules, whose circle Node does not load.
    "hyperformula",
    ...own,
    ...texts,
    ...behind,
    "@univerjs/core/facade",
    "@univerjs/engine-render",
    "@univerjs/sheets-formula/locale/en-US",
  ],
  rolldownOptions: {
    output: {
      // In a file that no test asks for by name: the packages ask for it by another address, and it would be there twice.
      codeSplitting: { groups: [{ name: "facade", test: /@univerjs.core.lib.es.facade/ }] },
    },
  },
};

const LONG = "tests/**/*.long.test.ts";

/** The usual tests; in the mode `long` the exhaustive ones with all of their cases (see cases.ts). */
export default defineConfig(({ mode }) => ({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: mode === "long" ? [LONG] : ["tests/**/*.test.{ts,tsx}"],
    exclude: mode === "long" ? configDefaults.exclude : [...configDefaults.exclude, LONG],
    env: { POURWRIGHT_TESTS: mode },
    // On a busy machine everything takes long: only what hangs meets these.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    expect: { poll: { timeout: 240_000 } },
    // Two cores: more workers than that only make the browser tests wait for each other.
    maxWorkers: 3,
    isolate: false,
    deps: { optimizer: { ssr: univerPackages } },
  },
}));
