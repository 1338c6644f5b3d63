import { configDefaults, defineConfig } from "vitest/config";
import usual from "./vitest.config";

/** The exhaustive tests, which take minutes: what the usual ones show on a part, these show on all of it. */
export default defineConfig({
  test: { ...usual.test, include: ["tests/**/*.long.test.ts"], exclude: configDefaults.exclude },
});
