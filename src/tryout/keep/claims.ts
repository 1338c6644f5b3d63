/** Of the tabs that show a workbook one may change it. */

/** However busy the other tab is, one that wants to go on waits no longer than this for it. */
const PATIENCE = 3_000;

export interface Claim {
  release(): void;
}

export class Claims {
  readonly #locks: LockManager | undefined;
  readonly #channel: Pick<BroadcastChannel, "postMessage" | "addEventListener">;
  /** The workbooks that this tab may change, and what it does before another tab takes one over. */
  readonly #held = new Map<string, { readonly release: () => void; readonly yieldTo: () => Promise<void> }>();

  constructor(
    locks: LockManager | undefined = navigator.locks,
    channel: Pick<BroadcastChannel, "postMessage" | "addEventListener"> = new BroadcastChannel("pourwright"),
  ) {
    this.#locks = locks;
    this.#channel = channel;
    channel.addEventListener("message", (event) => {
      const { wanted } = (event as MessageEvent<{ wanted?: string }>).data;
      const held = this.#held.get(wanted ?? "");
      void held?.yieldTo().finally(held.release);
    });
  }

  /**
   * Claims a workbook for this tab; null when another tab has it. `yieldTo` is called when another tab wants it: once
   * that resolves it is given up. `onLost` is called when it has been taken without asking.
   */
  claim(workbook: string, yieldTo: () => Promise<void>, onLost: () => void): Promise<Claim | null> {
    return this.#request(workbook, { ifAvailable: true }, yieldTo, onLost);
  }

  /** Claims a workbook that another tab has: asks it to give it up, and takes it when no answer comes. */
  async takeOver(workbook: string, yieldTo: () => Promise<void>, onLost: () => void): Promise<Claim | null> {
    this.#channel.postMessage({ wanted: workbook });
    try {
      return await this.#request(workbook, { signal: AbortSignal.timeout(PATIENCE) }, yieldTo, onLost);
    } catch {
      return this.#request(workbook, { steal: true }, yieldTo, onLost);
    }
  }

  /** The workbooks that any tab may change now. */
  async taken(): Promise<Set<string>> {
    const held = (await this.#locks?.query())?.held ?? [];
    return new Set(held.flatMap(({ name }) => (name?.startsWith(PREFIX) ? [name.slice(PREFIX.length)] : [])));
  }

  /** Runs this when no other tab is open on the page, and holds the place of this one from then on. */
  async whenAlone(run: () => Promise<void>): Promise<void> {
    await this.#locks?.request(PAGE, { ifAvailable: true }, async (lock) => {
      if (lock) await run();
    });
    void this.#locks?.request(PAGE, { mode: "shared" }, () => new Promise(() => undefined));
  }

  #request(
    workbook: string,
    options: LockOptions,
    yieldTo: () => Promise<void>,
    onLost: () => void,
  ): Promise<Claim | null> {
    // Without locks every tab may change everything; the store still refuses a state on top of one of another tab.
    if (!this.#locks) return Promise.resolve({ release: () => undefined });
    const locks = this.#locks;
    return new Promise((resolve, reject) => {
      let isHeld = false;
      const hold = (lock: Lock | null) => {
        if (!lock) return resolve(null);
        isHeld = true;
        return new Promise<void>((done) => {
          const release = () => {
            isHeld = false;
            if (this.#held.get(workbook)?.release === release) this.#held.delete(workbook);
            done();
          };
          this.#held.set(workbook, { release, yieldTo });
          resolve({ release });
        });
      };
      locks.request(PREFIX + workbook, options, hold).catch((fault) => {
        if (!isHeld) return reject(fault);
        // Another tab took it.
        isHeld = false;
        this.#held.delete(workbook);
        onLost();
      });
    });
  }
}

const PREFIX = "pourwright workbook ";
const PAGE = "pourwright page";
