import { configDefaults, defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/**/*.test.{ts,tsx}"],
    // The exhaustive ones: see long.config.ts.
    exclude: [...configDefaults.exclude, "tests/**/*.long.test.ts"],
    benchmark: { include: ["tests/**/*.bench.ts"] },
    // On a busy machine everything takes long: only what hangs meets these.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    expect: { poll: { timeout: 240_000 } },
    // Two cores: more workers than that only make the browser tests wait for each other.
    maxWorkers: 2,
  },
});
