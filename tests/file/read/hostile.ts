import { readFileSync } from "node:fs";
import { expect } from "vitest";
import { openFile } from "../../../src/file/openFile";
import { FileRefused } from "../../../src/file/refused";
import { richWorkbook } from "../richWorkbook";
import { randomFrom, SPOILS } from "./hostileFiles";

const sample = (file: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../../../sample-workbooks/${file}`, import.meta.url)));

/** What a file comes to: a book, or the sentence that refuses it. Anything else is thrown. */
function outcome(bytes: Uint8Array, name: string): "opened" | string {
  try {
    const { book } = openFile(bytes, name);
    // Plain data, as it has to pass between threads.
    expect(() => structuredClone(book)).not.toThrow();
    return "opened";
  } catch (error) {
    if (!(error instanceof FileRefused)) throw error;
    // A fault of ours that was caught at the end is not a refusal.
    if (error.cause) throw error.cause;
    return error.message;
  }
}

/** Opens so many spoiled files, the same ones each time, and tells what became of each. */
export function openSpoiled(count: number): string[] {
  const files = [...["1-studio.xlsx", "2-burn-tests.xlsx"].map(sample), richWorkbook()];
  const ways = Object.entries(SPOILS);
  return Array.from({ length: count }, (_, i) => {
    const [way, spoil] = ways[i % ways.length] as (typeof ways)[number];
    const random = randomFrom(i);
    const bytes = spoil(files[Math.floor(random() * files.length)] as Uint8Array, random);
    try {
      return `${way}: ${outcome(bytes, i % 9 === 0 ? "a.csv" : "a.xlsx")}`;
    } catch (error) {
      throw new Error(`file ${i}, ${way}`, { cause: error });
    }
  });
}

/** Each is a book or a sentence that says what to do. */
export function expectSentences(outcomes: readonly string[]): void {
  for (const said of outcomes)
    expect(said).toMatch(/: (?:opened|(?:This|There|What).*\. (?:Open|Choose|Take|Save|If|Move|Export).*\.)$/s);
  // Both happen, or the test would test nothing.
  const opened = outcomes.filter((said) => said.endsWith(": opened")).length;
  expect(opened).toBeGreaterThan(outcomes.length / 20);
  expect(opened).toBeLessThan(outcomes.length / 1.3);
}
