import { configDefaults, defineConfig } from "vitest/config";

const here = (name: string): string => new URL(name, import.meta.url).pathname;

/** The tests that mutants of a domain meet; those of the functions get these made from the sources. */
export default defineConfig({
  resolve: {
    alias: [
      { find: /^\.\/registered$/, replacement: here("registered.ts") },
      { find: /^\.\.\/dist$/, replacement: here("dist.ts") },
    ],
  },
  test: {
    root: here("../.."),
    include: process.env.POURWRIGHT_MUTATE?.split(" "),
    // These ask of the built script itself and of a page around it.
    exclude: [
      ...configDefaults.exclude,
      "**/*.long.test.ts",
      "tests/functions/{blankAsZero,examples,excelRuntime,ran,registration}.test.ts",
    ],
    setupFiles: here("seeded.ts"),
    env: { POURWRIGHT_TESTS: "mutate" },
    testTimeout: 600_000,
    hookTimeout: 600_000,
    isolate: false,
  },
});
