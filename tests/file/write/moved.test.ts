import { expect, it } from "vitest";
import type { BookSheet } from "../../../src/file/book";
import { emptySheet } from "../../../src/file/emptyBook";
import { cellsMoved } from "../../../src/file/write/moved";

/** A sheet of these values below each other. */
const column = (values: readonly number[], first = 0): BookSheet => ({
  ...emptySheet("1", "Pours"),
  rows: values.map((value, i) => ({ row: first + i, cells: [{ column: 0, style: 0, value }] })),
});

const OWN = Array.from({ length: 20 }, (_, i) => i * i);

it("sees rows that came in between and rows that went", () => {
  expect(cellsMoved(column(OWN), column(OWN, 1))).toBe(true);
  expect(cellsMoved(column(OWN), column(OWN.slice(3)))).toBe(true);
});

it("sees nothing in values that were written over", () => {
  expect(cellsMoved(column(OWN), column(OWN))).toBe(false);
  expect(cellsMoved(column(OWN), column(OWN.map((value) => value + 0.5)))).toBe(false);
  expect(cellsMoved(column([1, 2, 3]), column([1, 2, 4]))).toBe(false);
});

// Comparing each row with each other one would take minutes, and giving all ways it may have gone to one call fails.
it("does so in a sheet of very many rows that are alike", () => {
  const alike = Array.from({ length: 150_000 }, (_, i) => (i >> 1) % 2);
  expect(cellsMoved(column(alike), column(alike, 1))).toBe(true);
});
