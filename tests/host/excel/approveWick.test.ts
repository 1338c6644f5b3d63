import { afterEach, expect, it, vi } from "vitest";
import { approveWick } from "../../../src/pane/actions/approveWick";
import type { CellValue } from "../../../src/sheet/sheet";
import { testedBook, testedTables } from "../../pane/testedBook";
import { type Failure, newHost, StandIn } from "./standIn";

afterEach(() => vi.unstubAllGlobals());

function opened() {
  const standIn = new StandIn().install();
  for (const [name, rows] of Object.entries(testedTables())) {
    standIn.table(name, `My ${name}`, rows as Exclude<CellValue, object | null>[][]);
  }
  return { standIn, book: testedBook(newHost()) };
}

it("approves a wick in Excel by one cell", async () => {
  const { standIn, book } = opened();
  const { words } = await approveWick(book, "B");
  expect(words).toContain("Size 6 stands in Vessels as the wick of Bowl");
  const vessels = standIn.book.find("My Vessels");
  expect([1, 2].map((row) => [0, 1, 2].map((column) => vessels?.cell(row, column)?.value))).toEqual([
    ["Tin", undefined, 90],
    ["Bowl", "Size 6", 240],
  ]);
});

it.each(
  (["nothing", "half", "all"] as const).map((done): Omit<Failure, "sync"> => ({ done, code: "GeneralException" })),
)("leaves the workbook as it was when Excel fails to write: %j", async (failure) => {
  const { standIn, book } = opened();
  const before = standIn.book.snapshot();
  const { host } = book;
  const write = host.write.bind(host);
  host.write = (...given) => {
    standIn.failure = { sync: standIn.syncs + 1, ...failure };
    return write(...given);
  };
  await expect(approveWick(book, "B")).rejects.toThrow();
  expect(standIn.book.snapshot()).toEqual(before);
});
