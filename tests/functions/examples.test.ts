import { existsSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { functionDocs } from "../../src/build/functionDocs";
import { type Calculated, calculate } from "../../src/engine/calculate";
import { metadata, metadataText, script } from "./built";

const docs = functionDocs();
const examples = docs.flatMap(({ id, examples }) => examples.map((example) => ({ id, ...example })));

describe("the examples of the docs, run by a spreadsheet", () => {
  let sheets: Calculated[][][];
  beforeAll(async () => {
    sheets = await calculate(
      examples.map(({ formula }, i) => ({
        name: `S${i}`,
        widths: [10],
        cells: [{ row: 0, column: 0, content: { formula } }],
      })),
      { script, metadata: metadataText },
    );
  });

  it("there is at least one for every function, and none for others", () => {
    expect(docs.map(({ id }) => id).sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
    for (const { id, examples, source, returns } of docs) {
      expect(examples.length, id).toBeGreaterThan(0);
      expect(source, id).toMatch(/\w{3}/);
      expect(returns, id).toMatch(/\w{3}/);
    }
  });

  it.each(examples.map(({ id, formula }, i) => [formula, id, i] as const))("%s", (formula, id, i) => {
    expect(formula).toMatch(new RegExp(`^=.*POUR\\.${id}\\(`));
    const { result } = examples[i] as (typeof examples)[number];
    const given = sheets[i] as Calculated[][];
    expect(given.length).toBe(result.length);
    for (const [r, row] of result.entries()) {
      expect(given[r]?.length).toBe(row.length);
      for (const [c, value] of row.entries()) {
        if (typeof value === "number") expect(given[r]?.[c]).toBeCloseTo(value, 6);
        else expect(given[r]?.[c]).toBe(value);
      }
    }
  });

  it.each(docs.map(({ id }) => id))("%s has a help page with its arguments and its example", (id) => {
    const file = new URL(`../../dist/help/${id}.html`, import.meta.url);
    expect(existsSync(file)).toBe(true);
    const page = readFileSync(file, "utf8");
    const doc = docs.find((one) => one.id === id);
    for (const { name } of doc?.parameters ?? []) expect(page).toContain(`<code>${name}</code>`);
    expect(page).toContain(`=POUR.${id}(`);
  });
});
