/** What a maker does is kept through a killed browser; for other ways see keep.long.test.ts. */

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { launchProcess } from "./launch";
import { cell, settled, Tabs } from "./tabs";

const tabs = new Tabs();

describe("a browser that is killed", () => {
  it("has lost nothing that was done a second before, and works it all out again", async () => {
    const folder = mkdtempSync(join(tmpdir(), "pourwright-"));
    try {
      const first = await launchProcess(folder);
      const before = await tabs.tab(first.context, true);
      await before.openWorkbook("An empty workbook");
      await before.type("A1", "21");
      await before.type("A2", "=A1*2");
      await before.type("B1", '=POUR.FILLWEIGHT(100,"g",0.86)');
      await settled(before);
      const worked = await cell(before, "Sheet1", 0, 1);
      await first.kill();

      const second = await launchProcess(folder);
      const after = await tabs.tab(second.context);
      expect(await cell(after, "Sheet1", 0, 0)).toBe(21);
      // Twice 21, worked out by hand.
      expect(await cell(after, "Sheet1", 1, 0)).toBe(42);
      expect(await cell(after, "Sheet1", 0, 1)).toEqual(worked);
      // Not only its last value: it follows what it is made of.
      await after.type("A1", "5");
      expect(await cell(after, "Sheet1", 1, 0)).toBe(10);
      await second.kill();
    } finally {
      // The last of the killed processes may still be about to end.
      rmSync(folder, { recursive: true, force: true, maxRetries: 100, retryDelay: 100 });
    }
  });
});
