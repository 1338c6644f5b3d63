import { describe, expect, it, vi } from "vitest";
import { Claims } from "../../src/tryout/keep/claims";

/** The locks of a browser as the Web Locks standard has them, as far as they are used here; for all tabs of a test. */
class FakeLocks {
  readonly held = new Map<string, { readonly mode: string; readonly break: (fault: Error) => void }[]>();
  readonly #waiting: { readonly name: string; readonly begin: () => void }[] = [];

  request = async (
    name: string,
    options: LockOptions,
    use: (lock: { name: string } | null) => unknown,
  ): Promise<unknown> => {
    const mode = options.mode ?? "exclusive";
    const isFree = () => {
      const all = this.held.get(name) ?? [];
      return all.length === 0 || (mode === "shared" && all.every((one) => one.mode === "shared"));
    };
    if (options.steal) {
      for (const one of this.held.get(name) ?? [])
        one.break(Object.assign(new Error("stolen"), { name: "AbortError" }));
      this.held.delete(name);
    } else if (!isFree()) {
      if (options.ifAvailable) return use(null);
      await new Promise<void>((begin, refuse) => {
        this.#waiting.push({ name, begin });
        options.signal?.addEventListener("abort", () => refuse(options.signal?.reason));
      });
    }
    return new Promise((done, refuse) => {
      const entry = { mode, break: refuse };
      this.held.set(name, [...(this.held.get(name) ?? []), entry]);
      Promise.resolve(use({ name })).then((value) => {
        const left = (this.held.get(name) ?? []).filter((one) => one !== entry);
        this.held.set(name, left);
        this.#waiting.splice(this.#waiting.findIndex((one) => one.name === name) >>> 0, 1)[0]?.begin();
        done(value);
      }, refuse);
    });
  };

  query = async () => ({ held: [...this.held].filter(([, all]) => all.length > 0).map(([name]) => ({ name })) });
}

/** What two tabs share. */
function tabs() {
  const locks = new FakeLocks();
  const channel = new EventTarget();
  const tab = () =>
    new Claims(locks as unknown as LockManager, {
      postMessage: (data) => void channel.dispatchEvent(new MessageEvent("message", { data })),
      addEventListener: channel.addEventListener.bind(channel),
    });
  return { one: tab(), two: tab(), locks };
}

const nothing = async () => {};

describe("a claim on a workbook", () => {
  it("is for one tab at a time", async () => {
    const { one, two } = tabs();
    const claim = await one.claim("costs", nothing, () => {});
    expect(claim).not.toBeNull();
    expect(await two.claim("costs", nothing, () => {})).toBeNull();
    expect(await two.claim("burns", nothing, () => {})).not.toBeNull();
    expect(await two.taken()).toEqual(new Set(["costs", "burns"]));
    claim?.release();
    await expect.poll(() => two.claim("costs", nothing, () => {})).not.toBeNull();
  });

  it("goes over once the other tab has kept its last edit", async () => {
    const { one, two } = tabs();
    let kept = () => {};
    const yieldTo = vi.fn(
      () =>
        new Promise<void>((done) => {
          kept = done;
        }),
    );
    const lost = vi.fn();
    await one.claim("costs", yieldTo, lost);
    let isOver = false;
    const over = two
      .takeOver("costs", nothing, () => {})
      .then((claim) => {
        isOver = true;
        return claim;
      });
    await expect.poll(() => yieldTo.mock.calls.length).toBe(1);
    expect(isOver).toBe(false);
    kept();
    expect(await over).not.toBeNull();
    expect(lost).not.toHaveBeenCalled();
    expect(await one.claim("costs", nothing, () => {})).toBeNull();
  });

  it("is taken from a tab that does not answer, which learns of it", async () => {
    vi.spyOn(AbortSignal, "timeout").mockReturnValue(AbortSignal.abort());
    const { one, two, locks } = tabs();
    const lost = vi.fn();
    await one.claim("costs", () => new Promise(() => {}), lost);
    // One that is aborted already is refused at once by the standard, as is this one here.
    locks.request = new Proxy(locks.request, {
      apply: (request, self, [name, options, use]) =>
        options.signal?.aborted
          ? Promise.reject(options.signal.reason)
          : Reflect.apply(request, self, [name, options, use]),
    });
    expect(await two.takeOver("costs", nothing, () => {})).not.toBeNull();
    await expect.poll(() => lost.mock.calls.length).toBe(1);
    vi.restoreAllMocks();
  });

  it("is never refused where the browser has no locks", async () => {
    const claims = new Claims(null as unknown as undefined, { postMessage: () => {}, addEventListener: () => {} });
    expect(await claims.claim("costs", nothing, () => {})).not.toBeNull();
    expect(await claims.taken()).toEqual(new Set());
  });
});

describe("what waits for all other tabs to be gone", () => {
  it("runs in the first tab only", async () => {
    const { one, two } = tabs();
    const run = vi.fn(nothing);
    await one.whenAlone(run);
    expect(run).toHaveBeenCalledTimes(1);
    await two.whenAlone(run);
    expect(run).toHaveBeenCalledTimes(1);
  });
});
