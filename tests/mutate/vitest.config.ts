import { configDefaults, defineConfig } from "vitest/config";

const here = (name: string): string => new URL(name, import.meta.url).pathname;

const domain = process.env.POURWRIGHT_DOMAIN;

/** The tests that mutants meet: those of the core and of the functions, the latter made from the sources. */
export default defineConfig({
  resolve: {
    alias: [
      { find: /^\.\/registered$/, replacement: here("registered.ts") },
      { find: /^\.\.\/dist$/, replacement: here("dist.ts") },
    ],
  },
  test: {
    root: here("../.."),
    include: [`tests/core/${domain ? `{${domain}/**/,}` : "**/"}*.test.ts`, "tests/functions/**/*.test.ts"],
    // These ask of the built script itself and of a page around it, or, slowly, for any answer at all.
    exclude: [
      ...configDefaults.exclude,
      "**/*.long.test.ts",
      ...(domain === "batch" ? [] : ["tests/functions/batch.test.ts"]),
      "tests/functions/{blankAsZero,examples,excelRuntime,ran,registration,rules}.test.ts",
    ],
    env: { POURWRIGHT_TESTS: "mutate" },
    testTimeout: 600_000,
    isolate: false,
  },
});
