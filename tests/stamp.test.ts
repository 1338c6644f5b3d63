import { mkdirSync, mkdtempSync, renameSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, it } from "vitest";
import { requireCurrent, sourcesHash } from "../src/build/stamp";
import { dist } from "./dist";

const home = mkdtempSync(join(tmpdir(), "pourwright-stamp-"));
afterAll(() => rmSync(home, { recursive: true }));

it("tells sources apart by what they hold and are called, not by when they were written", () => {
  mkdirSync(join(home, "src", "core"), { recursive: true });
  mkdirSync(join(home, "sample-workbooks"));
  const files = [
    "manifest.xml",
    "package-lock.json",
    "sample-workbooks/1-studio.xlsx",
    "tsconfig.json",
    "webpack.config.js",
    "src/a.ts",
    "src/core/b.ts",
  ];
  for (const file of files) writeFileSync(join(home, file), "1");
  const first = sourcesHash(home);
  for (const file of files) {
    utimesSync(join(home, file), 1, 1);
    expect(sourcesHash(home), file).toBe(first);
    writeFileSync(join(home, file), "2");
    expect(sourcesHash(home), file).not.toBe(first);
    writeFileSync(join(home, file), "1");
  }
  renameSync(join(home, "src/a.ts"), join(home, "src/c.ts"));
  expect(sourcesHash(home)).not.toBe(first);
});

it("refuses a build of other sources, and one that came to no end", () => {
  const folder = join(home, "dist");
  mkdirSync(folder);
  const refusal = "dist was not built from the sources as they are. Run: npm run build";
  expect(() => requireCurrent(folder)).toThrow(refusal);
  writeFileSync(join(folder, "built-from.txt"), "other sources");
  expect(() => requireCurrent(folder)).toThrow(refusal);
  writeFileSync(join(folder, "built-from.txt"), sourcesHash());
  requireCurrent(folder);
  requireCurrent(fileURLToPath(dist));
});
