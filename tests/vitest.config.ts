import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/**/*.test.{ts,tsx}"],
    benchmark: { include: ["tests/**/*.bench.ts"] },
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // Two cores: more workers than that only make the browser tests wait for each other.
    maxWorkers: 2,
  },
});
