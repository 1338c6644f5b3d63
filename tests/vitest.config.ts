import { configDefaults, defineConfig } from "vitest/config";
import { univerPackages } from "./univerPackages";

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
