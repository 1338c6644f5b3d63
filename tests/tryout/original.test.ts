import { afterEach, describe, expect, it, vi } from "vitest";
import { lostWith, originalBytes } from "../../src/tryout/files/original";

describe("the file that a workbook was made of", () => {
  afterEach(() => vi.unstubAllGlobals());

  it("is loaded for a sample", async () => {
    const load = vi.fn(async () => new Response(new Uint8Array([1, 2])));
    vi.stubGlobal("fetch", load);
    expect(await originalBytes({ sample: "studio" })).toEqual(new Uint8Array([1, 2]));
    expect(load).toHaveBeenCalledWith("samples/1-studio.xlsx");
    expect(lostWith({ sample: "studio" })).toEqual([]);
  });

  it("is none for a sample of before: its workbook is saved as a new file, and what that lacks is told", async () => {
    vi.stubGlobal("fetch", vi.fn());
    expect(await originalBytes({ sample: "pour-day" })).toBeNull();
    expect(fetch).not.toHaveBeenCalled();
    expect(lostWith({ sample: "pour-day" }).map(({ what }) => what)).toEqual([
      "charts of the sample that this workbook began as",
    ]);
  });

  it.each([
    ["does not answer", () => Promise.reject(new TypeError("Failed to fetch"))],
    ["has it no more", async () => new Response(null, { status: 404 })],
  ])("is asked for again where the page's address %s", async (_, answer) => {
    vi.stubGlobal("fetch", vi.fn(answer));
    await expect(originalBytes({ sample: "studio" })).rejects.toThrow(
      /See that this page's address answers, then press/,
    );
  });

  it("is told of nothing where there is one, or never was", () => {
    for (const original of [null, new Uint8Array([1])]) expect(lostWith(original)).toEqual([]);
  });
});
