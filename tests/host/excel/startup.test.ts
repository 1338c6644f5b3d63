import { afterEach, expect, it, vi } from "vitest";
import { startUp } from "../../../src/host/excel/startup";

afterEach(() => vi.unstubAllGlobals());

const office = (host: string | null) => {
  const setStartupBehavior = vi.fn(async () => {});
  vi.stubGlobal("Office", {
    onReady: async () => ({ host, platform: null }),
    HostType: { Excel: "Excel" },
    StartupBehavior: { none: "None", load: "Load" },
    addin: { setStartupBehavior },
  });
  return setStartupBehavior;
};

it("in Excel has the add-in loaded with the workbook from now on", async () => {
  const set = office("Excel");
  expect(await startUp()).toBe(true);
  expect(set).toHaveBeenCalledWith("Load");
});

it("opens all the same when Excel refuses that", async () => {
  office("Excel").mockRejectedValue(new Error("read-only"));
  expect(await startUp()).toBe(true);
});

it("elsewhere does nothing and says so", async () => {
  const set = office(null);
  expect(await startUp()).toBe(false);
  expect(set).not.toHaveBeenCalled();
});
