import { afterEach, describe, expect, it, vi } from "vitest";
import { planAside } from "../../src/pane/planAside";
import { planHere } from "../../src/pane/planner";
import type { PlanAnswer, PlanRequest } from "../../src/pane/planWorker";
import { FIRST_SETTINGS } from "../../src/runsheet/settings";
import type { Tables } from "../../src/runsheet/tables/tableRows";

/** A worker of the page that answers when it is told to. */
class FakeWorker {
  static started: FakeWorker[] = [];
  readonly asked: PlanRequest[] = [];
  isEnded = false;
  readonly #listeners = new Map<string, (event: { data?: PlanAnswer }) => void>();

  constructor() {
    FakeWorker.started.push(this);
  }
  addEventListener(type: string, listener: (event: { data?: PlanAnswer }) => void): void {
    this.#listeners.set(type, listener);
  }
  postMessage(request: PlanRequest): void {
    this.asked.push(structuredClone(request));
  }
  terminate(): void {
    this.isEnded = true;
  }
  fire(type: "message" | "error", data?: PlanAnswer): void {
    this.#listeners.get(type)?.(data ? { data } : {});
  }
  /** Answers a request as the real worker does. */
  async answer({ id, tables, settings }: PlanRequest): Promise<void> {
    this.fire("message", structuredClone({ id, run: await planHere(tables, settings) }));
  }
}

const tinsOf = (fill: number): Tables => ({
  pour: {
    type: "pour",
    headings: ["Vessel", "Quantity", "Fill weight (g)"],
    rows: [["Tin", 4, fill]],
    columns: { vessel: 0, quantity: 1, fill: 2 },
  },
});
const settings = { ...FIRST_SETTINGS, loss: 0 };

describe("planning in a worker", () => {
  afterEach(() => {
    vi.unstubAllGlobals();
    FakeWorker.started = [];
  });

  it("asks one worker, and gives each its own answer whatever the order", async () => {
    vi.stubGlobal("Worker", FakeWorker);
    const plan = planAside();
    const both = [plan(tinsOf(100), settings), plan(tinsOf(200), settings)];
    const [worker] = FakeWorker.started as [FakeWorker];
    const [first, second] = worker.asked as [PlanRequest, PlanRequest];
    await worker.answer(second);
    await worker.answer(first);
    expect((await Promise.all(both)).map(({ plan }) => plan.totals.melted)).toEqual([400, 800]);
    expect(FakeWorker.started).toHaveLength(1);
  });

  it("says what the worker could not work out", async () => {
    vi.stubGlobal("Worker", FakeWorker);
    const plan = planAside();
    const asked = plan(tinsOf(100), settings);
    FakeWorker.started[0]?.fire("message", { id: 1, failed: "The vessels are gone." });
    await expect(asked).rejects.toThrow("The vessels are gone.");
  });

  it("plans by itself once the worker breaks, also what waits for it", async () => {
    vi.stubGlobal("Worker", FakeWorker);
    const plan = planAside();
    const asked = plan(tinsOf(100), settings);
    FakeWorker.started[0]?.fire("error");
    expect((await asked).plan.totals.melted).toBe(400);
    expect((await plan(tinsOf(200), settings)).plan.totals.melted).toBe(800);
    expect(FakeWorker.started).toMatchObject([{ isEnded: true, asked: [{}] }]);
  });

  it("plans by itself where no worker may be had", async () => {
    vi.stubGlobal("Worker", undefined);
    expect((await planAside()(tinsOf(100), settings)).plan.totals.melted).toBe(400);
  });
});
