import { afterAll, beforeEach, describe, expect, it, vi } from "vitest";
import type { Order, PotPlan } from "../../../src/core/batch/potPlan";
import { buildRun } from "../../../src/runsheet/buildRun";
import { KeptPlans } from "../../../src/runsheet/plan/keptPlans";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import type { Tables } from "../../../src/runsheet/tables/tableRows";

const asked = vi.spyOn(KeptPlans.prototype, "potPlan");
afterAll(() => asked.mockRestore());

let known = new Set<PotPlan>();
/** What is given from here on is new, unless it was given before. */
function begin(): void {
  for (const { value } of asked.mock.results) known.add(value);
  asked.mockClear();
}
/** The orders of the plans that were not given before: those that were really made. */
const planned = (): (readonly Order[])[] =>
  asked.mock.calls.flatMap(([orders], i) => (known.has(asked.mock.results[i]?.value) ? [] : [orders]));
beforeEach(() => {
  known = new Set();
  asked.mockClear();
});

type Row = readonly [vessel: string, quantity: number, fill: number, scent: string];
const batchOf = (rows: readonly Row[]): Tables => ({
  pour: {
    type: "pour",
    headings: ["Vessel", "Quantity", "Fill weight (g)", "Scent"],
    rows: rows.map((row) => [...row]),
    columns: { vessel: 0, quantity: 1, fill: 2, scent: 3 },
  },
});
const settings = { ...FIRST_SETTINGS, loss: 0 };

describe("a batch that is planned again", () => {
  const rows: Row[] = [
    ["Tin", 8, 150, "Cedar"],
    ["Jar", 6, 220, "Cedar"],
    ["Tin", 8, 150, "Fig"],
  ];
  const first = () => rows.map((row): Row => [...row]);

  it("plans only the scent that was changed, and shows the change", () => {
    buildRun(batchOf(first()), settings);
    begin();
    expect(buildRun(batchOf(first()), settings)).toEqual(buildRun(batchOf(first()), settings));
    expect(planned()).toEqual([]);

    const changed = first();
    changed[2] = ["Tin", 9, 150, "Fig"];
    const { plan } = buildRun(batchOf(changed), settings);
    expect(planned()).toEqual([[{ vessel: "Tin", fill: 150, quantity: 9 }]]);
    expect(plan.totals.candles).toBe(23);
  });

  it.each([
    ["a fill", (row: Row): Row => [row[0], row[1], 160, row[3]], settings, 8 * 160 + 6 * 160 + 8 * 160],
    ["the capacity of the pot", (row: Row): Row => row, { ...settings, potCapacity: 900 }, 3720],
    ["the loss", (row: Row): Row => row, { ...settings, loss: 0.05 }, 3906],
  ])("plans anew where %s was changed", (_, change, now, melted) => {
    buildRun(batchOf(first()), settings);
    begin();
    const { plan } = buildRun(batchOf(first().map(change)), now);
    expect(planned()).toHaveLength(2);
    expect(plan.totals.melted).toBeCloseTo(melted, 6);
    const fullest = Math.max(...plan.scents.flatMap(({ pots }) => pots.map((pot) => pot.melted)));
    expect(fullest).toBeLessThanOrEqual(now.potCapacity);
  });

  it("plans a scent that is new and leaves the others, as often as all may search as long as before", () => {
    const more: Row[] = [...first(), ["Tin", 3, 150, "Sage"]];
    buildRun(batchOf(more), settings);
    begin();
    buildRun(batchOf([...more, ["Jar", 2, 220, "Moss"]]), settings);
    expect(planned()).toHaveLength(1);
  });

  it("names the rows where they stand now, and weighs out as the settings are now", () => {
    const tooLarge: Row[] = [["Tub", 1, 99_000, "Cedar"]];
    const { problems } = buildRun(batchOf([["Tin", 8, 150, "Fig"], ...tooLarge]), settings);
    begin();
    const below: Row[] = [["Tin", 8, 150, "Fig"], ["Jar", 2, 150, "Fig"], ...tooLarge];
    const later = buildRun(batchOf(below), settings).problems;
    expect(planned()).toHaveLength(1);
    const rowsOf = (list: typeof problems) =>
      list.filter(({ field, severity }) => field === "fill" && severity === "error");
    expect([problems, later].map((list) => rowsOf(list).map(({ row }) => row))).toEqual([[1], [2]]);

    const [coarse, fine] = [5, 0.1].map((division) => buildRun(batchOf(first()), { ...settings, division }).plan);
    expect(coarse?.scents[0]?.pots[0]?.weights).not.toEqual(fine?.scents[0]?.pots[0]?.weights);
  });
});

describe("KeptPlans", () => {
  const orders = (quantity: number): Order[] => [{ vessel: "Tin", fill: 150, quantity }];
  const limit = { steps: 1e6 };

  it("gives the very plan again while it is kept, the last used ones longest", () => {
    // Of each plan one order and one pot.
    const plans = new KeptPlans(4);
    const of = (quantity: number) => plans.potPlan(orders(quantity), 3000, 0, limit);
    const [one, two] = [of(1), of(2)];
    expect(of(1)).toBe(one);
    of(3);
    expect(of(1)).toBe(one);
    expect(of(2)).not.toBe(two);
    expect(of(2)).toEqual(two);
  });

  it("keeps no more than some hundred plans, however small", () => {
    const plans = new KeptPlans();
    const of = (quantity: number) => plans.potPlan(orders(quantity), 3000, 0, limit);
    const first = of(1);
    for (let quantity = 2; quantity <= 200; quantity++) of(quantity);
    expect(of(1)).toBe(first);
    for (let quantity = 201; quantity <= 400; quantity++) of(quantity);
    expect(of(1)).not.toBe(first);
  });

  it("keeps one plan however large, and tells how long was searched", () => {
    const plans = new KeptPlans(1);
    const one = plans.potPlan(orders(4), 300, 0, limit);
    expect(plans.potPlan(orders(4), 300, 0, limit)).toBe(one);
    expect(plans.potPlan(orders(4), 300, 0, { steps: 2e6 })).not.toBe(one);
  });
});
