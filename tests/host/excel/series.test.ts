import { afterEach, expect, it, vi } from "vitest";
import { ExcelHost } from "../../../src/host/excel/adapter";
import { cardSheet } from "../../../src/runsheet/series/cardSheet";
import { planSeries } from "../../../src/runsheet/series/planSeries";
import { type SeriesCandles, seriesAdditions } from "../../../src/runsheet/series/seriesAdditions";
import { type Failure, StandIn } from "./standIn";

afterEach(() => vi.unstubAllGlobals());

/** Two wicks, one candle of each, invented. */
const SERIES = planSeries({
  ...{ code: "S1", vessel: "Bowl", wicks: ["Size 4", "=Size"], candles: 1, cycles: 7, atOnce: 4 },
  ...{ pouredOn: 46352, cureDays: 7 },
});
const CANDLES: SeriesCandles = {
  ...{ vessel: "Bowl", width: 72.5, wax: "", scent: "", load: undefined, cureDays: 7, product: "container" },
};
const ADDED = [
  ...seriesAdditions(SERIES, CANDLES, {}, { unit: "g", basis: "of wax" }),
  cardSheet(SERIES, CANDLES, { code: "S1", paper: "a4", unit: "g" }),
];

it("puts a series and its cards into Excel in one step, each card on pages of its own", async () => {
  const standIn = new StandIn().install();
  standIn.sheet("Notes");
  await new ExcelHost().append(ADDED);
  expect(standIn.book.sheets.map(({ name }) => name)).toEqual(["Notes", "Burn tests", "Readings", "Cards S1"]);
  const cards = standIn.book.find("Cards S1");
  // Seven cycles take two pages: title, contents, four lines, a heading and 30 looks; then three lines and 5 looks.
  const titles = [0, 38, 46, 84].map((row) => cards?.cell(row, 0)?.value);
  expect(titles).toEqual(["1", "2"].flatMap((n) => [1, 2].map((page) => `Burn test S1-${n}, page ${page} of 2`)));
  expect(cards?.page).toMatchObject({ paperSize: "A4", breaks: ["A39", "A47", "A85"] });
});

it.each(
  [1, 2].flatMap((sync) =>
    (["nothing", "half", "all"] as const).map((done): Failure => ({ sync, done, code: "GeneralException" })),
  ),
)("leaves the workbook as it was when Excel fails: %j", async (failure) => {
  const standIn = new StandIn().install();
  standIn.sheet("Notes");
  standIn.failure = failure;
  await expect(new ExcelHost().append(ADDED)).rejects.toThrow(
    "Excel could not add to Burn tests and Readings and Cards S1",
  );
  expect(standIn.book.sheets.map(({ name }) => name)).toEqual(["Notes"]);
});
