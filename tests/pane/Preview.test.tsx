// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import type { CellValue } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";
import { openPane } from "./openPane";

describe("the preview", () => {
  const { show, section, changed } = openPane("pane-preview");
  const batch = (...bowl: CellValue[]): CellValue[][] => [
    ["Vessel", "Quantity", "Fill weight (g)", "Load"],
    ["Tin", 10, 100, 0],
    ["Bowl", ...bowl],
  ];
  const said = () => [...section().querySelectorAll("p.hint")].map(({ textContent }) => textContent);
  const candles = () => section().querySelector(".totals dd")?.textContent;

  it("says not to pour by it while anything is to be fixed, and no longer", async () => {
    const host = new FakeHost({ Batch: batch(2, "236 g", 0) });
    await show(host);
    const warned = ["Do not pour by this yet: what is to be fixed is missing here, or shown with wrong figures."];
    // The bowls are not in it.
    expect([candles(), said()]).toEqual(["10", warned]);
    host.all.Batch = batch(2, 236, 0);
    await changed(host);
    expect([candles(), said()]).toEqual(["12", []]);
    host.all.Batch = batch(1.5, 236, 0);
    await changed(host);
    expect([candles(), said()]).toEqual(["10", warned]);
  });
});
