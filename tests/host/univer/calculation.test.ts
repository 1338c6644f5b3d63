import { ICommandService, IUniverInstanceService } from "@univerjs/core";
import { IActiveDirtyManagerService, SetFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import { FormulaCalculationSessionService } from "@univerjs/preset-sheets-core";
import { Subject } from "rxjs";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { StillCalculating } from "../../../src/host/host";
import { Calculation } from "../../../src/host/univer/calculation";

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

/** Univer's parts that the calculation listens to, with calculations that take so long and tell of it so often. */
function univer(takes: number, tells = Number.POSITIVE_INFINITY) {
  const waiting = new Set<() => void>();
  const listeners: ((command: { id: string }) => void)[] = [];
  const session = {
    state: { started: false, stopped: false, resultApplied: false },
    // As Univer's does, it takes it for done when no calculation begins for a while, here 100 ms.
    waitForLatestApplied: (timeout: number) =>
      new Promise<void>((resolve, reject) => {
        waiting.add(resolve);
        if (!session.state.started || session.state.resultApplied) setTimeout(resolve, 100);
        setTimeout(() => reject(new Error("timeout")), timeout);
      }),
  };
  const opened = new Subject<void>();
  const step = (is: Partial<typeof session.state>) => {
    session.state = { ...session.state, ...is };
  };
  const parts = new Map<unknown, unknown>([
    [FormulaCalculationSessionService, session],
    [IUniverInstanceService, { getTypeOfUnitAdded$: () => opened }],
    [IActiveDirtyManagerService, { get: (id: string) => id === "edit" }],
    [ICommandService, { onCommandExecuted: (listener: (typeof listeners)[0]) => listeners.push(listener) }],
  ]);
  const hear = (id: string) => {
    for (const listener of listeners) listener({ id });
  };
  return {
    injector: { get: (part: unknown) => parts.get(part) } as never,
    edit: () => hear("edit"),
    open: () => opened.next(),
    stop: () => step({ stopped: true, resultApplied: true }),
    begin: () => {
      hear(SetFormulaCalculationStartMutation.id);
      step({ started: true, stopped: false, resultApplied: false });
      for (let at = tells; at < takes; at += tells) setTimeout(() => step({}), at);
      setTimeout(() => {
        step({ stopped: false, resultApplied: true });
        for (const resolve of waiting) resolve();
      }, takes);
    },
  };
}

/** What comes of waiting: `still waiting`, `settled`, or the error. */
function outcome(calculation: Calculation) {
  const seen: { is: unknown } = { is: "still waiting" };
  calculation.settled().then(
    () => Object.assign(seen, { is: "settled" }),
    (error: unknown) => Object.assign(seen, { is: error }),
  );
  return seen;
}

describe("the calculation of the embedded sheet", () => {
  it("is waited for", async () => {
    const { injector, edit, begin } = univer(400);
    const calculation = new Calculation(injector, 1000);
    begin();
    const first = outcome(calculation);
    await vi.advanceTimersByTimeAsync(300);
    expect(first.is).toBe("still waiting");
    await vi.advanceTimersByTimeAsync(200);
    expect(first.is).toBe("settled");
    edit();
    begin();
    const second = outcome(calculation);
    await vi.advanceTimersByTimeAsync(300);
    expect(second.is).toBe("still waiting");
    await vi.advanceTimersByTimeAsync(200);
    expect(second.is).toBe("settled");
  });

  it("is waited for from the moment that another workbook is opened", async () => {
    const { injector, open, begin } = univer(400);
    const calculation = new Calculation(injector, 5000);
    begin();
    await vi.advanceTimersByTimeAsync(500);
    open();
    const seen = outcome(calculation);
    // Long after Univer takes it for done, as on a busy machine.
    await vi.advanceTimersByTimeAsync(350);
    begin();
    await vi.advanceTimersByTimeAsync(300);
    expect(seen.is).toBe("still waiting");
    await vi.advanceTimersByTimeAsync(200);
    expect(seen.is).toBe("settled");
  });

  it("is waited for when the one before ends only after an edit", async () => {
    const { injector, edit, begin } = univer(400);
    const calculation = new Calculation(injector, 1000);
    begin();
    await vi.advanceTimersByTimeAsync(350);
    edit();
    const seen = outcome(calculation);
    // The first one has ended, and what the edit changed is not calculated yet.
    await vi.advanceTimersByTimeAsync(80);
    expect(seen.is).toBe("still waiting");
    begin();
    await vi.advanceTimersByTimeAsync(300);
    expect(seen.is).toBe("still waiting");
    await vi.advanceTimersByTimeAsync(200);
    expect(seen.is).toBe("settled");
  });

  it("that was stopped to begin anew is waited for to its end", async () => {
    const { injector, begin, stop } = univer(400);
    const calculation = new Calculation(injector, 1000);
    begin();
    stop();
    const seen = outcome(calculation);
    await vi.advanceTimersByTimeAsync(300);
    expect(seen.is).toBe("still waiting");
    await vi.advanceTimersByTimeAsync(200);
    expect(seen.is).toBe("settled");
  });

  it("is not waited for where all values are known, until something changes", async () => {
    const { injector, edit, begin } = univer(400);
    const calculation = new Calculation(injector, 1000);
    calculation.known();
    const first = outcome(calculation);
    await vi.advanceTimersByTimeAsync(0);
    expect(first.is).toBe("settled");
    edit();
    begin();
    const second = outcome(calculation);
    await vi.advanceTimersByTimeAsync(300);
    expect(second.is).toBe("still waiting");
    await vi.advanceTimersByTimeAsync(200);
    expect(second.is).toBe("settled");
  });

  it("that takes longer than patience lasts is said, and settles when it is waited for again", async () => {
    const { injector, begin } = univer(2500);
    const calculation = new Calculation(injector, 1000);
    begin();
    const first = outcome(calculation);
    await vi.advanceTimersByTimeAsync(999);
    expect(first.is).toBe("still waiting");
    await vi.advanceTimersByTimeAsync(2);
    expect(first.is).toEqual(new StillCalculating());
    const second = outcome(calculation);
    await vi.advanceTimersByTimeAsync(999);
    expect(second.is).toBe("still waiting");
    const third = outcome(calculation);
    await vi.advanceTimersByTimeAsync(600);
    expect(second.is).toEqual(new StillCalculating());
    expect(third.is).toBe("settled");
  });

  it("that goes on telling of its progress is waited for, however long", async () => {
    const { injector, begin } = univer(20_000, 700);
    const calculation = new Calculation(injector, 1000);
    begin();
    const seen = outcome(calculation);
    await vi.advanceTimersByTimeAsync(19_999);
    expect(seen.is).toBe("still waiting");
    await vi.advanceTimersByTimeAsync(2);
    expect(seen.is).toBe("settled");
  });

  it("may be needless after a change: that one settles when none has begun", async () => {
    const { injector, edit } = univer(200);
    const calculation = new Calculation(injector, 1000);
    edit();
    const seen = outcome(calculation);
    await vi.advanceTimersByTimeAsync(250);
    expect(seen.is).toBe("settled");
  });
});
