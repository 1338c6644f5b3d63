import type { Page } from "playwright-core";

declare global {
  interface Window {
    /** Calls out what a promise has come to; it is the page's end of `later`. */
    readonly callOut: (number: number, outcome: Outcome) => void;
  }
}

interface Outcome {
  readonly answer?: unknown;
  readonly fault?: string;
}

type Waiting = Map<number, (outcome: Outcome) => void>;

const listening = new WeakMap<Page, Promise<Waiting>>();
let asked = 0;

/** Hears what a page calls out. A page that closes, breaks down or is loaded anew calls out nothing more. */
async function listenTo(page: Page): Promise<Waiting> {
  const waiting: Waiting = new Map();
  const settle = (number: number, outcome: Outcome) => {
    waiting.get(number)?.(outcome);
    waiting.delete(number);
  };
  const end = (fault: string) => () => {
    for (const number of [...waiting.keys()]) settle(number, { fault });
  };
  page.on("close", end("the page was closed"));
  page.on("crash", end("the page broke down"));
  page.on("domcontentloaded", end("the page was loaded anew"));
  await page.exposeBinding("callOut", (_from, number: number, outcome: Outcome) => settle(number, outcome));
  return waiting;
}

/**
 * What a function of the page comes to, in the end; rejects with the message of what it throws. Playwright itself would
 * have the browser await the promise, which the browser holds only weakly: collected before its answer is sent, the
 * answer is lost.
 */
export async function later<T, A = undefined>(page: Page, act: (given: A) => T | Promise<T>, given?: A): Promise<T> {
  const known = listening.get(page) ?? listenTo(page);
  listening.set(page, known);
  const waiting = await known;
  const number = asked++;
  const settled = new Promise<Outcome>((settle) => waiting.set(number, settle));
  await page.evaluate(
    ([number, text, given]) => {
      const act: (given: unknown) => unknown = new Function(`return (${text})`)();
      new Promise((done) => done(act(given))).then(
        (answer) => window.callOut(number, { answer }),
        (caught) => window.callOut(number, { fault: caught instanceof Error ? caught.message : String(caught) }),
      );
    },
    [number, String(act), given as unknown] as const,
  );
  const { answer, fault } = await settled;
  if (fault !== undefined) throw new Error(fault);
  return answer as T;
}
