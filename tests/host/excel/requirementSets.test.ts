import { afterEach, expect, it, vi } from "vitest";
import { ExcelHost } from "../../../src/host/excel/adapter";
import { starterSheets } from "../../../src/runsheet/sheet/starterSheets";
import type { Sheet } from "../../../src/sheet/sheet";
import { knowing, REQUIRED } from "./client/requirementSets";
import { StandIn } from "./standIn";

afterEach(() => vi.unstubAllGlobals());

/** What the client refuses of adding a sheet in an Excel that knows these sets. */
async function refused(sets: ReadonlyMap<string, string>): Promise<string> {
  const standIn = new StandIn({ knows: knowing(sets) }).install();
  standIn.sheet("Sheet1");
  const added = await new ExcelHost().addSheet(starterSheets("g")[0] as Sheet).then(
    () => "",
    (error: Error) => error.message,
  );
  expect(added === "").toBe(standIn.faults.length === 0);
  return standIn.faults.splice(0).join(" ");
}

it("the manifest asks for the least set of Excel's calls that writes a sheet", async () => {
  const [major, minor] = (REQUIRED.get("ExcelApi") ?? "").split(".").map(Number) as [number, number];
  const lower = new Map(REQUIRED).set("ExcelApi", `${major}.${minor - 1}`);
  expect(await refused(lower)).toContain(`part of the ExcelApi ${major}.${minor} requirement set`);
  expect(await refused(REQUIRED)).toBe("");
});

it.each([
  ["1.9", "1.10", false],
  ["1.10", "1.9", true],
  ["1.9", 1.3, true],
  ["2.0", "1.17", true],
  ["1.17", "2.0", false],
])("of an Excel that knows %s it is known whether it knows %s", (most, asked, isKnown) => {
  expect(knowing(new Map([["ExcelApi", most]]))("ExcelApi", asked)).toBe(isKnown);
});
